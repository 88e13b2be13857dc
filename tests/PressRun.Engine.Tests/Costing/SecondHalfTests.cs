using PressRun.Engine.Bench;
using PressRun.Engine.Comparing;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Imposing;
using PressRun.Engine.Measures;
using PressRun.Engine.Tests.Support;

namespace PressRun.Engine.Tests.Costing;

/// <summary>A job of which the second half has a part on another stock is the run that comparing calls halves.</summary>
public class SecondHalfTests
{
    private static readonly Job Halved = ExampleJob.Create() with { SecondHalf = new SecondHalf(1, "blue-text") };

    private static readonly HalvesChoice CreamAndBlue = new(1, "cream-text", "blue-text");

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(150)]
    [InlineData(151)]
    public void It_costs_what_the_comparison_says_of_the_halves_at_any_quantity(int quantity)
    {
        var compared = HalvesReading.Of(ExampleJob.Create(), CreamAndBlue, quantity).Value.Halves;
        var prepared = PreparedJob.Prepare(Halved).Value;

        var estimate = prepared.Estimate(quantity).Value;

        Assert.Equal(compared.Estimate.Totals, estimate.Totals);
        Assert.Equal(compared.Estimate.Lines, estimate.Lines);
        Assert.Equal(Jobs.LandedCost(prepared, quantity), estimate.Totals.LandedCost);
        Assert.Equal((compared.Estimate.Copy, compared.OtherCopy), (estimate.Copy, estimate.SecondHalf!.Copy));
        Assert.Equal(compared.OtherInHand.Select(way => way.Postage?.Price), estimate.SecondHalf.Postage.Select(choice => choice.Price));
        Assert.Equal((quantity - (quantity / 2), quantity / 2), (estimate.SecondHalf.FirstCopies, estimate.SecondHalf.Copies));
    }

    [Fact]
    public void Each_half_has_sheets_of_its_own_and_they_are_those_that_are_paid_for()
    {
        var prepared = PreparedJob.Prepare(Halved).Value;
        var estimate = prepared.Estimate(151).Value;

        var sheets = SheetImposer.Impose(prepared, estimate);

        Assert.Equal(["cover", "inside", "inside", "centre"], estimate.Parts.Select(part => part.Name));
        Assert.Equal(["silk-cover", "cream-text", "blue-text", "blue-text"], prepared.OrderedPieces.Select(pieces => pieces.Stock.Id));
        Assert.Equal([0, 1, 3], Enumerable.Range(0, 3).Select(estimate.PlaceOf));
        Assert.Equal(Enumerable.Range(1, sheets.Count), sheets.Select(sheet => sheet.Number));
        foreach (var (half, place) in new[] { (1, 1), (2, 2) })
        {
            Assert.Equal(estimate.Parts[place].OnSheets!.Sheets, sheets.Where(sheet => sheet.Half == half).Sum(sheet => sheet.Prints));
        }

        Assert.Equal(["Cream text", "Blue text"], sheets.Select(sheet => sheet.HalfOn).OfType<string>().Distinct());
    }

    [Fact]
    public void At_the_table_every_pile_has_enough_for_all_copies_and_names_both_papers()
    {
        var prepared = PreparedJob.Prepare(Halved with { Shop = Halved.Shop with { Delivers = Delivered.FlatSheets } }).Value;
        var estimate = prepared.Estimate(151).Value;

        var sheet = BenchSheet.Of(prepared, estimate, BenchLimits.Usual);

        Assert.Equal(Enumerable.Range(1, 36), sheet.Book.Sides.Select(side => side.Page).OfType<int>().Order());
        Assert.All(sheet.Piles, pile => Assert.True(pile.Pieces >= estimate.CopiesToStart));
        Assert.All(sheet.Piles, pile => Assert.Equal(pile.PartIndex == 1 ? "blue-text" : null, pile.SecondHalf?.Stock.Id));
    }

    // A copy of the second half is of two stocks where one of the first is of one: the shop that lays one stock together cannot lay all of them.
    [Fact]
    public void A_shop_that_lays_copies_of_one_stock_together_must_find_both_halves_to_be_such()
    {
        var job = ExampleJob.Create().WithStocks((0, "cream-text"), (2, "cream-text"));
        var same = job with { Shop = job.Shop with { Collates = Collating.SameStock, Print = [.. job.Shop.Print], Paper = [.. job.Shop.Paper] } };

        Assert.True(PreparedJob.Prepare(same).Value.ShopCollates);
        Assert.False(PreparedJob.Prepare(same with { SecondHalf = new SecondHalf(1, "blue-text") }).Value.ShopCollates);
    }

    // Of the halves the second may be the thicker, heavier one: what is pointed out is true of all copies.
    [Fact]
    public void What_concerns_the_second_half_alone_is_pointed_out_too()
    {
        var job = Halved;
        var thick = job.Stocks.First(stock => stock.Id == "blue-text") with { StatedCaliper = Length.FromMicrometres(400m) };
        job = job with { Stocks = [.. job.Stocks.Select(stock => stock.Id == thick.Id ? thick : stock)], Edition = job.Edition with { Trim = job.Edition.Trim with { ForeEdge = Length.Zero } } };
        var (first, second) = (At(job with { SecondHalf = null }), At(job));

        Assert.Equal(first.Copy.Creep, second.Copy.Creep);
        Assert.True(second.MostCreep > second.Copy.Creep);
        Assert.Equal(second.SecondHalf!.Copy.Creep, second.MostCreep);
        var between = job with { Edition = job.Edition with { Trim = job.Edition.Trim with { ForeEdge = second.Copy.Creep + Length.FromMillimetres(0.01m) } } };
        Assert.DoesNotContain(At(between with { SecondHalf = null }).Warnings, warning => warning.Code == WarningCode.CreepExceedsTrim);
        Assert.Contains(At(between).Warnings, warning => warning.Code == WarningCode.CreepExceedsTrim);
        var prepared = PreparedJob.Prepare(between).Value;
        var caution = Assert.Single(BenchCaution.Of(prepared, At(between), BenchLimits.Usual), caution => caution.Code == BenchCautionCode.CreepBeyondTrim);
        Assert.Equal(At(between).MostCreep, caution.Has);

        static Estimate At(Job job) => PreparedJob.Prepare(job).Value.Estimate(150).Value;
    }

    [Theory]
    [InlineData(7, "blue-text", "$.halves.part")]
    [InlineData(1, "velvet", "$.halves.second")]
    [InlineData(1, "cream-text", "$.halves.second")]
    public void What_makes_no_two_halves_is_refused_by_its_path(int part, string stock, string path) =>
        Assert.Equal(path, Assert.Single(PreparedJob.Prepare(ExampleJob.Create() with { SecondHalf = new SecondHalf(part, stock) }).Problems).Path);

    [Fact]
    public void Comparing_papers_of_such_a_job_compares_whole_runs()
    {
        var request = new ComparisonRequest([new StockChoice(1, ["cream-text", "blue-text"])], [CreamAndBlue], [150]);
        var (whole, halved) = (StockComparer.Compare(ExampleJob.Create(), request, TestContext.Current.CancellationToken).Value, StockComparer.Compare(Halved, request, TestContext.Current.CancellationToken).Value);

        Assert.Equal(whole.Rows.Select(row => row.Estimate.Totals), halved.Rows.Select(row => row.Estimate.Totals));
        Assert.Equal(whole.Halves[0].Estimate.Totals, halved.Halves[0].Estimate.Totals);
    }
}
