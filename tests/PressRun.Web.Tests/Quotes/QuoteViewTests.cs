using System.Text;
using PressRun.Web.Quotes;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Quotes;

public sealed class QuoteViewTests
{
    [Fact]
    public void The_frozen_figures_are_those_of_the_costing()
    {
        var (view, estimate) = (AQuote.View(), ARun.Prepared.Estimate(100).Value);

        Assert.NotNull(view.Worked);
        Assert.Equal(estimate.Totals.LandedCost, view.Figures.Landed);
        Assert.Equal(estimate.Totals.ShopTotal, view.Figures.ShopTotal);
        Assert.Equal(estimate.Copy.Mass.Grams, view.Figures.Mass.Grams, 4);
        Assert.Equal(estimate.Lines.Select(line => line.Amount), view.Figures.Lines.Select(line => line.Amount));
        Assert.Equal(view.Figures.Landed, QuoteTotals.Of(view).Sum(row => row.Amount));
        Assert.Equal(view.Quote.Landed, view.Bill.Sum(share => share.Amount));
    }

    [Fact]
    public void A_quote_that_this_version_would_reckon_otherwise_keeps_its_figures_and_offers_no_other_quantity()
    {
        var frozen = Encoding.UTF8.GetString(AQuote.View().Quote.Result);
        var view = AQuote.View(result: Encoding.UTF8.GetBytes(frozen.Replace("\"landedCost\": \"", "\"landedCost\": \"1", StringComparison.Ordinal)));

        Assert.Null(view.Worked);
        Assert.True(view.Figures.Landed > AQuote.View().Figures.Landed);
        Assert.NotNull(SharedQuotes.Try(view, AQuote.Link, 50).Problem);
    }

    [Theory]
    [InlineData(24)]
    [InlineData(301)]
    [InlineData(null)]
    public void Only_quantities_within_the_links_limits_are_tried(int? copies)
    {
        Assert.NotNull(SharedQuotes.Try(AQuote.View(), AQuote.Link, copies).Problem);
        Assert.Equal(ARun.Prepared.Estimate(50).Value.Totals.LandedCost, SharedQuotes.Try(AQuote.View(), AQuote.Link, 50).Estimate!.Totals.LandedCost);
    }

    [Fact]
    public async Task Words_of_a_costing_that_look_like_formulas_are_defused_in_the_table_for_spreadsheets()
    {
        var view = AQuote.View(job: job => job with { Edition = job.Edition with { FixedCosts = [new("=HYPERLINK(\"x\")", 12m)] } });

        var csv = await QuoteCsv.OfAsync(view);

        Assert.Contains("\"'=HYPERLINK(\"\"x\"\")\",1,12.00,12.00", csv, StringComparison.Ordinal);
        Assert.Contains($"all of it,100,", csv, StringComparison.Ordinal);
    }
}
