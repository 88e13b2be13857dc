using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Web.Quotes;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Quotes;

public sealed class FrozenJobsTests
{
    private static readonly FrozenJob Empty = new(null, null);
    private static readonly PressId Press = new(Guid.NewGuid());

    [Fact]
    public async Task A_quote_is_worked_out_once_for_all_who_look_at_it_and_another_job_by_itself()
    {
        var quote = AQuote.View().Quote;
        var worked = 0;
        using var jobs = new FrozenJobs((asked, gone) =>
        {
            Interlocked.Increment(ref worked);
            return FrozenJob.Of(asked, gone);
        });

        var all = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => jobs.OfAsync(Press, quote with { Id = Guid.NewGuid() }, TestContext.Current.CancellationToken)));

        Assert.Equal(1, worked);
        Assert.All(all, job => Assert.Same(all[0], job));
        Assert.NotNull(all[0].Worked);
        await jobs.OfAsync(Press, AQuote.View(job: job => job with { FreeCopies = job.FreeCopies + 1 }).Quote, TestContext.Current.CancellationToken);
        Assert.Equal(2, worked);
    }

    [Fact]
    public async Task No_more_than_a_few_are_worked_out_at_once()
    {
        using var goOn = new SemaphoreSlim(0);
        var (now, most) = (0, 0);
        using var jobs = new FrozenJobs((_, gone) =>
        {
            most = Math.Max(most, Interlocked.Increment(ref now));
            goOn.Wait(gone);
            Interlocked.Decrement(ref now);
            return Empty;
        });

        var quotes = Enumerable.Range(1, FrozenJobs.MostAtOnce + 3).Select(Other).ToList();
        var all = quotes.Select(quote => jobs.OfAsync(new PressId(Guid.NewGuid()), quote, TestContext.Current.CancellationToken)).ToList();
        foreach (var _ in quotes)
        {
            while (Volatile.Read(ref now) == 0)
            {
                await Task.Yield();
            }

            goOn.Release();
        }

        await Task.WhenAll(all);
        Assert.InRange(most, 1, FrozenJobs.MostAtOnce);
    }

    [Fact]
    public async Task A_press_with_many_heavy_quotes_keeps_no_other_waiting()
    {
        using var goOn = new ManualResetEventSlim();
        var (now, most) = (0, 0);
        using var jobs = new FrozenJobs((quote, gone) =>
        {
            if (quote.Quantity == 0)
            {
                return Empty;
            }

            most = Math.Max(most, Interlocked.Increment(ref now));
            goOn.Wait(gone);
            Interlocked.Decrement(ref now);
            return Empty;
        });

        var heavy = Enumerable.Range(1, FrozenJobs.MostAtOnce + 3).Select(number => jobs.OfAsync(Press, Other(number), TestContext.Current.CancellationToken)).ToList();
        var light = jobs.OfAsync(new PressId(Guid.NewGuid()), Other(0), TestContext.Current.CancellationToken);
        var first = await Task.WhenAny(light, Task.Delay(TimeSpan.FromSeconds(10), TestContext.Current.CancellationToken));
        goOn.Set();

        Assert.Same(light, first);
        await Task.WhenAll(heavy);
        Assert.Equal(1, most);
    }

    [Fact]
    public async Task Whoever_leaves_ends_the_work_and_makes_room_for_the_next()
    {
        using var leaving = new CancellationTokenSource();
        var begun = new TaskCompletionSource();
        var worked = 0;
        using var jobs = new FrozenJobs((_, gone) =>
        {
            if (Interlocked.Increment(ref worked) == 1)
            {
                begun.SetResult();
                gone.WaitHandle.WaitOne();
                gone.ThrowIfCancellationRequested();
            }

            return Empty;
        });

        var left = jobs.OfAsync(Press, Other(1), leaving.Token);
        await begun.Task;
        await leaving.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => left);
        var others = Enumerable.Range(1, FrozenJobs.MostAtOnce + 1).Select(number => jobs.OfAsync(Press, Other(number), TestContext.Current.CancellationToken));
        Assert.All(await Task.WhenAll(others), job => Assert.Same(Empty, job));
    }

    [Fact]
    public async Task Work_without_an_end_is_ended_and_the_quote_shown_without_other_quantities_from_then_on()
    {
        var quote = AQuote.View().Quote;
        var worked = 0;
        using var jobs = new FrozenJobs(
            (_, gone) =>
            {
                Interlocked.Increment(ref worked);
                gone.WaitHandle.WaitOne();
                gone.ThrowIfCancellationRequested();
                return Empty;
            },
            TimeSpan.FromMilliseconds(1));

        for (var look = 0; look < 2; look++)
        {
            var job = await jobs.OfAsync(Press, quote, TestContext.Current.CancellationToken);
            Assert.NotNull(job.Job);
            Assert.Null(job.Worked);
        }

        Assert.Equal(1, worked);
    }

    [Fact]
    public void The_work_itself_ends_when_it_is_told_to() =>
        Assert.ThrowsAny<OperationCanceledException>(() => FrozenJob.Of(AQuote.View().Quote, new CancellationToken(canceled: true)));

    private static QuoteRecord Other(int quantity) => AQuote.View().Quote with { Quantity = quantity };
}
