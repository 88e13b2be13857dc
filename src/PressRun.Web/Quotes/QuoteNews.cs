using System.Data.Common;
using System.Globalization;
using PressRun.Data.Access;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Data.Running;

namespace PressRun.Web.Quotes;

/// <summary>Lets open pages look again when something has happened to their press's quotes, on whatever node it was done.</summary>
public sealed class QuoteNews(IQuoteNews news, QuoteStore quotes, TimeProvider time, ILogger<QuoteNews> logger)
{
    /// <summary>Things that happened to the press's quotes and that the maker has not looked at.</summary>
    public Task<int> UnseenAsync(PressId press) => quotes.UnseenAsync(press);

    /// <summary>How much has happened to a quote; grows with everything that alters its page.</summary>
    public Task<int?> ChangesAsync(PressId press, Guid quoteId) => quotes.ChangesAsync(press, quoteId);

    /// <summary>Has a part of a page look again, until the answer is disposed of. The looks follow each other, so that no earlier answer comes
    /// after a later one; what happens while one looks is looked at once more, and not once for each thing.</summary>
    /// <param name="press">Whose quotes.</param>
    /// <param name="dispatch">Does work where the page's work is done.</param>
    /// <param name="look">Looks, and shows what it finds.</param>
    public QuoteWatch Watch(PressId press, Func<Func<Task>, Task> dispatch, Func<Task> look) => new(news, press, Visiting.Now, dispatch, look, time, logger);
}

/// <summary>Waits for news of a press's quotes on behalf of whoever opened a page.</summary>
public sealed partial class QuoteWatch : IDisposable
{
    private static readonly TimeSpan ShortestPause = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan LongestPause = TimeSpan.FromMinutes(2);

    private readonly IQuoteNews news;
    private readonly PressId press;
    private readonly Visitor visitor;

    // The viewer's numbers and words: what is heard comes by somebody else's work, which has its own.
    private readonly (CultureInfo Numbers, CultureInfo Words) viewer = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
    private readonly Func<Func<Task>, Task> dispatch;
    private readonly Func<Task> look;
    private readonly TimeProvider time;
    private readonly ILogger logger;
    private readonly CancellationTokenSource gone = new();
    private int asked;

    internal QuoteWatch(IQuoteNews news, PressId press, Visitor visitor, Func<Func<Task>, Task> dispatch, Func<Task> look, TimeProvider time, ILogger logger)
    {
        (this.news, this.press, this.visitor, this.dispatch, this.look, this.time, this.logger) = (news, press, visitor, dispatch, look, time, logger);
        news.QuotesChanged += Hear;
        news.Missed += Ask;
    }

    /// <summary>Looks at once, in its turn.</summary>
    public void Ask()
    {
        if (Interlocked.Increment(ref asked) == 1)
        {
            _ = Task.Run(LookAsync);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        news.QuotesChanged -= Hear;
        news.Missed -= Ask;
        gone.Cancel();
        gone.Dispose();
    }

    private void Hear(PressId whose)
    {
        if (whose == press)
        {
            Ask();
        }
    }

    private async Task LookAsync()
    {
        var (pause, left) = (ShortestPause, gone.Token);
        while (true)
        {
            var before = Volatile.Read(ref asked);
            try
            {
                await dispatch(LookAsVisitorAsync);
            }
            catch (Exception away) when (IsAway(away))
            {
                // The page has gone, its visitor may not look any more, or the database is away; when it is back, all pages look again.
            }
            catch (Exception unforeseen)
            {
                // A watch that ended by it would leave its page as it is for ever.
                LogLooksAgain(logger, unforeseen, pause);
                await Task.Delay(pause, time, left).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
                if (left.IsCancellationRequested)
                {
                    return;
                }

                pause = pause * 2 < LongestPause ? pause * 2 : LongestPause;
                continue;
            }

            pause = ShortestPause;
            if (Interlocked.CompareExchange(ref asked, 0, before) == before)
            {
                return;
            }
        }
    }

    private async Task LookAsVisitorAsync()
    {
        using var visiting = Visiting.As(visitor);
        (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = viewer;
        await look();
    }

    private static bool IsAway(Exception exception) => exception is ObjectDisposedException or DbException or AccessRefusedException || exception.InnerException is DbException || DatabaseAway.IsWhy(exception);

    [LoggerMessage(Level = LogLevel.Error, Message = "A page could not look at its press's quotes, and looks again in {Pause}")]
    private static partial void LogLooksAgain(ILogger logger, Exception why, TimeSpan pause);
}
