using PressRun.Engine.Costing;
using PressRun.Engine.Ladder;
using PressRun.Web.RunPlans;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.RunPlans;

public class PlanCostingTests
{
    [Theory]
    [InlineData(100, 25, 300)]
    [InlineData(5_000, 1_250, 15_000)]
    [InlineData(1_000_000, 995_000, 1_000_000)]
    [InlineData(200_000, 195_000, 210_000)]
    public void The_staircase_stays_around_the_run_however_large_it_is(int quantity, int from, int to)
    {
        var curve = PlanCosting.Of(APlan.Source(quantity)).Worked!.Curve;
        Assert.Equal((from, to), (curve.From, curve.To));
    }

    [Fact]
    public void A_range_that_a_plan_names_is_shown_no_wider_than_can_be_drawn()
    {
        var curve = PlanCosting.Of(APlan.Source(6_000, plan => plan with { Ladder = new LadderRange(1, 1_000_000, 1) })).Worked!.Curve;
        Assert.Equal((1_000, 16_000), (curve.From, curve.To));
    }

    // About a second of work for each time that it is gone through.
    private const double MostEffort = 1_000_000d;

    [Fact]
    public void Of_a_job_that_takes_long_only_as_many_quantities_are_shown_as_a_bounded_work_allows()
    {
        var worked = PlanCosting.Of(HeavyRun.Source(6_000, plan => plan with { Ladder = new LadderRange(1, 1_000_000, 1) })).Worked!;
        var (from, to) = (worked.Curve.From, worked.Curve.To);
        Assert.InRange(6_000, from + 10, to - 10);
        Assert.InRange(HeavyRun.Effort(worked.Prepared.Job, from, to), MostEffort / 2, MostEffort);
        Assert.True(worked.IsNarrowed);
        Assert.False(PlanCosting.Of(APlan.Source(6_000)).Worked!.IsNarrowed);
    }

    [Theory]
    [InlineData(100, 1, 1_000_000)]
    [InlineData(100, 100, 100)]
    [InlineData(1, 1, 1_000_000)]
    [InlineData(5_000, 1, 5_000)]
    public void However_long_a_job_takes_its_own_quantity_and_a_handful_around_it_are_shown(int quantity, int from, int to)
    {
        var prepared = PreparedJob.Prepare(HeavyRun.OfManyParts).Value;
        var range = ShownRange.Of(prepared, quantity, new LadderRange(from, to, 1));
        Assert.InRange(quantity, range.From, range.To);
        Assert.InRange(range.To - range.From + 1, Math.Min(10, to - from + 1), 15);
        Assert.Equal(from < to, range.IsNarrowed);
    }

    [Fact]
    public void Plans_are_worked_out_when_they_are_looked_at()
    {
        var (source, costings) = HeavyRun.Counted(APlan.Source());
        var costing = PlanCosting.Of(source);
        Assert.Equal(0, costings());
        Assert.Equal(276, costing.Worked!.Curve.Costs.Count);
        Assert.InRange(costings(), 276, 1_000);
    }

    [Fact]
    public void Steps_ahead_are_looked_for_no_further_than_the_range_is_wide()
    {
        var (source, costings) = HeavyRun.Counted(APlan.Source(200_000));
        var worked = PlanCosting.Of(source).Worked!;
        var before = costings();
        Assert.True(worked.At(1).Succeeded);
        Assert.InRange(costings() - before, 1, 2 * worked.Curve.Costs.Count);
        Assert.Equal(worked.Prepared.LookAhead(196_000, worked.Curve.To).Value.Steps, worked.At(196_000).Value.Outlook.Steps);
    }

    [Fact]
    public void The_job_file_of_a_plan_names_the_quantities_that_its_page_shows_and_is_not_worked_out_for_it()
    {
        var (source, costings) = HeavyRun.Counted(APlan.Source(5_000));
        var ladder = RunFiles.JobOf(source).Ladder!.Value;
        Assert.InRange(costings(), 0, 20);
        var curve = PlanCosting.Of(source).Worked!.Curve;
        Assert.Equal((curve.From, curve.To), (ladder.From, ladder.To));
    }
}
