namespace PressRun.Engine.Quoting;

/// <summary>Where a quote stands.</summary>
public enum QuoteState
{
    /// <summary>Frozen, and shown to nobody.</summary>
    Held,

    /// <summary>Someone has a link to it.</summary>
    Out,

    /// <summary>Everyone who was asked to agree has.</summary>
    Agreed,

    /// <summary>Someone who was asked to agree does not.</summary>
    TurnedDown,

    /// <summary>A later quote stands in its place.</summary>
    Replaced,

    /// <summary>Its day has passed without everyone's answer.</summary>
    Lapsed,
}

/// <summary>What someone who may agree has said.</summary>
public enum QuoteAnswer
{
    /// <summary>Nothing yet.</summary>
    None,

    /// <summary>Agrees.</summary>
    Agreed,

    /// <summary>Does not.</summary>
    TurnedDown,
}

/// <summary>One who was given the quote.</summary>
/// <param name="Open">True while it can be read by them.</param>
/// <param name="Asked">True where they are asked to agree.</param>
/// <param name="Answer">What they said.</param>
/// <param name="Released">True where the maker took the quote from them while it could still be agreed to, and so asks them no more.</param>
public readonly record struct QuoteReader(bool Open, bool Asked, QuoteAnswer Answer, bool Released)
{
    /// <summary>True while an agreement needs their answer. What ends by itself is no answer, and takes nobody out of it.</summary>
    public bool IsWaitedFor => Asked && Answer == QuoteAnswer.None && !Released;
}

/// <summary>The course of a quote from frozen to settled.</summary>
public static class QuoteCourse
{
    /// <summary>
    /// Where a quote stands. A quote that was replaced is that, whatever was said of it; one person's no outweighs every yes; an agreement
    /// outlives the quote's last day and the links by which it was given. Silence is no yes: only whom the maker released is not waited for.
    /// </summary>
    /// <param name="replaced">True where a later quote stands in its place.</param>
    /// <param name="readers">All who were given it.</param>
    /// <param name="until">The last day on which it can be agreed to.</param>
    /// <param name="today">The day that is asked about.</param>
    public static QuoteState Of(bool replaced, IReadOnlyCollection<QuoteReader> readers, DateOnly until, DateOnly today)
    {
        if (replaced)
        {
            return QuoteState.Replaced;
        }

        if (readers.Any(reader => reader.Answer == QuoteAnswer.TurnedDown))
        {
            return QuoteState.TurnedDown;
        }

        if (readers.Any(reader => reader.Answer == QuoteAnswer.Agreed) && !readers.Any(reader => reader.IsWaitedFor))
        {
            return QuoteState.Agreed;
        }

        return today > until ? QuoteState.Lapsed : readers.Any(reader => reader.Open) ? QuoteState.Out : QuoteState.Held;
    }
}
