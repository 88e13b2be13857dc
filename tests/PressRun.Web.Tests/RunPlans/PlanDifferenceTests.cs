using PressRun.Data.RunPlans;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Web.RunPlans;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.RunPlans;

public class PlanDifferenceTests
{
    private static readonly BenchRates PackingToo = ARun.Job.Bench with { Steps = [.. ARun.Job.Bench.Steps, new BenchStep(BenchStep.Pack, 5m, 4m, 0m, 0m, 1, 0m)] };

    [Fact]
    public void Each_line_says_how_the_second_plan_differs_and_equal_ones_say_nothing()
    {
        var rows = Rows(APlan.Source(100), APlan.Source(120));
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
            var row = Rows(APlan.Source(100), APlan.Source(quantity))["A copy costs"];
            var shown = decimal.Parse(row.First, Written.Metric.Culture) - decimal.Parse(row.Second, Written.Metric.Culture);
            Assert.Equal(shown == 0m ? null : $"{shown:0.00} cheaper", row.Says);
        }
    }

    [Fact]
    public void Of_the_copy_that_pays_for_the_run_it_says_how_much_later_or_earlier_it_is()
    {
        var (few, many) = (APlan.Source(100), APlan.Source(200));
        var later = Rows(few, many)["Paid for by copy"];
        var by = int.Parse(later.Second, Written.Metric.Culture) - int.Parse(later.First, Written.Metric.Culture);
        Assert.Equal($"{by} later", later.Says);
        Assert.Equal($"{by} earlier", Rows(many, few)["Paid for by copy"].Says);
    }

    [Fact]
    public void Runs_of_different_size_are_compared_by_the_copy_and_none_of_them_is_called_dearer_as_a_whole()
    {
        var rows = Rows(APlan.Source(100), APlan.Source(200));
        Assert.Equal("of another number of copies", rows["Landed cost"].Says);
        Assert.False(rows.ContainsKey("Of it cash"));
        // A copy is folded in 36 seconds, whatever the run.
        Assert.Equal(("0.6", "0.6", null), (rows["Your minutes a copy"].First, rows["Your minutes a copy"].Second, rows["Your minutes a copy"].Says));
    }

    [Fact]
    public void Of_two_halves_each_kind_of_copy_has_a_line_of_its_own()
    {
        var whole = APlan.Source(100);
        var halved = whole with { Plan = whole.Plan with { SecondHalf = new PlanHalf(whole.Edition.Parts[1].Id, "green") } };
        var row = Rows(whole, halved)["A copy weighs"];

        var lines = row.Second.Split('\n');
        Assert.Equal(2, lines.Length);
        Assert.Equal($"{row.First} on Thin cream", lines[0]);
        Assert.EndsWith(" on Green sheet", lines[1], StringComparison.Ordinal);
        Assert.Equal("not alike in its halves", row.Says);
        Assert.Null(Rows(halved, halved)["It is thick"].Says);
    }

    [Fact]
    public void Who_only_packs_at_home_has_the_shop_bind()
    {
        var row = Rows(APlan.Source(100) with { Bench = PackingToo }, OnlyPacked with { PriceList = ARun.Shop with { Finishing = [new Finishing("stitching", FinishingUnit.Copy, 0.2m, 0m)] } })["Bound"];
        Assert.Equal(("at your own table", "by the shop"), (row.First, row.Second));
    }

    [Fact]
    public void Where_neither_the_press_nor_the_shop_binds_nobody_does_yet() =>
        Assert.Equal("nobody yet", Rows(APlan.Source(100) with { Bench = PackingToo }, OnlyPacked)["Bound"].Second);

    [Fact]
    public void Where_the_shop_binds_no_staples_and_blades_of_ones_own_are_used_up()
    {
        var bench = PackingToo with { Consumables = [new Consumable("staples", 0.01m)] };
        Assert.Equal(1.00m, APlan.Estimate((APlan.Source() with { Bench = bench }).Build()).Totals.Consumables);
        Assert.Equal(0m, APlan.Estimate((APlan.Source(change: plan => plan with { BenchSteps = [BenchStep.Pack] }) with { Bench = bench }).Build()).Totals.Consumables);
    }

    private static JobSource OnlyPacked => APlan.Source(100, plan => plan with { BenchSteps = [BenchStep.Pack] }) with { Bench = PackingToo };

    private static Dictionary<string, PlanDifference> Rows(JobSource first, JobSource second) =>
        PlanDifference.Of(APlan.Worked(first), APlan.Worked(second), Written.Metric).ToDictionary(row => row.What);
}
