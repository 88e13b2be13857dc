using PressRun.Engine.Comparing;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Tests.Support;

namespace PressRun.Engine.Tests.Comparing;

public class HalvesReadingTests
{
    private static readonly HalvesChoice CreamAndBlue = new(1, "cream-text", "blue-text");

    [Fact]
    public void The_whole_runs_and_the_two_orders_beside_the_halves_are_what_the_jobs_themselves_say()
    {
        var job = ExampleJob.Create();
        var reading = HalvesReading.Of(job, CreamAndBlue, 151).Value;

        var (cream, blue) = (PreparedJob.Prepare(job).Value, PreparedJob.Prepare(job.WithStocks((1, "blue-text"))).Value);
        Assert.Equal(cream.Estimate(151).Value.Totals, reading.AllOnFirst.Estimate.Totals);
        Assert.Equal(blue.Estimate(151).Value.Totals, reading.AllOnSecond.Estimate.Totals);
        Assert.Equal(Jobs.LandedCost(cream, 76) + Jobs.LandedCost(blue, 75), reading.TwoOrders);
        Assert.Equal(reading.Halves.Estimate.Totals.LandedCost - reading.AllOnFirst.Estimate.Totals.LandedCost, reading.MoreThanFirst);
        Assert.True(reading.SavedByOneOrder > 0m);
    }

    [Fact]
    public void A_copy_that_was_weighed_on_the_first_paper_says_nothing_of_the_second()
    {
        var job = ExampleJob.Create();
        var weighed = job with { Edition = job.Edition with { Weighed = new Weighed(Mass.FromGrams(500m), null) } };
        var halves = HalvesReading.Of(weighed, CreamAndBlue, 150).Value.Halves;

        Assert.Equal(PreparedJob.Prepare(job).Value.Copy, halves.Estimate.Copy);
        Assert.Equal(PreparedJob.Prepare(job.WithStocks((1, "blue-text"))).Value.Copy, halves.OtherCopy);
    }

    [Fact]
    public void A_single_copy_makes_no_two_orders() => Assert.Null(HalvesReading.Of(ExampleJob.Create(), CreamAndBlue, 1).Value.TwoOrders);

    [Fact]
    public void A_shop_with_a_price_per_copy_for_each_paper_says_why_halves_are_two_orders()
    {
        var job = ExampleJob.Create();
        BookPrice For(string paper, decimal each) => new(Binding.Saddle, 1, 100, ["silk-cover", paper, "blue-text"], [new BookStep(1, each, 0m)]);
        var books = job with { Shop = job.Shop with { Sheets = [], Print = [], Paper = [], Finishing = [], Delivers = null, BookPrices = [For("cream-text", 2m), For("blue-text", 2.2m)] } };

        Assert.Contains("two orders", Assert.Single(HalvesReading.Of(books, CreamAndBlue, 100).Problems).Rule, StringComparison.Ordinal);
    }

    [Fact]
    public void A_paper_without_a_price_is_refused() =>
        Assert.NotEmpty(HalvesReading.Of(WithoutBluePrice(), CreamAndBlue, 100).Problems);

    private static Job WithoutBluePrice()
    {
        var job = ExampleJob.Create();
        return job with { Shop = job.Shop with { Paper = [.. job.Shop.Paper.Where(price => price.StockId != "blue-text")] } };
    }
}
