using Bunit;
using PressRun.Engine.Costing;
using PressRun.Web.Charts;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Charts;

public class MoneyStripTests
{
    [Fact]
    public async Task Pieces_are_cut_in_proportion_to_their_amounts()
    {
        await using var page = new BunitContext();
        var estimate = ARun.Prepared.Estimate(100).Value;
        var cut = MoneyCut.Of(estimate, ARun.Dollars, false);
        var strip = page.Render<MoneyStrip>(parameters => parameters
            .Add(part => part.Cut, cut).Add(part => part.Totals, estimate.Totals).Add(part => part.ShopName, "Willow Prints").Add(part => part.Format, Written.Metric));
        Assert.Equal(
            cut.Pieces.Select(piece => $"flex-grow: {Svg.N((double)piece.Amount)}"),
            strip.FindAll(".piece").Select(piece => piece.GetAttribute("style")));
    }

    [Fact]
    public async Task The_ruled_sums_and_the_landed_cost_are_the_engines()
    {
        await using var page = new BunitContext();
        var estimate = ARun.Prepared.Estimate(100).Value;
        var strip = page.Render<MoneyStrip>(parameters => parameters
            .Add(part => part.Cut, MoneyCut.Of(estimate, ARun.Dollars, false)).Add(part => part.Totals, estimate.Totals)
            .Add(part => part.ShopName, "Willow Prints").Add(part => part.Format, Written.Metric));
        Assert.Equal(
            [estimate.Totals.ShopTotal, estimate.Totals.FixedCosts, estimate.Totals.BenchLabour],
            strip.FindAll("tfoot td").Select(sum => decimal.Parse(sum.TextContent, System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Equal(Written.Metric.Money(estimate.Totals.LandedCost), strip.Find(".grand > b").TextContent);
    }
}
