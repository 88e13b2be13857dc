using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Tests.Support;

namespace PressRun.Engine.Tests.Costing;

public class BenchAgainstShopTests
{
    [Fact]
    public void At_the_equal_rate_both_ways_cost_the_same_to_the_minor_unit()
    {
        var (shop, bench) = Ways();

        var compared = BenchAgainstShop.Compare(shop, bench, 150);

        Assert.True(compared.Succeeded);
        var rate = Assert.NotNull(compared.Value.EqualHourlyRate);
        var again = BenchAgainstShop.Compare(At(shop, rate), At(bench, rate), 150).Value;
        Assert.InRange(Math.Abs(again.AtShop.Totals.LandedCost - again.AtBench.Totals.LandedCost), 0m, 0.01m);
    }

    [Fact]
    public void Below_the_equal_rate_the_own_table_is_the_cheaper_and_above_it_the_shop()
    {
        var (shop, bench) = Ways();
        var rate = BenchAgainstShop.Compare(shop, bench, 150).Value.EqualHourlyRate!.Value;

        var below = BenchAgainstShop.Compare(At(shop, rate - 1m), At(bench, rate - 1m), 150).Value;
        var above = BenchAgainstShop.Compare(At(shop, rate + 1m), At(bench, rate + 1m), 150).Value;

        Assert.True(below.AtBench.Totals.LandedCost < below.AtShop.Totals.LandedCost);
        Assert.True(above.AtBench.Totals.LandedCost > above.AtShop.Totals.LandedCost);
    }

    [Fact]
    public void There_is_no_equal_rate_where_no_hours_are_saved()
    {
        var (shop, _) = Ways();

        Assert.Null(BenchAgainstShop.Compare(shop, shop, 150).Value.EqualHourlyRate);
    }

    // The shop staples at a price that no table of one's own asks; at the table the whole bench is busy.
    private static (Job Shop, Job Bench) Ways()
    {
        var job = ExampleJob.Create();
        var stapling = new Finishing("stapling", FinishingUnit.Copy, 0.90m, 0m);
        return (
            job with { Shop = job.Shop with { Finishing = [.. job.Shop.Finishing, stapling] }, Bench = job.Bench with { Steps = [] } },
            job);
    }

    private static Job At(Job job, decimal rate) => job with { Bench = job.Bench with { HourlyRate = rate } };
}
