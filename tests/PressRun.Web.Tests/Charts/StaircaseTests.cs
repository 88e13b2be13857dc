using Bunit;
using Microsoft.AspNetCore.Components;
using PressRun.Engine.Ladder;
using PressRun.Web.Charts;
using PressRun.Web.Shared.Wording;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Charts;

public class StaircaseTests
{
    private static readonly CostCurve Curve = new(10, [.. Enumerable.Range(10, 91).Select(copies => copies < 60 ? copies * 2m : (copies * 2m) - 8m)]);

    [Fact]
    public async Task The_marker_is_a_slider_that_says_its_quantity_in_words()
    {
        await using var page = new BunitContext();
        page.JSInterop.Mode = JSRuntimeMode.Loose;
        var marker = Render(page, 50).Find("svg.wide [role=slider]");
        Assert.Equal("10", marker.GetAttribute("aria-valuemin"));
        Assert.Equal("100", marker.GetAttribute("aria-valuemax"));
        Assert.Equal("50", marker.GetAttribute("aria-valuenow"));
        Assert.Equal("50 copies cost 100.00, 2.00 each", marker.GetAttribute("aria-valuetext"));
    }

    [Fact]
    public async Task What_the_picture_shows_is_also_said_and_stands_in_a_table()
    {
        await using var page = new BunitContext();
        page.JSInterop.Mode = JSRuntimeMode.Loose;
        var staircase = Render(page, 57);
        Assert.Contains("56 to 59 copies cost no less than 60", staircase.Find("figcaption").TextContent, StringComparison.Ordinal);
        var chosen = staircase.Find("tr.chosen");
        Assert.Contains("60 cost no more", chosen.TextContent, StringComparison.Ordinal);
        Assert.Matches(@"a step: \d+\.\d\d less\.", staircase.FindAll("tbody tr").First(row => row.TextContent.Contains("112.00", StringComparison.Ordinal) && row.QuerySelector("th")!.TextContent == "60").TextContent);
    }

    [Fact]
    public async Task Dragging_looks_and_letting_go_moves_and_both_stay_in_the_range()
    {
        await using var page = new BunitContext();
        page.JSInterop.Mode = JSRuntimeMode.Loose;
        var (looked, moved) = (0, 0);
        var staircase = Render(page, 50, look => looked = look, move => moved = move);
        await staircase.Instance.LookAt(70);
        await staircase.Instance.MoveTo(5000);
        Assert.Equal((70, 100), (looked, moved));
    }

    [Fact]
    public async Task Readings_for_pointing_are_in_the_viewers_locale_and_heights_are_not()
    {
        await using var page = new BunitContext();
        var (module, _) = Script(page);
        Render(page, new CostCurve(1, [1.5m, 2.25m]), Written.German);
        Assert.StartsWith("1;1.5;1 costs 1,50, 1,50 each|", Assert.IsType<string>(module.VerifyInvoke("attach").Arguments[2]), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_script_is_told_of_other_costs_once_and_no_page_holds_them()
    {
        await using var page = new BunitContext();
        var (_, attached) = Script(page);
        var staircase = Render(page, new CostCurve(1, [1.5m, 2.25m]), Written.German);
        var other = new CostCurve(1, [1.75m, 2.5m]);
        staircase.Render(set => set.Add(part => part.Curve, other));
        staircase.Render(set => set.Add(part => part.Curve, other).Add(part => part.Quantity, 2));
        Assert.StartsWith("1;1.75;1 costs 1,75, 1,75 each|", Assert.IsType<string>(attached.VerifyInvoke("know").Arguments[0]), StringComparison.Ordinal);
        Assert.DoesNotContain("1;1.75;", staircase.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_small_figure_gives_way_to_the_mark_of_a_printing_that_was_made()
    {
        await using var page = new BunitContext();
        page.JSInterop.Mode = JSRuntimeMode.Loose;
        var drawing = StaircaseDrawing.Of(Curve, Curve.DearBands(), LadderJump.Of(Curve), StaircaseFrame.Wide);
        var figure = drawing.UnitCosts.First(mark => mark.Quantity == 30);
        var staircase = Render(page, 90);
        Assert.Contains(staircase.FindAll("svg.wide text.each"), text => text.GetAttribute("x") == Svg.N(figure.X));
        // A mark just where the figure would stand.
        var cost = Enumerable.Range(1, 600).Select(tenth => tenth / 2m).MinBy(money => Math.Abs(drawing.Y(money) - figure.TextY));
        staircase.Render(set => set.Add(part => part.Past, [new PastRun(30, cost, "the first printing", Paid: true)]));
        Assert.DoesNotContain(staircase.FindAll("svg.wide text.each"), text => text.GetAttribute("x") == Svg.N(figure.X));
    }

    // 7.7 units a copy: the marker's figure touches that of the axis two copies away, and not four.
    [Theory]
    [InlineData(42, false)]
    [InlineData(44, true)]
    public async Task A_figure_of_the_axis_gives_way_to_the_markers_only_where_they_would_touch(int quantity, bool stands)
    {
        await using var page = new BunitContext();
        page.JSInterop.Mode = JSRuntimeMode.Loose;
        var drawing = StaircaseDrawing.Of(Curve, Curve.DearBands(), LadderJump.Of(Curve), StaircaseFrame.Wide);

        var axis = Render(page, quantity).FindAll("svg.wide text.axis").Where(text => text.GetAttribute("text-anchor") == "middle").ToList();

        Assert.Equal(stands, axis.Any(text => text.TextContent == "40" && text.GetAttribute("x") == Svg.N(drawing.X(40))));
        Assert.Contains(axis, text => text.TextContent == "50");
    }

    [Fact]
    public async Task A_quantity_outside_the_range_is_shown_at_its_end()
    {
        await using var page = new BunitContext();
        page.JSInterop.Mode = JSRuntimeMode.Loose;
        Assert.Equal("100", Render(page, 400).Find("[role=slider]").GetAttribute("aria-valuenow"));
    }

    private static IRenderedComponent<Staircase> Render(BunitContext page, int quantity, Action<int>? look = null, Action<int>? move = null) =>
        page.Render<Staircase>(parameters => parameters
            .Add(part => part.Curve, Curve)
            .Add(part => part.Bands, Curve.DearBands())
            .Add(part => part.Jumps, LadderJump.Of(Curve))
            .Add(part => part.Quantity, quantity)
            .Add(part => part.Format, Written.Metric)
            .Add(part => part.Look, look ?? (_ => { }))
            .Add(part => part.Move, move ?? (_ => { })));

    private static (BunitJSModuleInterop Module, BunitJSModuleInterop Attached) Script(BunitContext page)
    {
        var module = page.JSInterop.SetupModule("./js/staircase.js");
        var attached = module.SetupModule(call => call.Identifier == "attach");
        (module.Mode, attached.Mode) = (JSRuntimeMode.Loose, JSRuntimeMode.Loose);
        return (module, attached);
    }

    private static IRenderedComponent<Staircase> Render(BunitContext page, CostCurve curve, PressFormat format) => page.Render<Staircase>(parameters => parameters
        .Add(part => part.Curve, curve).Add(part => part.Quantity, 1).Add(part => part.Format, format).Add(part => part.Move, _ => { }));
}
