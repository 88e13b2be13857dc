using PressRun.Data.Presses;
using PressRun.Data.Quotes;

namespace PressRun.Web.Quotes;

/// <summary>How many things happened to a press's quotes that the maker has not looked at.</summary>
/// <param name="Count">0 or more.</param>
public sealed record Unseen(int Count);

/// <summary>Tells the parts of one open page that something about quotes has happened or was looked at.</summary>
public sealed class QuoteNews(QuoteStore quotes)
{
    /// <summary>How long an open quote page waits before it looks again.</summary>
    public static readonly TimeSpan Pause = TimeSpan.FromSeconds(3);

    /// <summary>Raised when the number may be another.</summary>
    public event Func<Task>? Changed;

    /// <summary>The number of new things.</summary>
    public async Task<Unseen?> UnseenAsync(PressId press) => new(await quotes.UnseenAsync(press));

    /// <summary>How much has happened to a quote; grows with everything that alters its page.</summary>
    public Task<int> ChangesAsync(PressId press, Guid quoteId) => quotes.ChangesAsync(press, quoteId);

    /// <summary>Lets the number be looked up again.</summary>
    public Task TellAsync() => Changed?.Invoke() ?? Task.CompletedTask;
}
