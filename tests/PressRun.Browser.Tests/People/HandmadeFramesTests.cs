using Microsoft.AspNetCore.SignalR.Client;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Access;
using PressRun.Web.People;

namespace PressRun.Browser.Tests.People;

/// <summary>What somebody's line sends that no page of theirs would: their line ends, and the log has no trace of the server's code by it, which it would else be filled with.</summary>
public sealed class HandmadeFramesTests(PeopleApp people)
{
    [Fact]
    public async Task A_line_that_sends_what_no_page_sends_ends_and_leaves_one_line_in_the_log()
    {
        await people.ReadyAsync();
        using var maker = await HttpPerson.SignedInAsync(people.App.Address, await people.PersonAsync("Framer", people.Other, PressRole.Reader));
        foreach (var send in Frames())
        {
            var (line, page) = await maker.OpenPageAsync("papers");
            var ended = new TaskCompletionSource();
            line.Closed += _ =>
            {
                ended.TrySetResult();
                return Task.CompletedTask;
            };
            var before = people.App.Said.Length;
            await send(line, page);

            await ended.Task.WaitAsync(TimeSpan.FromMinutes(1), TestContext.Current.CancellationToken);
            await line.DisposeAsync();
            // The line's end may arrive before the log's, which the app writes from a queue.
            await Eventually.HoldsAsync(() => Task.FromResult(people.App.Said[before..].Contains("A line was cut", StringComparison.Ordinal)), "the log has the line that was cut");
            var said = people.App.Said[before..];
            Assert.DoesNotContain("CircuitHost", said, StringComparison.Ordinal);
            Assert.DoesNotContain("HubDispatcher", said, StringComparison.Ordinal);
        }
    }

    private Func<HubConnection, ServedPage, Task>[] Frames() =>
    [
        (line, _) => line.SendAsync("OnLocationChanged", new Uri(people.App.Address, "titles/%00/1").OriginalString, null, false),
        (line, page) => line.SendAsync("UpdateRootComponents", page.Additions, "no state"),
    ];
}
