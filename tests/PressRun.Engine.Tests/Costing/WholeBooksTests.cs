using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Costing;

public sealed class WholeBooksTests
{
    private static readonly BookPrice Price =
        new(Binding.Saddle, 4, 64, null, [new BookStep(1, 1.20m, 0.03m), new BookStep(100, 1m, 0.02m)]);

    private static readonly Job Books = Plain().With(shop => shop with { BookPrices = [Price], Delivers = null });

    [Fact]
    public void A_copy_costs_its_price_and_that_of_its_pages_at_the_step_reached()
    {
        var line = Books.Estimate().Line(CostCode.Book);
        Assert.Equal((100m, 1.08m, 108m), (line.Quantity, line.Each, line.Amount));
        Assert.Equal(1.32m, (Books with { Quantity = 99 }).Estimate().Line(CostCode.Book).Each);
    }

    [Fact]
    public void Whole_books_win_over_print_and_paper_and_have_no_sheets()
    {
        var estimate = Books.Estimate();
        Assert.DoesNotContain(estimate.Lines, line => line.Code is CostCode.Print or CostCode.Paper);
        Assert.Null(Assert.Single(estimate.Parts).OnSheets);
    }

    [Fact]
    public void The_first_price_that_fits_binding_pages_and_stocks_is_taken()
    {
        BookPrice[] prices =
        [
            Price with { Binding = Binding.Perfect, Steps = [new BookStep(1, 1m, 0m)] },
            Price with { PagesFrom = 8, Steps = [new BookStep(1, 2m, 0m)] },
            Price with { PagesTo = 3, PagesFrom = 1, Steps = [new BookStep(1, 3m, 0m)] },
            Price with { StockIds = ["other"], Steps = [new BookStep(1, 4m, 0m)] },
            Price with { StockIds = ["plain"], Steps = [new BookStep(1, 5m, 0m)] },
            Price with { Steps = [new BookStep(1, 6m, 0m)] },
        ];
        Assert.Equal(5m, Books.With(shop => shop with { BookPrices = prices }).Estimate().Line(CostCode.Book).Each);
    }

    [Fact]
    public void Without_a_price_that_fits_print_and_paper_are_used_and_without_those_the_job_is_refused()
    {
        var perfect = Books.With(shop => shop with { BookPrices = [Price with { Binding = Binding.Perfect }] });
        Assert.Equal(25m, perfect.Estimate().Totals.Goods);
        Assert.Equal("$.shop.bookPrices", Assert.Single(perfect.With(shop => shop with { Sheets = [], Print = [], Paper = [] }).Problems()).Path);
    }

    [Fact]
    public void Bound_books_come_collated_and_trimmed_unless_the_list_says_untrimmed()
    {
        var job = Books.WithBench(bench => bench with { Steps = [Step("collate", spoilage: 0.2m)], FittingsMass = G(1) })
            .WithEdition(edition => edition with { Trim = new Trim(Mm(10), default, default, default) });
        Assert.Equal(100, job.Estimate().CopiesToStart);
        Assert.Equal(500m, job.Estimate().Freight.Mass.Grams); // 100 × (200 × 200 mm × 100 g/m² + 1 g).
        Assert.Equal(520m, job.With(shop => shop with { Delivers = Delivered.UntrimmedCopies }).Estimate().Freight.Mass.Grams);
    }

    [Theory]
    [InlineData(Delivered.FlatSheets)]
    [InlineData(Delivered.CutPieces)]
    public void Bound_books_cannot_be_sent_as_sheets_or_pieces(Delivered delivers) =>
        Assert.Equal("$.shop.delivers", Assert.Single(Books.With(shop => shop with { Delivers = delivers }).Problems()).Path);

    [Fact]
    public void Finishing_by_the_sheet_is_refused_where_there_are_no_sheets()
    {
        var job = Books.With(shop => shop with { Finishing = [new Finishing("cutting", FinishingUnit.Copy, 1m, 0m), new Finishing("coating", FinishingUnit.Sheet, 1m, 0m)] });
        Assert.Equal("$.shop.finishing[1].per", Assert.Single(job.Problems()).Path);
    }

    [Fact]
    public void Where_only_some_quantities_are_sold_the_copies_to_start_go_up_to_the_next()
    {
        var job = Plain().With(shop => shop with { Quantities = [25, 50, 100] });
        Assert.Equal([25L, 25L, 50L, 100L], new[] { 1, 25, 26, 100 }.Select(quantity => (job with { Quantity = quantity }).Estimate().CopiesToStart));
        var problem = Assert.Single(job.Prepared().Estimate(101).Problems);
        Assert.Equal("$.quantity", problem.Path);
        Assert.Contains("100 at most", problem.Rule, StringComparison.Ordinal);
    }
}
