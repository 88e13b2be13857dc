using System.Net;
using System.Net.WebSockets;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Access;
using PressRun.Web.People;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.People;

public sealed class LinesTests(Chromium chromium, PeopleApp people)
{
    [Fact]
    public async Task Somebody_has_so_many_pages_open_and_no_more_and_one_more_says_so_calmly_until_another_closes()
    {
        await people.ReadyAsync();
        var email = await people.PersonAsync("Hoarder", people.Other, PressRole.Reader);
        using var hoarder = await HttpPerson.SignedInAsync(people.App.Address, email);
        await using var visit = await people.SignInAsync(chromium, email);
        var lines = new List<ClientWebSocket>();
        while (lines.Count < LiveSessions.MostOfOne - 1)
        {
            lines.Add(await hoarder.OpenLineAsync());
        }

        // RFC 6585, 4.
        await AnswersAsync(hoarder, HttpStatusCode.TooManyRequests);
        using (var unasked = await hoarder.OpenLineAsync())
        {
            await EndsAsync(unasked);
        }

        var more = await visit.Page.Context.NewPageAsync();
        await more.GotoAsync("papers");
        await Expect(more.GetByRole(AriaRole.Status).Filter(new() { HasText = "Very many pages of PressRun are open under your name" })).ToBeVisibleAsync();
        await Expect(more.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Papers");

        lines[0].Dispose();
        await AnswersAsync(hoarder, HttpStatusCode.OK);
        await more.GetByRole(AriaRole.Button, new() { Name = "Fetch the page now" }).ClickAsync();
        await more.Locator("body[data-interactive]").WaitForAsync();
        lines.ForEach(line => line.Dispose());
    }

    [Fact]
    public async Task Pages_that_lost_their_line_count_until_they_are_given_up()
    {
        await people.ReadyAsync();
        using var leaver = await HttpPerson.SignedInAsync(people.App.Address, await people.PersonAsync("Leaver", people.Other, PressRole.Reader));
        var left = "";
        for (var page = 0; page < LiveSessions.MostHeld; page++)
        {
            left = await leaver.LeavePageAsync();
        }

        await AnswersAsync(leaver, HttpStatusCode.TooManyRequests);
        using var leaving = new MultipartFormDataContent { { new StringContent(left), "circuitId" } };
        using var gone = await leaver.AskAsync("POST", "_blazor/disconnect", leaving);
        await AnswersAsync(leaver, HttpStatusCode.OK);
    }

    private static Task AnswersAsync(HttpPerson person, HttpStatusCode wanted) => Eventually.HoldsAsync(
        async () =>
        {
            using var answer = await person.AskAsync("POST", "_blazor/negotiate?negotiateVersion=1");
            return answer.StatusCode == wanted;
        },
        $"a page that asks for a line is answered {wanted}");

    // It is told nothing but that its first message arrived, and closed.
    private static async Task EndsAsync(ClientWebSocket line)
    {
        try
        {
            while (line.State == WebSocketState.Open)
            {
                await line.ReceiveAsync(new byte[1024], TestContext.Current.CancellationToken);
            }
        }
        catch (WebSocketException)
        {
            // It was cut.
        }
    }
}
