using System.Globalization;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;
using PressRun.Engine.Paper;
using PressRun.Web.Start;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Start;

public class FirstNumberTests
{
    [Theory]
    [InlineData(PaperRegion.Iso)]
    [InlineData(PaperRegion.Us)]
    public void The_first_figures_of_either_region_come_to_a_cost(PaperRegion region)
    {
        var prepared = PreparedJob.Prepare(FirstNumber.For(region).Job(ARun.Dollars, ARun.Day));
        Assert.True(prepared.Succeeded, string.Join(" ", prepared.Problems));
        Assert.True(prepared.Value.Estimate(100).Value.Totals.LandedCost > 0m);
    }

    // By hand: A5 folded from A4, two to an A3 sheet. Inside 28 pages = 7 folded pieces a copy, 100 copies = 350 sheets, 700 black sides;
    // cover 50 sheets, 50 colour sides. 700 × 0.06 + 50 × 0.30 + 350 × 0.05 + 50 × 0.20 = 42 + 15 + 17.50 + 10 = 84.50.
    [Fact]
    public void Its_cost_is_what_one_reckons_by_hand() =>
        Assert.Equal(84.50m, PreparedJob.Prepare(FirstNumber.For(PaperRegion.Iso).Job(ARun.Dollars, ARun.Day)).Value.Estimate(100).Value.Totals.LandedCost);

    [Fact]
    public void The_sheet_is_called_by_the_size_that_was_chosen()
    {
        var chosen = FirstNumber.For(PaperRegion.Iso) with { Sheet = StandardSizes.Find("SRA3")! };
        var shop = chosen.Shop("Willow Prints", ARun.Day);

        Assert.Equal("SRA3", Assert.Single(shop.Sheets).Id);
        Assert.All(shop.Print.Select(price => price.SheetId).Concat(shop.Paper.Select(price => price.SheetId)), id => Assert.Equal("SRA3", id));
    }

    [Theory]
    [InlineData("en-US", "USD", UnitSystem.Imperial, PaperRegion.Us)]
    [InlineData("de-DE", "EUR", UnitSystem.Metric, PaperRegion.Iso)]
    [InlineData("en-CA", "CAD", UnitSystem.Metric, PaperRegion.Us)]
    [InlineData("ja-JP", "JPY", UnitSystem.Metric, PaperRegion.Iso)]
    [InlineData("en", "EUR", UnitSystem.Metric, PaperRegion.Iso)]
    public void Settings_follow_the_viewers_region(string culture, string currency, UnitSystem units, PaperRegion papers) =>
        Assert.Equal(new NewPress("", currency, units, papers), StartService.Suited(CultureInfo.GetCultureInfo(culture)));
}
