using PressRun.Data.Quotes;
using PressRun.Engine.Costing;
using PressRun.Engine.Quoting;

namespace PressRun.Web.Quotes;

/// <summary>Which form of the share page something is said about.</summary>
public enum ShareForm
{
    /// <summary>None.</summary>
    None,

    /// <summary>The quantity to try.</summary>
    Try,

    /// <summary>Asking for the quantity that was tried.</summary>
    Ask,

    /// <summary>The sentence to sign.</summary>
    Agree,

    /// <summary>Turning it down.</summary>
    TurnDown,

    /// <summary>A remark.</summary>
    Remark,
}

/// <summary>What a reader typed, as it comes back where it is refused.</summary>
/// <param name="Name">Their name.</param>
/// <param name="Words">What they wrote.</param>
/// <param name="Copies">The quantity to try.</param>
public sealed record ShareTyped(string Name, string Words, string Copies)
{
    /// <summary>Nothing typed.</summary>
    public static ShareTyped Nothing { get; } = new("", "", "");
}

/// <summary>All that the share page shows.</summary>
/// <param name="View">The quote.</param>
/// <param name="Link">By which link it is read.</param>
/// <param name="Secret">The link's secret, for the addresses on the page.</param>
/// <param name="BasePath">Path that the app is served under, with a slash at its end.</param>
public sealed record ShareState(QuoteView View, QuoteLink Link, string Secret, string BasePath)
{
    /// <summary>What a tried quantity costs; null where none is tried.</summary>
    public Estimate? Tried { get; init; }

    /// <summary>True where another quantity can be asked for: of what is settled, over or replaced a new quote is asked for otherwise.</summary>
    public bool MayAsk => View.Whole.State is QuoteState.Out or QuoteState.Held;

    /// <summary>About which form <see cref="Problem"/> is.</summary>
    public ShareForm About { get; init; }

    /// <summary>What stands in the way of what was sent.</summary>
    public string? Problem { get; init; }

    /// <summary>True where <see cref="Problem"/> asks whether they mean it, and they may send the same again.</summary>
    public bool IsAsked { get; init; }

    /// <summary>What was just done, as a sentence.</summary>
    public string? Done { get; init; }

    /// <summary>What was typed and comes back.</summary>
    public ShareTyped Typed { get; init; } = ShareTyped.Nothing;
}
