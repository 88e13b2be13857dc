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
}
