using PressRun.Engine.Comparing;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Tests.Support;

namespace PressRun.Engine.Tests.Comparing;

public class StockComparerTests
{
    private static readonly string[] Papers = ["silk-cover", "cream-text", "blue-text"];

    [Fact]
    public void Every_row_is_the_same_as_the_job_by_itself()
    {
        var job = ExampleJob.Create();
        var comparison = Compare(job, new([new(0, Papers), new(1, Papers)], [], [80, 150]));
        Assert.Equal(18, comparison.Rows.Count);
        foreach (var row in comparison.Rows)
        {
            var alone = PreparedJob.Prepare(job.WithStocks((0, row.StockIds[0]), (1, row.StockIds[1]))).Value.Estimate(row.Estimate.Quantity).Value;
            Assert.Equal(alone.Totals, row.Estimate.Totals);
            Assert.Equal(alone.Copy, row.Estimate.Copy);
            Assert.Equal(alone.Freight, row.Estimate.Freight);
        }
    }

    [Fact]
    public void Rows_on_mixed_layouts_are_the_same_as_the_job_by_itself()
    {
        var example = ExampleJob.Create();
        var job = example with
        {
            Shop = example.Shop with
            {
                Sheets = [.. example.Shop.Sheets.Select(sheet => sheet with { MixedLayout = true })],
                Paper = [.. Papers.Select((stock, place) => example.Shop.Paper[0] with { StockId = stock, Steps = [new(1, 0.05m + (0.01m * place))] })],
            },
        };
        var comparison = Compare(job, new([new(0, Papers), new(1, Papers)], [], [150]));
        Assert.Equal(9, comparison.Rows.Count);
        Assert.All(comparison.Rows, row => Assert.Equal(
            PreparedJob.Prepare(job.WithStocks((0, row.StockIds[0]), (1, row.StockIds[1]))).Value.Estimate(150).Value.Totals, row.Estimate.Totals));
    }

    [Fact]
    public void Paper_of_next_to_no_thickness_leaves_room_for_as_many_leaves_as_its_weight_allows()
    {
        var job = ExampleJob.Create();
        var thin = job with { Stocks = [.. job.Stocks.Select(stock => stock with { StatedCaliper = Length.FromMillimetres(1e-28m) })] };
        var (row, gauged) = (OnlyRow(thin), OnlyRow(job));

        Assert.Contains(row.InHand, hand => hand.Postage is not null);
        Assert.All(gauged.InHand.Zip(row.InHand), pair =>
            Assert.All(pair.First.HeadroomLeaves.Zip(pair.Second.HeadroomLeaves), leaves => Assert.True(leaves.Second >= leaves.First)));

        ComparedRow OnlyRow(Job of) => Assert.Single(Compare(of, new([new(1, ["cream-text"])], [], [150])).Rows);
    }

    [Fact]
    public void A_heavier_paper_never_weighs_less()
    {
        var job = ExampleJob.Create();
        Stock[] heavier = [.. Enumerable.Range(0, 12).Select(step => job.Stocks[1] with { Id = $"w{step}", Weight = PaperWeight.FromGrammage(60 + (10 * step)) })];
        var shop = job.Shop with { Paper = [.. job.Shop.Paper, .. heavier.Select(stock => job.Shop.Paper[1] with { StockId = stock.Id })] };
        var comparison = Compare(job with { Stocks = [.. job.Stocks, .. heavier], Shop = shop }, new([new(1, [.. heavier.Select(stock => stock.Id)])], [], [150]));
        var masses = comparison.Rows.Select(row => row.Estimate.Copy.Mass.Grams).ToList();
        Assert.Equal(masses.Order(), masses);
        Assert.Equal(12, masses.Distinct().Count());
    }

    [Fact]
    public void Marks_name_the_cheapest_the_lightest_and_where_the_post_grows_dearer()
    {
        var job = ExampleJob.Create();
        Stock[] papers = [.. new[] { 90, 120, 150, 200 }.Select(gsm => new Stock($"g{gsm}", "", PaperWeight.FromGrammage(gsm), null, 1.3m, null))];
        var shop = job.Shop with { Paper = [.. job.Shop.Paper, .. papers.Select((stock, place) => job.Shop.Paper[1] with { StockId = stock.Id, Steps = [new(1, 0.10m - (0.01m * place))] })] };
        var comparison = Compare(job with { Stocks = [.. job.Stocks, .. papers], Shop = shop }, new([new(1, [.. papers.Select(stock => stock.Id)])], [], [150]));
        Assert.Equal(ComparisonMarks.Lightest, comparison.Rows[0].Marks & ComparisonMarks.Lightest);
        Assert.Equal(ComparisonMarks.Cheapest, comparison.Rows[3].Marks & ComparisonMarks.Cheapest);

        // The lightest is posted up to 100 g; by hand, 14 leaves of 5.5 × 8.5 in weigh 50.7 g at 120 g/m², which makes 97 g with cover, centre and mailer.
        Assert.Equal(1, comparison.Rows.ToList().FindIndex(row => row.Marks.HasFlag(ComparisonMarks.HeaviestInStep)));
        Assert.Equal(2, comparison.Rows.ToList().FindIndex(row => row.Marks.HasFlag(ComparisonMarks.FirstOverStep)));
    }

