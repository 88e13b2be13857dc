using PressRun.Data.Shops;
using PressRun.Engine.Costing;
using PressRun.Web.Libraries;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Libraries;

public class RepricingTests
{
    private static readonly DateOnly Later = new(2026, 9, 1);

    [Fact]
    public void Only_the_lines_that_change_are_told_and_they_make_up_the_whole_difference()
    {
        var source = Records.Source();
        var dearer = source.PriceList with { ValidFrom = Later, Print = [.. source.PriceList.Print.Select(price => price with { Steps = [.. price.Steps.Select(step => step with { Each = step.Each * 1.1m })] })] };

        var repriced = Repricing.Of(source, new PriceListRecord(Guid.NewGuid(), "willow", dearer, 1), Later);

        Assert.Equal(2, repriced.Lines.Count);
        Assert.All(repriced.Lines, line => Assert.Equal(CostCode.Print, line.Line.Code));
        Assert.Equal(repriced.After!.Totals.LandedCost - repriced.Before!.Totals.LandedCost, repriced.Lines.Sum(line => line.After - line.Before));
        Assert.False(repriced.IsSame);
        Assert.Equal(Later, repriced.ListFrom);
    }

    [Fact]
    public void The_same_list_on_the_same_day_changes_nothing()
    {
        var source = Records.Source();

        var repriced = Repricing.Of(source, new PriceListRecord(source.Plan.PriceListId, "willow", source.PriceList, 1), source.Plan.Date);

        Assert.Empty(repriced.Lines);
        Assert.True(repriced.IsSame);
    }

    [Fact]
    public void A_list_without_a_paper_of_the_run_says_what_is_missing()
    {
        var source = Records.Source();
        var poorer = source.PriceList with { ValidFrom = Later, Paper = [.. source.PriceList.Paper.Where(price => price.StockId != "green")] };

        var repriced = Repricing.Of(source, new PriceListRecord(Guid.NewGuid(), "willow", poorer, 1), Later);

        Assert.Null(repriced.After);
        Assert.Empty(repriced.Lines);
        Assert.NotEmpty(repriced.Problems);
    }
}
