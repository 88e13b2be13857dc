using PressRun.Web.Shared;

namespace PressRun.Web.Tests.Shared;

public class OneAtATimeTests
{
    [Fact]
    public async Task Work_that_is_asked_for_together_is_done_one_after_the_other_in_order()
    {
        var saves = new OneAtATime();
        var (running, log) = (0, new List<int>());
        await Task.WhenAll(Enumerable.Range(0, 5).Select(number => saves.DoAsync(async () =>
        {
            Assert.Equal(1, Interlocked.Increment(ref running));
            await Task.Yield();
            log.Add(number);
            Interlocked.Decrement(ref running);
            return number;
        })));
        Assert.Equal([0, 1, 2, 3, 4], log);
    }

    // A save that waited for the database outlived its page, and failed when it gave its turn back.
    [Fact]
    public async Task What_waits_is_done_whatever_has_become_of_the_page()
    {
        var (first, saves) = (new TaskCompletionSource<int>(), new OneAtATime());
        var (running, waiting) = (saves.DoAsync(() => first.Task), saves.DoAsync(() => Task.FromResult(2)));

        first.SetResult(1);

        var done = await Task.WhenAll(running, waiting);
        Assert.Equal([1, 2], done);
        Assert.False(typeof(IDisposable).IsAssignableFrom(typeof(OneAtATime)), "A page that goes takes nothing away that its work still needs.");
    }

    [Fact]
    public async Task Work_that_fails_does_not_stop_what_comes_after()
    {
        var saves = new OneAtATime();
        await Assert.ThrowsAsync<InvalidOperationException>(() => saves.DoAsync<int>(() => throw new InvalidOperationException("no")));
        Assert.Equal(7, await saves.DoAsync(() => Task.FromResult(7)));
    }
}
