using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Engine.Costing;
using PressRun.Engine.Paper;
using PressRun.Web.RunPlans;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.RunPlans;

public class PlanDifferenceTests
{
    [Fact]
    public void Each_line_says_how_the_second_plan_differs_and_equal_ones_say_nothing()
    {
        var rows = PlanDifference.Of(Plan(100), Plan(120), Written.Metric).ToDictionary(row => row.What);
        Assert.Equal("20 more", rows["Copies"].Says);
        Assert.Null(rows["Shop"].Says);
        Assert.Null(rows["A copy weighs"].Says);
        Assert.EndsWith(" cheaper", rows["A copy costs"].Says, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_copy_costs_less_is_the_difference_of_the_two_figures_shown()
    {
        for (var quantity = 101; quantity < 130; quantity++)
        {
            var row = PlanDifference.Of(Plan(100), Plan(quantity), Written.Metric).Single(line => line.What == "A copy costs");
            var shown = decimal.Parse(row.First, Written.Metric.Culture) - decimal.Parse(row.Second, Written.Metric.Culture);
            Assert.Equal(shown == 0m ? null : $"{shown:0.00} cheaper", row.Says);
        }
    }

    private static (PlanCosting Costing, RunAnswer Answer) Plan(int quantity)
    {
        var press = new PressRecord(PressId.New(), "A press", "USD", UnitSystem.Metric, PaperRegion.Iso, false, 1);
        var plan = new PlanRecord(
            Guid.NewGuid(), Guid.NewGuid(), "A plan", Guid.NewGuid(), "willow", ARun.Day, quantity, null, new Dictionary<Guid, string>(), null, null, true, 1);
        var costing = PlanCosting.Of(new JobSource(press, Records.Edition(), plan, ARun.Shop, ARun.Stocks, ARun.Job.Bench, [], [], ARun.Job.Channels));
        return (costing, costing.Worked!.At(quantity).Value);
    }
}
