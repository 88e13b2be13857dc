using AngleSharp.Dom;
using Bunit;
using PressRun.Web.Papers;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Papers;

public class PaperPickerTests
{
    private static readonly PapersView View = APost.View();

    [Fact]
    public async Task A_tick_tries_a_paper_and_the_planned_one_can_be_unticked_while_another_is_left()
    {
        await using var page = new BunitContext();
        PaperChoice? changed = null;
        var picker = Picker(page, new PaperChoice(new Dictionary<int, IReadOnlyList<string>> { [1] = ["g70"] }, [100], "post"), choice => changed = choice);

        Assert.Empty(Inside(picker).QuerySelectorAll("input[disabled]"));
        await Tick(Inside(picker), "Heron 130").ChangeAsync(new() { Value = true });
        Assert.Equal(["g70", "g130"], changed!.Tried[1]);
        await Tick(Inside(picker), "Thin cream").ChangeAsync(new() { Value = false });
        Assert.Equal(["g70"], changed.On(1, "thin"));

        var alone = Inside(Picker(page, changed, _ => { }));
        Assert.Contains("Heron 70", Assert.Single(alone.QuerySelectorAll("input[disabled]")).ParentElement!.TextContent, StringComparison.Ordinal);
        Assert.False(Tick(alone, "Thin cream").HasAttribute("checked"));
    }

    [Fact]
    public async Task The_cover_is_offered_in_one_tap_while_nothing_is_tried_on_it()
    {
        await using var page = new BunitContext();
        PaperChoice? changed = null;
        var picker = Picker(page, new PaperChoice(new Dictionary<int, IReadOnlyList<string>> { [1] = ["g70"] }, [100], "post"), choice => changed = choice);

        var offer = picker.Find(".try-cover button");
        Assert.Equal("Try the cover too, on 2 papers", offer.TextContent);
        await offer.ClickAsync(new());
        Assert.Equal(["thick", "g150"], changed!.Tried[0]);
        Assert.Empty(Picker(page, changed, _ => { }).FindAll(".try-cover"));
    }

    [Fact]
    public async Task A_part_can_take_all_of_the_shops_papers_or_none_but_its_own()
    {
        await using var page = new BunitContext();
        PaperChoice? changed = null;
        var picker = Picker(page, new PaperChoice(new Dictionary<int, IReadOnlyList<string>> { [1] = ["g70"] }, [100], "post"), choice => changed = choice);

        await picker.FindAll("fieldset")[0].QuerySelectorAll("button")[0].ClickAsync(new());
        Assert.Equal(8, changed!.Tried[0].Count);
        await picker.FindAll("fieldset")[1].QuerySelectorAll("button")[1].ClickAsync(new());
        Assert.Empty(changed.Tried);
    }

    [Fact]
    public async Task Papers_without_a_price_are_named_with_the_way_to_give_them_one()
    {
        await using var page = new BunitContext();
        var picker = Picker(page, PaperChoice.Read(View, null, null, null), _ => { });

        var without = picker.Find("p a[href='shops/willow']").ParentElement!;
        Assert.StartsWith("No price at Willow Prints: Unpriced laid.", without.TextContent, StringComparison.Ordinal);
    }

    private static IElement Inside(IRenderedComponent<PaperPicker> picker) => picker.FindAll("fieldset")[1];

    private static IElement Tick(IElement part, string paper) =>
        part.QuerySelectorAll("label").Single(label => label.TextContent.Contains(paper, StringComparison.Ordinal)).QuerySelector("input")!;

    private static IRenderedComponent<PaperPicker> Picker(BunitContext page, PaperChoice choice, Action<PaperChoice> change) => page.Render<PaperPicker>(parameters => parameters
        .Add(part => part.View, View)
        .Add(part => part.Choice, choice)
        .Add(part => part.Format, Written.Metric)
        .Add(part => part.Change, change));
}
