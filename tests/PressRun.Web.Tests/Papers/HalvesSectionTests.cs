using Bunit;
using Microsoft.AspNetCore.Components;
using PressRun.Data.RunPlans;
using PressRun.Engine.Comparing;
using PressRun.Web.Papers;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Papers;

public class HalvesSectionTests
{
    private static readonly PapersView View = APost.View();

    [Fact]
    public async Task Half_and_half_is_said_beside_the_whole_run_on_either_paper_and_beside_two_orders()
    {
        await using var page = new BunitContext();
        var halves = Section(page, "thin", "g150");
        var reckoned = HalvesReading.Of(View.Source.BuildToTry(["g150"]), new HalvesChoice(1, "thin", "g150"), 100).Value;

        var said = halves.Find(".sentence").TextContent;

        Assert.Contains($"cost {Money(reckoned.Halves.Estimate.Totals.LandedCost)} as one order", said, StringComparison.Ordinal);
        Assert.Contains($"{Money(reckoned.MoreThanFirst)} more than all on Thin cream", said, StringComparison.Ordinal);
        Assert.Contains($"{Money(-reckoned.MoreThanSecond)} less than all on Heron 150", said, StringComparison.Ordinal);
        Assert.Contains($"as two orders they would cost {Money(reckoned.SavedByOneOrder!.Value)} more", said, StringComparison.Ordinal);
        var inHand = halves.FindAll("tbody tr")[^1];
        Assert.Equal(Money(reckoned.AllOnFirst.InHand[0].Cost!.Value), inHand.Children[1].TextContent);
    }

    [Fact]
    public async Task Where_a_part_has_one_paper_only_it_says_what_to_do_about_it()
    {
        await using var page = new BunitContext();
        var source = View.Source;
        var one = APost.View(source with { PriceList = source.PriceList with { Paper = [.. source.PriceList.Paper.Where(price => price.StockId is "thick" or "thin" or "green")] } });
        var alone = one with { Offered = [] };

        var halves = Section(page, "thin", "thin", view: alone);

        Assert.Contains("Thin cream is the only paper for the inside that", halves.Find("p.note:last-of-type").TextContent, StringComparison.Ordinal);
        Assert.Equal([$"shops/{source.Plan.ShopId}", "papers"], halves.FindAll("p.note a").Select(link => link.GetAttribute("href")));
    }

    [Fact]
    public async Task Both_papers_are_used_by_one_button_which_is_gone_where_the_printing_goes_by_them()
    {
        await using var page = new BunitContext();
        (int, string, string)? used = null;
        var halves = Section(page, "thin", "g150", use: choice => used = choice);

        await halves.FindAll("button").Single(button => button.TextContent == "Use both papers").ClickAsync(new());
        Assert.Equal((1, "thin", "g150"), used);

        var source = View.Source;
        var part = source.Edition.Parts[1].Id;
        var gone = APost.View(source with { Plan = source.Plan with { Stocks = new Dictionary<Guid, string> { [part] = "thin" }, SecondHalf = new PlanHalf(part, "g150") } });
        Assert.Empty(Section(page, "thin", "g150", view: gone).FindAll("button"));
    }

    [Fact]
    public async Task Another_paper_for_a_half_is_worked_out_at_once_and_one_paper_twice_asks_for_two()
    {
        await using var page = new BunitContext();
        var halves = Section(page, "thin", "g150");
        var other = halves.FindAll("select")[2];
        var options = other.QuerySelectorAll("option").Select(option => option.TextContent).ToList();
        Assert.DoesNotContain("Unpriced laid", options);

        await other.ChangeAsync(new() { Value = $"{options.IndexOf("Heron 70")}" });
        Assert.Contains("half on Heron 70", halves.Find(".sentence").TextContent, StringComparison.Ordinal);
        await halves.FindAll("select")[2].ChangeAsync(new() { Value = $"{options.IndexOf("Thin cream")}" });
        var notes = halves.FindAll("p.note");
        Assert.Equal("All else stands on the plan's papers: cover on Thick card and centre on Green sheet.", notes[0].TextContent.Trim());
        Assert.Contains("Choose two papers", notes[1].TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_mailer_that_is_only_looked_at_takes_the_halves_too()
    {
        await using var page = new BunitContext();
        var way = View.TriedWays[0];
        var halves = Section(page, "thin", "g150", way.Id);

        var inHand = halves.FindAll("tbody tr")[^1];
        Assert.Equal("in the reader's hands", inHand.Children[0].TextContent);
        Assert.DoesNotContain("no post", inHand.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_ordered_so_says_why()
    {
        await using var page = new BunitContext();
        var halves = Section(page, "thin", "unpriced");

        Assert.StartsWith("It cannot be ordered so.", halves.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Empty(halves.FindAll("table"));
    }

    private static IRenderedComponent<HalvesSection> Section(BunitContext page, string first, string second, string channel = "post", PapersView? view = null, Action<(int, string, string)>? use = null) => page.Render<HalvesSection>(parameters => parameters
        .Add(part => part.View, view ?? View)
        .Add(part => part.Use, EventCallback.Factory.Create<(int Part, string First, string Second)>(page, choice => use?.Invoke(choice)))
        .Add(part => part.Quantity, 100)
        .Add(part => part.ChannelId, channel)
        .Add(part => part.Begin, (1, first, second))
        .Add(part => part.Format, Written.Metric));

    private static string Money(decimal amount) => Written.Metric.Money(amount);
}
