using System.Globalization;
using PressRun.Data.Import.PriceLists;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Data.Tests.Fixtures;

namespace PressRun.Data.Tests.Import;

public sealed class PriceLinesTests
{
    [Fact]
    public void All_prices_rise_by_a_percentage_and_nothing_else_changes()
    {
        var raised = PriceLines.Raised(SmallPress.Prices, 5m, _ => true, id => id);

        var lines = PriceLines.Of(SmallPress.Prices, id => id).Zip(PriceLines.Of(raised, id => id)).ToList();
        Assert.NotEmpty(lines);
        Assert.All(lines, pair => Assert.Equal(decimal.Round(pair.First.Amount * 1.05m, 4, MidpointRounding.AwayFromZero), pair.Second.Amount));
        Assert.Equal(
            (SmallPress.Prices.Sheets, SmallPress.Prices.Collates, SmallPress.Prices.Order.TaxRate), (raised.Sheets, raised.Collates, raised.Order.TaxRate));
    }

    [Fact]
    public void Chosen_prices_rise_and_the_others_stay()
    {
        var raised = PriceLines.Raised(SmallPress.Prices, -50m, line => line.Section == PriceSection.Paper, id => id);

        Assert.Equal([0.11m, 0.035m], raised.Paper.Select(price => price.Steps[0].Each));
        Assert.Equal(SmallPress.Prices.Print.SelectMany(price => price.Steps), raised.Print.SelectMany(price => price.Steps));
    }

    [Fact]
    public void The_difference_of_two_lists_names_each_price_that_rose_came_or_went_and_each_term()
    {
        var manners = new CellManners(CultureInfo.GetCultureInfo("en"), UnitSystem.Imperial);
        var prices = SmallPress.Prices;
        var newer = PriceLines.Raised(prices, 10m, line => line.Section == PriceSection.SetUp, id => id) with
        {
            Paper = [prices.Paper[0]],
            Finishing = [.. prices.Finishing, new("stapling", Engine.Costing.FinishingUnit.Copy, 0.05m, 0m)],
            Spoilage = 0.02m,
        };

        var difference = PriceListDifference.Between(prices, newer, id => id, manners);

        Assert.Equal(
            [("text on tabloid, from 1", 0.07m, null), ("stapling", null, 0.05m), ("an order", 5m, 5.5m), ("a part", 1.5m, 1.65m)],
            difference.Prices.Select(price => (price.What, price.Before, price.After)));
        Assert.Equal(10m, difference.Prices[2].RisePercent);
        Assert.Equal([("Spoils", "", "2")], difference.Terms.Select(term => (term.What, term.Before, term.After)));
    }

    [Fact]
    public void A_list_does_not_differ_from_itself() =>
        Assert.True(PriceListDifference.Between(SmallPress.Prices, SmallPress.Prices, id => id, new CellManners(CultureInfo.InvariantCulture, UnitSystem.Metric)).IsNone);
}
