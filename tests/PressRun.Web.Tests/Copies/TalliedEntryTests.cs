using Bunit;
using PressRun.Data.Copies;
using PressRun.Data.Tallies;
using PressRun.Engine.Copies;
using PressRun.Web.Copies;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Copies;

/// <summary>A tally on its way into the ledger.</summary>
public class TalliedEntryTests
{
    [Fact]
    public void The_figures_of_a_tally_stand_in_the_fields_and_may_be_changed()
    {
        var tally = ATally.Of(ATally.Done(0, 96), ATally.Spoiled(0, 4), ATally.Worked(0, 1830, "Ada"), ATally.Worked(0, 900, "Ben"), ATally.Done(1, 95));
        var entry = Entry(tally);

        Assert.Equal((MovementKind.Printed, "95"), (entry.What, entry.Text(LedgerEntry.Copies)));
        Assert.Equal(("45.5", "100", "4"), (entry.Text(PrintingEntry.Minutes(0)), entry.Text(PrintingEntry.Started(0)), entry.Text(PrintingEntry.Spoiled(0))));
        entry.Type(PrintingEntry.Minutes(0), "44");
        entry.Type(PrintingEntry.Shop, "120");
        var line = entry.Read()!;

        // Nobody looked at a clock while packing: the step is left out.
        Assert.Equal([new StepActual("fold", 44m, 100, 4)], line.Printing!.Steps);
        Assert.Equal((95, new TallySeen(tally.Tally.Id, 5)), (line.Copies, line.Tally));
    }

    [Fact]
    public void A_step_that_was_only_timed_took_what_came_to_it()
    {
        var entry = Entry(ATally.Of(ATally.Done(0, 96), ATally.Spoiled(0, 4), ATally.Worked(1, 600)));

        Assert.Equal(("10", "106", "0"), (entry.Text(PrintingEntry.Minutes(1)), entry.Text(PrintingEntry.Started(1)), entry.Text(PrintingEntry.Spoiled(1))));
    }

    [Fact]
    public void What_is_typed_into_a_tallys_line_is_kept_apart_from_other_lines()
    {
        var tally = ATally.Of(ATally.Done(0, 1));
        Assert.NotEqual(new LedgerEntry(ALedger.View(), Written.Metric).DraftKey("x").Split('/', 3)[2], Entry(tally).DraftKey("x").Split('/', 3)[2]);
        Assert.Null(new LedgerEntry(ALedger.View(), Written.Metric) is var plain && plain.Read() is { } line ? line.Tally : null);
    }

    [Fact]
    public async Task The_summary_says_what_was_tallied_and_warns_of_a_printing_that_stands_already()
    {
        await using var context = new BunitContext();
        var tally = ATally.Of(ATally.Done(0, 96), ATally.Spoiled(0, 4), ATally.Worked(0, 7500));
        string Said(params MovementRecord[] printings) => context.Render<TallySummary>(parameters => parameters
            .Add(summary => summary.Tally, tally.Tally).Add(summary => summary.Sums, tally.Sums()).Add(summary => summary.Printings, printings)
            .Add(summary => summary.Format, Written.Metric).Add(summary => summary.Address, "tally")).Find("div").TextContent;

        Assert.Contains("96 good copies came out of fold, 4 went wrong, and 2 h 5 min of work", Said(), StringComparison.Ordinal);
        Assert.DoesNotContain("already", Said(), StringComparison.Ordinal);
        Assert.Contains("50 copies printed on", Said(ALedger.Line(0, MovementKind.Printed, 50)), StringComparison.Ordinal);
    }

    private static LedgerEntry Entry(TallyWhole tally) => new(ALedger.View().Again(Records.Edition(), [], ALedger.Today, tally), Written.Metric);
}
