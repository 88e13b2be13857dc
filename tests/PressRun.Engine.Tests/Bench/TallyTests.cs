using CsCheck;
using PressRun.Engine.Bench;
using PressRun.Engine.Copies;

namespace PressRun.Engine.Tests.Bench;

/// <summary>Sums are checked against entries counted one by one; the usual spoilage against the binomial's mean (any textbook: n copies of which each
/// goes wrong with odds p lose n·p).</summary>
public sealed class TallyTests
{
    private static readonly TallyStep[] Steps =
    [
        new("collate", WorkKind.Collate, 0m, 40m), new("stitch", WorkKind.Staple, 0.05m, 30m), new("fold", WorkKind.Fold, 0.10m, 20m),
    ];

    [Fact]
    public void What_is_left_of_a_step_is_what_lies_on_the_table_less_what_went_wrong_on_the_way_to_it()
    {
        // 110 copies; 2 torn while collating, 3 stapled wrong, 1 folded wrong.
        var tally = Of(Done(0, 60), Spoiled(0, 2), Done(1, 40), Spoiled(1, 3), Done(2, 30), Spoiled(2, 1));

        Assert.Equal([48, 65, 74], tally.Steps.Select(step => step.Left));
        Assert.Equal((6, 4, 30), (tally.Spoiled, tally.Spare, tally.Good));
    }

    [Fact]
    public void Hours_of_two_people_at_one_table_add_up()
    {
        var tally = Of(Worked(0, 600, "Ada"), Worked(0, 600, "Ben"), Worked(0, 90, "Ada"), Worked(1, 60, "Ada"));

        Assert.Equal((1290, 21.5m), (tally.Steps[0].Seconds, tally.Steps[0].Minutes));
        Assert.Equal([("Ada", 690), ("Ben", 600)], tally.Steps[0].People.Select(person => (person.By, person.Seconds)));
        Assert.Equal(1350, tally.Seconds);
    }

    [Fact]
    public void What_was_taken_back_leaves_nothing_not_even_its_name()
    {
        var tally = Of(Done(0, 5, "Ada"), Done(0, 3, "Ben"), Done(0, -3, "Ben"));

        Assert.Equal(["Ada"], tally.Steps[0].People.Select(person => person.By));
        Assert.Equal(5, tally.Steps[0].Done);
    }

    [Fact]
    public void Nothing_counted_yet_will_usually_lose_what_the_steps_lose()
    {
        // 110 × (1 − 0.95 × 0.9) = 15.95.
        Assert.Equal(15.95m, Of().Further);
        Assert.Equal((10, 0), (Of().Spare, Of().Good));
    }

    [Fact]
    public void Copies_meet_only_the_steps_that_they_have_not_come_through()
    {
        // 50 wait for collating and 20 for stapling, at 14.5 %; 30 wait for folding at 10 %; 10 are books.
        var tally = Of(Done(0, 60), Done(1, 40), Done(2, 10));

        Assert.Equal((50 * 0.145m) + (20 * 0.145m) + (30 * 0.1m), tally.Further);
    }

    [Fact]
    public void A_step_at_which_nobody_counts_is_passed_by_those_that_came_out_of_a_later_one()
    {
        // Stapling is not counted: 40 are folded and 2 folded wrong, so 42 were stapled; 18 more are collated, 50 lie flat.
        var tally = Of(Done(0, 60), Done(2, 40), Spoiled(2, 2));

        Assert.Equal((18 + 50) * 0.145m, tally.Further);
    }

    [Fact]
    public void More_than_there_were_is_said_as_it_was_counted()
    {
        var tally = Of(Done(0, 112), Spoiled(1, 20));

        Assert.Equal([-2, 90, 90], tally.Steps.Select(step => step.Left));
        Assert.Equal(-10, tally.Spare);
        Assert.True(tally.Further >= 0);
    }

    [Fact]
    public void What_the_ledger_gets_are_the_steps_at_which_something_was_written_down()
    {
        var tally = Of(Done(1, 96, "Ada"), Spoiled(1, 4, "Ben"), Worked(1, 1800, "Ada"), Worked(1, 900, "Ben"));

        Assert.Equal([new StepActual("stitch", 45m, 100, 4)], tally.Actuals());
        Assert.Equal(96, tally.Good);
    }

    [Fact]
    public void The_order_of_the_entries_does_not_matter_and_every_figure_is_their_sum() =>
        Gen.Select(Gen.Int[0, 2], Gen.Enum<TallyKind>(), Gen.Int[1, 10], Gen.OneOf(Gen.Const("Ada"), Gen.Const("Ben"), Gen.Const("")))
            .Select((step, kind, number, by) => kind == TallyKind.Worked ? Worked(step, number, by) : new TallyEntry(step, kind, number, 0, by))
            .Array[0, 40].Sample(entries =>
            {
                var (tally, turned) = (Of(entries), Of([.. entries.Reverse()]));
                foreach (var (place, step) in tally.Steps.Index())
                {
                    var mine = entries.Where(entry => entry.Step == place).ToList();
                    Assert.Equal(mine.Where(entry => entry.Kind == TallyKind.Done).Sum(entry => entry.Copies), step.Done);
                    Assert.Equal(mine.Sum(entry => entry.Seconds), step.Seconds);
                    Assert.Equal(step.Done, step.People.Sum(person => person.Done));
                    Assert.Equal((step.Done, step.Spoiled, step.Left, step.Seconds), (turned.Steps[place].Done, turned.Steps[place].Spoiled, turned.Steps[place].Left, turned.Steps[place].Seconds));
                }

                Assert.Equal(tally.Further, turned.Further);
                Assert.Equal(tally.Copies - tally.Wanted - entries.Where(entry => entry.Kind == TallyKind.Spoiled).Sum(entry => entry.Copies), tally.Spare);
            });

    private static Tally Of(params TallyEntry[] entries) => Tally.Of(110, 100, Steps, entries);

    private static TallyEntry Done(int step, int copies, string by = "Ada") => new(step, TallyKind.Done, copies, 0, by);

    private static TallyEntry Spoiled(int step, int copies, string by = "Ada") => new(step, TallyKind.Spoiled, copies, 0, by);

    private static TallyEntry Worked(int step, int seconds, string by) => new(step, TallyKind.Worked, 0, seconds, by);
}
