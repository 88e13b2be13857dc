using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Engine.Bench;
using PressRun.Engine.Copies;
using PressRun.Engine.Paper;
using PressRun.Engine.Quoting;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Archive;

/// <summary>Words and ranges that the press archive has beside the job file's.</summary>
internal static class ArchiveWords
{
    /// <summary>Units shown first.</summary>
    public static Words<UnitSystem> Units { get; } = new(("metric", UnitSystem.Metric), ("imperial", UnitSystem.Imperial));

    /// <summary>Papers offered first.</summary>
    public static Words<PaperRegion> PaperRegions { get; } = new(("iso", PaperRegion.Iso), ("us", PaperRegion.Us));

    /// <summary>What moves copies.</summary>
    public static Words<MovementKind> Movements { get; } = new(
        ("printed", MovementKind.Printed), ("sold", MovementKind.Sold), ("givenAway", MovementKind.GivenAway), ("spoiled", MovementKind.Spoiled),
        ("returned", MovementKind.Returned), ("counted", MovementKind.Counted));

    /// <summary>What is written down at the table.</summary>
    public static Words<TallyKind> TallyKinds { get; } = new(("done", TallyKind.Done), ("spoiled", TallyKind.Spoiled), ("worked", TallyKind.Worked));

    /// <summary>What a reader of a quote said.</summary>
    public static Words<QuoteAnswer> Answers { get; } = new(("none", QuoteAnswer.None), ("agreed", QuoteAnswer.Agreed), ("turnedDown", QuoteAnswer.TurnedDown));

    /// <summary>What happens to a quote.</summary>
    public static Words<QuoteEventKind> QuoteEvents { get; } = new(
        ("linkMade", QuoteEventKind.LinkMade), ("linkEnded", QuoteEventKind.LinkEnded), ("agreed", QuoteEventKind.Agreed), ("turnedDown", QuoteEventKind.TurnedDown),
        ("askedFor", QuoteEventKind.AskedFor), ("remarked", QuoteEventKind.Remarked), ("paid", QuoteEventKind.Paid), ("replaced", QuoteEventKind.Replaced),
        ("linkEndedWithMaker", QuoteEventKind.LinkEndedWithMaker));

    /// <summary>Where nobody wrote down when an edition was printed.</summary>
    public static readonly DateOnly DayUnknown = new(2000, 1, 1);

    /// <summary>The note of a line that stands for all that went before there was a ledger.</summary>
    public const string BeforeTheLedger = "Carried over from before the ledger.";

    /// <summary>A name that must say something.</summary>
    public static TextRule Name { get; } = new("Write a name: text on one line, not blank, at most 1,000 characters.", 1000, false);

    /// <summary>A text that may be empty.</summary>
    public static TextRule Text { get; } = new("Write a text on one line, at most 2,000 characters.", 2000, true);
}
