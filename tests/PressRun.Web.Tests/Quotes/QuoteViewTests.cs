using System.Globalization;
using System.Text;
using PressRun.Data.Quotes;
using PressRun.Engine.Costing;
using PressRun.Engine.Ladder;
using PressRun.Engine.Quoting;
using PressRun.Web.Quotes;
using PressRun.Web.RunPlans;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Quotes;

public sealed class QuoteViewTests
{
    // What a reader reckons after on the page comes to what stands there.
    [Theory]
    [InlineData("0.361111", "14", "5.06", "0.3611")]
    [InlineData("4.566389", "14", "63.93", "4.5664")]
    [InlineData("250", "3.066", "766.50", "250")]
    [InlineData("1.5", "2", "3.00", "1.5")]
    [InlineData("3", "1", "7.00", "3")]
    public void A_line_shows_as_many_decimals_as_its_amount_takes(string quantity, string each, string amount, string told)
    {
        static decimal Read(string figure) => decimal.Parse(figure, CultureInfo.InvariantCulture);

        Assert.Equal(told, QuoteWords.HowMany(new FrozenLine("", Read(quantity), Read(each), Read(amount)), AQuote.View().Format));
    }

    // An archive may name a part that the bill does not have.
    [Theory]
    [InlineData(1, "agreed to 100 copies for 305.83, of which 101.94 is their part.")]
    [InlineData(7, "agreed to 100 copies for 305.83.")]
    [InlineData(null, "agreed to 100 copies for 305.83.")]
    public void What_was_agreed_to_names_the_part_of_the_bill_that_goes_with_it(int? part, string told)
    {
        var view = AQuote.View();
        var (whole, mine) = (view.Format.Sum(view.Quote.Landed), view.Format.Sum(view.Bill[1].Amount));

        Assert.Equal(
            "Ada " + told.Replace("305.83", whole, StringComparison.Ordinal).Replace("101.94", mine, StringComparison.Ordinal),
            QuoteWords.Of(new QuoteEvent(1, AQuote.MadeAt, QuoteEventKind.Agreed, AQuote.Link.Id, "Ada", "", 100, view.Quote.Landed, part), view).Replace("\u2068", "", StringComparison.Ordinal).Replace("\u2069", "", StringComparison.Ordinal));
    }

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

