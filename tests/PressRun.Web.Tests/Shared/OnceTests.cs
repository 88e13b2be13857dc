using PressRun.Web.Shared;

namespace PressRun.Web.Tests.Shared;

public class OnceTests
{
    private readonly Once once = new();
    private int done;

    [Fact]
    public async Task Presses_while_it_is_done_and_until_the_page_has_come_do_nothing()
    {
        var waits = new TaskCompletionSource();
        var first = once.DoAsync(async () =>
        {
            await waits.Task;
            done++;
            return true;
        });
        await once.DoAsync(CountAsync);
        waits.SetResult();
        await first;
        await once.DoAsync(CountAsync);
        Assert.Equal(1, done);

        once.Again();
        await once.DoAsync(CountAsync);
        Assert.Equal(2, done);
    }

    [Fact]
    public async Task What_was_refused_or_failed_may_be_tried_again()
    {
        await once.DoAsync(() => Task.FromResult(false));
        await Assert.ThrowsAsync<InvalidOperationException>(() => once.DoAsync(() => throw new InvalidOperationException()));
        await once.DoAsync(CountAsync);
        Assert.Equal(1, done);
    }

    private Task<bool> CountAsync()
    {
        done++;
        return Task.FromResult(true);
    }
}
