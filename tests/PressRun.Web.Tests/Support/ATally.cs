using PressRun.Data.Tallies;
using PressRun.Engine.Bench;

namespace PressRun.Web.Tests.Support;

/// <summary>Tallies of the invented book: 110 copies on the table, 100 wanted, folded and then packed.</summary>
public static class ATally
{
    /// <summary>A tally of entries in the order in which they arrived.</summary>
    public static TallyWhole Of(params TallyEntry[] entries) => new(
        new TallyRecord(
            Guid.NewGuid(), Guid.NewGuid(), "Willow, bound here", new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero), 110, 100,
            [new TallyStep("fold", WorkKind.Fold, 0.05m, 60m), new TallyStep("pack", WorkKind.Pack, 0m, null)], entries.Length, null),
        entries);

    /// <summary>Copies done.</summary>
    public static TallyEntry Done(int step, int copies, string by = "Ada") => new(step, TallyKind.Done, copies, 0, by);

    /// <summary>Copies spoiled.</summary>
    public static TallyEntry Spoiled(int step, int copies, string by = "Ada") => new(step, TallyKind.Spoiled, copies, 0, by);

    /// <summary>Time worked.</summary>
    public static TallyEntry Worked(int step, int seconds, string by = "Ada") => new(step, TallyKind.Worked, 0, seconds, by);
}
