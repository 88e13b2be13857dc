using System.Globalization;
using Microsoft.Extensions.Logging.Abstractions;
using PressRun.Data.Presses;
using PressRun.Data.Running;
using PressRun.Web.Quotes;

namespace PressRun.Web.Tests.Quotes;

public sealed class QuoteNewsTests
{
    private static readonly PressId Ours = PressId.New();

    [Fact]
    public async Task What_happens_while_a_page_looks_is_looked_at_once_more_and_never_beside_it()
    {
        var said = new Said();
        var (looks, beside, most) = (0, 0, 0);
        var (begun, go, last) = (new SemaphoreSlim(0), new SemaphoreSlim(0), new TaskCompletionSource());
        using var watch = News(said).Watch(Ours, work => work(), async () =>
        {
            most = Math.Max(most, Interlocked.Increment(ref beside));
            begun.Release();
            await go.WaitAsync();
            Interlocked.Decrement(ref beside);
            if (++looks == 2)
            {
                last.SetResult();
            }
        });

        said.Tell(Ours);
        await begun.WaitAsync();
        said.Tell(Ours);
        said.Tell(Ours);
        said.TellMissed();
        go.Release(2);
        await last.Task;
        said.Tell(Ours);
        await begun.WaitAsync();
        await begun.WaitAsync();

        Assert.Equal((2, 1), (looks, most));
        go.Release();
    }

    [Fact]
    public async Task A_page_that_hears_of_somebody_elses_work_goes_on_in_the_words_and_numbers_of_whoever_opened_it()
    {
        var said = new Said();
        var looked = new TaskCompletionSource<(string Numbers, string Words)>();
        (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (new CultureInfo("de-AT"), new CultureInfo("de"));
        using var watch = News(said).Watch(Ours, work => work(), () =>
        {
            looked.SetResult((CultureInfo.CurrentCulture.Name, CultureInfo.CurrentUICulture.Name));
            return Task.CompletedTask;
        });
        (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (CultureInfo.InvariantCulture, CultureInfo.InvariantCulture);

        said.Tell(Ours);

        Assert.Equal(("de-AT", "de"), await looked.Task);
    }

    [Fact]
    public async Task News_of_another_press_and_news_after_the_page_went_move_nobody()
    {
        var said = new Said();
        var looks = 0;
        var looked = new TaskCompletionSource();
        var watch = News(said).Watch(Ours, work => work(), () =>
        {
            looks++;
            looked.TrySetResult();
            return Task.CompletedTask;
        });

        said.Tell(PressId.New());
        said.Tell(Ours);
        await looked.Task;
        watch.Dispose();
        said.Tell(Ours);

        Assert.Equal(1, looks);
        Assert.False(said.IsHeard);
    }

    [Fact]
    public async Task A_look_that_failed_as_the_database_was_away_is_followed_by_the_next()
    {
        var said = new Said();
        var looks = 0;
        var again = new TaskCompletionSource();
        using var watch = News(said).Watch(Ours, work => work(), () =>
        {
            if (++looks == 1)
            {
                said.TellMissed();
                throw new Npgsql.NpgsqlException("away");
            }

            again.SetResult();
            return Task.CompletedTask;
        });

        said.Tell(Ours);
        await again.Task;

        Assert.Equal(2, looks);
    }

    [Fact]
    public async Task A_look_that_failed_as_nobody_foresaw_is_repeated_after_growing_pauses_until_it_succeeds()
    {
        var (said, clock) = (new Said(), new Pauses());
        var looks = 0;
        var done = new TaskCompletionSource();
        using var watch = new QuoteNews(said, null!, clock, NullLogger<QuoteNews>.Instance).Watch(Ours, work => work(), () =>
        {
            if (++looks <= 3)
            {
                throw new InvalidOperationException("unforeseen");
            }

            done.SetResult();
            return Task.CompletedTask;
        });

        said.Tell(Ours);
        await done.Task;

        Assert.Equal([1, 2, 4], clock.Seconds);
    }

    [Fact]
    public async Task A_page_that_has_gone_is_not_looked_at_again()
    {
        var said = new Said();
        var (looks, failed, over) = (0, new TaskCompletionSource(), new TaskCompletionSource());
        var watch = News(said).Watch(Ours, async work => { try { await work(); } finally { over.TrySetResult(); } }, () =>
        {
            looks++;
            failed.SetResult();
            throw new InvalidOperationException("unforeseen");
        });

        said.Tell(Ours);
        await failed.Task;
        await over.Task;
        watch.Dispose();

        Assert.Equal(1, looks);
    }

    private static QuoteNews News(Said said) => new(said, null!, TimeProvider.System, NullLogger<QuoteNews>.Instance);

    // A clock on which no pause takes time, and that remembers how long each was to be.
    private sealed class Pauses : TimeProvider
    {
        private readonly List<int> seconds = [];

        public IReadOnlyList<int> Seconds => seconds;

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            seconds.Add((int)dueTime.TotalSeconds);
            return System.CreateTimer(callback, state, TimeSpan.Zero, period);
        }
    }

    private sealed class Said : IQuoteNews
    {
        public event Action<PressId>? QuotesChanged;

        public event Action? Missed;

        public bool IsHeard => QuotesChanged is not null || Missed is not null;

        public void Tell(PressId press) => QuotesChanged?.Invoke(press);

        public void TellMissed() => Missed?.Invoke();
    }
}