    [Fact]
    public void Other_papers_are_told_as_the_scale_would_where_a_copy_was_weighed()
    {
        var job = ExampleJob.Create();
        var request = new ComparisonRequest([new(1, Papers)], [], [150]);
        var reckoned = Compare(job, request).Rows;
        var own = PreparedJob.Prepare(job).Value.Copy;
        var onScale = new Weighed(own.Mass + Mass.FromGrams(3m), own.Thickness + Length.FromMillimetres(0.5m));
        var weighed = Compare(job with { Edition = job.Edition with { Weighed = onScale } }, request).Rows;

        // 3 g and half a millimetre over what is reckoned on the paper that was weighed, so on every other.
        Assert.Equal(reckoned.Select(row => decimal.Round(row.Estimate.Copy.Mass.Grams + 3m, 12)), weighed.Select(row => decimal.Round(row.Estimate.Copy.Mass.Grams, 12)));
        Assert.Equal(
            reckoned.Select(row => decimal.Round(row.Estimate.Copy.Thickness.Millimetres + 0.5m, 12)), weighed.Select(row => decimal.Round(row.Estimate.Copy.Thickness.Millimetres, 12)));
    }

    [Fact]
    public void Headroom_in_leaves_is_as_many_as_really_fit()
    {
        var row = Assert.Single(Compare(ExampleJob.Create(), new([], [], [150])).Rows);
        var post = Assert.Single(row.InHand, inHand => inHand.Postage is not null);

        // 15.8 g to the step; leaves of 5.5 × 8.5 in weigh 6.5, 2.7 and 2.7 g (area × grammage, ISO 536).
        Assert.Equal([2, 5, 5], post.HeadroomLeaves);
        Assert.Equal(row.Estimate.Totals.LandedCost / 150 + 0.35m + 1.60m, post.Cost);
    }

    [Fact]
    public void Halves_share_one_order_and_cost_less_than_two()
    {
        var job = ExampleJob.Create();
        var halves = Assert.Single(Compare(job, new([], [new(1, "cream-text", "blue-text")], [150])).Halves);
        var one = PreparedJob.Prepare(job).Value.Estimate(75).Value;
        var other = PreparedJob.Prepare(job.WithStocks((1, "blue-text"))).Value.Estimate(75).Value;
        Assert.True(halves.Estimate.Totals.LandedCost < one.Totals.LandedCost + other.Totals.LandedCost);
        Assert.Equal(halves.Estimate.Totals.Goods, halves.Estimate.Lines.Where(line => line.Code <= CostCode.Finishing).Sum(line => line.Amount));

        // 157 copies started: 79 on one paper and 78 on the other, 7 pieces a copy, two out of a sheet: 3 × 79 + 40 and 3 × 78 + 39 sheets.
        Assert.Equal([79L, 277L, 273L, 79L], halves.Estimate.Parts.Select(part => part.OnSheets!.Sheets));
        Assert.Equal(3m, Assert.Single(halves.Estimate.Lines, line => line.Code == CostCode.SetUpPart).Quantity);
        Assert.Equal(one.Copy, halves.Estimate.Copy);
        Assert.Equal(other.Copy, halves.OtherCopy);
    }

    [Fact]
    public void Halves_on_the_same_paper_are_the_run_itself()
    {
        var job = ExampleJob.Create();
        var halves = Assert.Single(Compare(job, new([], [new(1, "cream-text", "cream-text")], [150])).Halves);
        Assert.Equal(PreparedJob.Prepare(job).Value.Estimate(150).Value.Totals, halves.Estimate.Totals);
    }

    [Fact]
    public void A_paper_without_a_price_is_told_of_and_the_others_are_compared()
    {
        var job = ExampleJob.Create();
        var dear = new Stock("no-price", "No price", PaperWeight.FromGrammage(100m), null, 1.3m, null);
        var comparison = Compare(job with { Stocks = [.. job.Stocks, dear] }, new([new(1, ["cream-text", "no-price"])], [], [150]));
        Assert.Single(comparison.Rows);
        Assert.Contains("no-price", Assert.Single(comparison.Refused).StockIds);
    }

    [Fact]
    public void Too_many_rows_and_unknown_papers_are_refused()
    {
        var job = ExampleJob.Create();
        Assert.False(StockComparer.Compare(job, new([new(0, ["absent"])], [], [150])).Succeeded);
        Assert.False(StockComparer.Compare(job, new([new(0, Papers)], [], [.. Enumerable.Range(1, 20_000)])).Succeeded);
        Assert.False(StockComparer.Compare(job, new([], [], [0])).Succeeded);
    }

    private static StockComparison Compare(Job job, ComparisonRequest request) => StockComparer.Compare(job, request).Value;
}
