using Bunit;
using PressRun.Web.Editions;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Editions;

/// <summary>What the book's page says that the book comes to: which figure is planned, and which was paid.</summary>
public sealed class ConsequenceListTests
{
    [Fact]
    public async Task Costs_say_that_they_are_planned_and_what_was_paid_stands_before_them()
    {
        await using var page = new BunitContext();
        var source = APlan.Source(100);
        var now = EditionConsequences.Of(source, source.Edition, "#336699");

        var rows = page.Render<ConsequenceList>(set => set.Add(list => list.Now, now).Add(list => list.PaidForEach, 2.345m).Add(list => list.RunAddress, "run").Add(list => list.Format, Written.Metric))
            .FindAll("dt").Take(3).Select(row => row.TextContent).ToArray();

        Assert.Equal(["A copy cost, paid", "A copy costs, planned", "The run costs, planned"], rows);
    }

    [Fact]
    public async Task A_price_that_the_shop_lacks_is_told_by_the_papers_name_with_the_way_to_its_list()
    {
        await using var page = new BunitContext();
        var source = APlan.Source(100) with { PriceList = ARun.Shop with { Paper = [.. ARun.Shop.Paper.Where(price => price.StockId != "thin")] } };
        var now = EditionConsequences.Of(source, source.Edition, "#336699");

        var list = page.Render<ConsequenceList>(set => set.Add(list => list.Now, now).Add(list => list.EditionAddress, "book").Add(list => list.RunAddress, "run").Add(list => list.Format, Written.Metric));

        Assert.True(now.PartsFit);
        Assert.StartsWith("Inside: No sheet of the shop takes this part: on 297 × 420 mm there is no price for paper Thin cream.", list.Find("li").TextContent, StringComparison.Ordinal);
        Assert.Equal($"shops/willow?list={source.Plan.PriceListId}", list.Find("li a").GetAttribute("href"));
    }
}
