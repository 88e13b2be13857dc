using System.Globalization;
using PressRun.Data.Import.PriceLists;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Data.Tests.Fixtures;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;

namespace PressRun.Data.Tests.Import;

public sealed class PriceLinesTests
{
    private static readonly PlainWords Words = new();

    [Fact]
    public void All_prices_rise_by_a_percentage_and_nothing_else_changes()
    {
        var raised = PriceLines.Raised(SmallPress.Prices, 5m, _ => true, Words);

        var lines = PriceLines.Of(SmallPress.Prices, Words).Zip(PriceLines.Of(raised, Words)).ToList();
        Assert.NotEmpty(lines);
        Assert.All(lines, pair => Assert.Equal(decimal.Round(pair.First.Amount * 1.05m, 4, MidpointRounding.AwayFromZero), pair.Second.Amount));
        Assert.Equal(
            (SmallPress.Prices.Sheets, SmallPress.Prices.Collates, SmallPress.Prices.Order.TaxRate), (raised.Sheets, raised.Collates, raised.Order.TaxRate));
    }

    [Fact]
    public void Chosen_prices_rise_and_the_others_stay()
    {
        var raised = PriceLines.Raised(SmallPress.Prices, -50m, line => line.Section == PriceSection.Paper, Words);

        Assert.Equal([0.11m, 0.035m], raised.Paper.Select(price => price.Steps[0].Each));
        Assert.Equal(SmallPress.Prices.Print.SelectMany(price => price.Steps), raised.Print.SelectMany(price => price.Steps));
    }

    [Fact]
    public void The_difference_of_two_lists_names_each_price_that_rose_came_or_went_and_each_term()
    {
        var manners = new CellManners(CultureInfo.GetCultureInfo("en"), UnitSystem.Imperial);
        var prices = SmallPress.Prices;
        var newer = PriceLines.Raised(prices, 10m, line => line.Section == PriceSection.SetUp, Words) with
        {
            Paper = [prices.Paper[0]],
            Finishing = [.. prices.Finishing, new("stapling", FinishingUnit.Copy, 0.05m, 0m)],
            Spoilage = 0.02m,
        };

        var difference = PriceListDifference.Between(prices, newer, Words, manners);

        Assert.Equal(
            [("text on tabloid, from 1", 0.07m, null), ("stapling", null, 0.05m), ("an order", 5m, 5.5m), ("a part", 1.5m, 1.65m)],
            difference.Prices.Select(price => (price.What, price.Before, price.After)));
        Assert.Equal(10m, difference.Prices[2].RisePercent);
        Assert.Equal([("Spoils", "", "2")], difference.Terms.Select(term => (term.What, term.Before, term.After)));
    }

    [Fact]
    public void A_list_does_not_differ_from_itself() =>
        Assert.True(PriceListDifference.Between(SmallPress.Prices, SmallPress.Prices, Words, new CellManners(CultureInfo.InvariantCulture, UnitSystem.Metric)).IsNone);

    private sealed class PlainWords : IPriceWords
    {
        public string Order => "an order";

        public string Edition => "an edition";

        public string Part => "a part";

        public string AtLeast => "at least";

        public string Delivery => "delivery";

        public string FurtherKilogram => "each further kg";

        public string Print(PrintPrice price) => $"{price.Ink} on {price.SheetId}";

        public string Paper(PaperPrice price) => $"{price.StockId} on {price.SheetId}";

        public string Book(BookPrice price) => $"{price.Binding}, {price.PagesFrom} to {price.PagesTo}";

        public string From(long from) => $"from {from}";

        public string PageFrom(long from) => $"from {from}, a page";

        public string UpTo(Mass most) => $"up to {most.Kilograms}";
    }
}