    [Fact]
    public void Of_a_run_on_two_papers_both_kinds_of_copies_are_told()
    {
        var thin = ARun.Job.Edition.Parts.ToList().FindIndex(part => part.StockId == "thin");
        var view = AQuote.View(job: job => job with { SecondHalf = new SecondHalf(thin, "green") });
        var half = PreparedJob.Prepare(view.Job!).Value.Estimate(100).Value.SecondHalf!;

        Assert.Equal((50L, half.Copy.Thickness), (view.Figures.SecondHalf!.Copies, view.Figures.SecondHalf.Thickness));
        Assert.Equal(half.Copy.Mass.Grams, view.Figures.SecondHalf.Mass.Grams, 4);
        Assert.True(view.Figures.SecondHalf.Mass > view.Figures.Mass);
        Assert.Null(AQuote.View().Figures.SecondHalf);
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
    public void A_wide_range_is_shown_as_the_plan_showed_it_and_a_quantity_outside_of_it_is_tried_exactly()
    {
        var wide = new LadderRange(1, 1_000_000, 101);
        var view = AQuote.View(job: job => job with { Ladder = wide });
        var curve = PlanCosting.Of(APlan.Source(100, plan => plan with { Ladder = wide })).Worked!.Curve;
        var link = AQuote.Link with { Rights = AQuote.Link.Rights with { TryFrom = 1, TryTo = 1_000_000 } };

        Assert.Equal((curve.From, curve.To), (view.Worked!.Curve.From, view.Worked.Curve.To));
        Assert.Equal((1, 10_100), (curve.From, curve.To));
        Assert.Equal(ARun.Prepared.Estimate(900_000).Value.Totals.LandedCost, SharedQuotes.Try(view, link, 900_000).Estimate!.Totals.LandedCost);
    }

    [Fact]
    public void Of_a_job_that_takes_long_a_quote_shows_as_many_quantities_as_its_plan()
    {
        var wide = new LadderRange(1, 1_000_000, 101);
        var view = AQuote.View(job: job => job with { Ladder = wide, Shop = HeavyRun.Slow });
        var (from, to, isNarrowed) = ShownRange.Of(PreparedJob.Prepare(HeavyRun.Source(100, plan => plan with { Ladder = wide }).Build()).Value, 100, wide);

        Assert.True(isNarrowed);
        Assert.Equal((from, to, isNarrowed), (view.Worked!.Curve.From, view.Worked.Curve.To, view.Worked.IsNarrowed));
    }

    [Fact]
    public void A_job_that_names_no_other_quantities_is_shown_at_its_own_alone()
    {
        var view = AQuote.View(job: job => job with { Ladder = null });
        Assert.Equal((100, 100), (view.Worked!.Curve.From, view.Worked.Curve.To));
    }

    [Fact]
    public async Task Words_of_a_costing_that_look_like_formulas_are_defused_in_the_table_for_spreadsheets()
    {
        var view = AQuote.View(job: job => job with { Edition = job.Edition with { FixedCosts = [new("=HYPERLINK(\"x\")", 12m)] } });

        var csv = await QuoteCsv.OfAsync(view);

        Assert.Contains("\"'=HYPERLINK(\"\"x\"\")\",1,12.00,12.00", csv, StringComparison.Ordinal);
        Assert.Contains($"all of it,100,", csv, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_table_for_spreadsheets_is_in_the_words_and_numbers_of_whoever_saves_it()
    {
        var before = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("de");
            var rows = (await QuoteCsv.OfAsync(AQuote.View(culture: "de-DE"))).Split("\r\n", StringSplitOptions.RemoveEmptyEntries);

            Assert.Contains("Was", rows[0], StringComparison.Ordinal);
            Assert.Contains(rows, row => row.StartsWith("Lieferung;1;15,00;15,00", StringComparison.Ordinal));
            Assert.StartsWith("alles zusammen;100;", rows[^1], StringComparison.Ordinal);
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }
    }

    [Fact]
    public void Who_asked_for_another_quantity_is_not_told_as_silent()
    {
        var bo = AQuote.Link with { Id = Guid.NewGuid(), Name = "Bo" };
        QuoteEvent Ask(int copies) => new(1, AQuote.MadeAt, QuoteEventKind.AskedFor, AQuote.Link.Id, "Ada", Quantity: copies, Amount: 300m);
        var view = AQuote.View(events: [Ask(120), Ask(163)]);
        string[] Told(params QuoteLink[] links) => [.. QuoteWords.WaitedFor(AQuote.Again(view, view.Whole with { Links = links }))];

        Assert.Equal(["Ada asked for 163 copies instead.", "As it stands it can be agreed to until 1 April 2026."], Told(AQuote.Link));
        Assert.Equal(["Ada asked for 163 copies instead.", "Bo has not answered; it can be agreed to until 1 April 2026."], Told(AQuote.Link, bo));
        Assert.Equal(["Bo has not answered; it can be agreed to until 1 April 2026."], Told(bo));
        Assert.Empty(Told(AQuote.Link with { Answer = QuoteAnswer.Agreed }));
    }

    [Fact]
    public void Lines_are_told_in_the_viewers_language_by_their_kind_and_names_and_in_their_own_words_where_only_those_were_frozen()
    {
        var frozen = AQuote.View();
        var (before, result) = (CultureInfo.CurrentUICulture, frozen.Quote.Result.ToArray());
        try
        {
            Assert.Equal(ARun.Prepared.Estimate(100).Value.Lines.Select(line =>
                line.Code == CostCode.BenchLabour ? "Hours at the binding table" : LineWords.Of(line, id => ARun.Stocks.First(stock => stock.Id == id).Name)), frozen.Figures.Lines.Select(QuoteWords.Of));
            CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo("de");
            var told = AQuote.View().Figures.Lines.ToDictionary(line => line.Code, QuoteWords.Of);
            Assert.Equal("Lieferung", told["delivery"]);
            Assert.Contains(AQuote.View().Figures.Lines, line => line.Code.StartsWith("paper.", StringComparison.Ordinal) && ARun.Stocks.Any(stock => stock.Name == QuoteWords.Of(line)));
            Assert.Equal("a word of ours", QuoteWords.Of(new FrozenLine("a word of ours", 1m, 1m, 1m)));
            Assert.Equal("what a later program calls it", QuoteWords.Of(new FrozenLine("what a later program calls it", 1m, 1m, 1m, "later.kind")));
        }
        finally
        {
            CultureInfo.CurrentUICulture = before;
        }

        Assert.Equal(result, frozen.Quote.Result);
    }
}
