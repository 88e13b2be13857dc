using System.Globalization;
using Bunit;
using Microsoft.AspNetCore.Components;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;
using PressRun.Engine.Reprint;
using PressRun.Web.Charts;
using PressRun.Web.Shared.Wording;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Reprint;

public class ReprintChartsTests
{
    private static readonly PressFormat Format = new(ARun.Dollars, UnitSystem.Metric, CultureInfo.GetCultureInfo("en-US"));

    private static readonly ReprintRequest Request = new(0, new PoissonDemand(60m, 0), 5m, 0m, 0m, 0m, null, 0, 120, 1);

    private static readonly ReprintPlanner Planner = ReprintPlanner.Prepare(ARun.Prepared, Request).Value;

    [Fact]
    public async Task Fifty_dots_stand_in_each_drawing_and_as_many_are_hollow_as_the_words_say()
    {
        await using var page = new BunitContext();
        var look = Planner.LookAt(62).Value;
        var dots = page.Render<FuturesDots>(set => set.Add(part => part.Look, look).Add(part => part.Over, "over the next 6 months").Add(part => part.Format, Format));
        Assert.Equal(50, dots.FindAll("svg.wide circle").Count);
        Assert.Equal(50, dots.FindAll("svg.narrow circle").Count);
        Assert.Equal(look.SoldOut, dots.FindAll("svg.wide circle.out").Count);
        Assert.InRange(look.SoldOut, 1, 49);
        Assert.Contains($"in {look.SoldOut} they sell out", dots.Find(".dot-key").TextContent, StringComparison.Ordinal);
        Assert.Contains($"{look.Odds.ForSale} copies for sale:", dots.Find("figcaption p").TextContent, StringComparison.Ordinal);
        var freely = ReprintPlanner.Prepare(PreparedJob.Prepare(ARun.Job with { FreeCopies = 4 }).Value, Request with { OnHand = 3 }).Value.LookAt(62).Value;
        dots.Render(set => set.Add(part => part.Look, freely));
        Assert.Contains("61 copies for sale (3 on hand, 62 printed, 4 given away):", dots.Find("figcaption p").TextContent, StringComparison.Ordinal);
        Assert.Equal(50, dots.FindAll("tbody tr").Sum(row => int.Parse(row.QuerySelector("td")!.TextContent, CultureInfo.InvariantCulture)));
    }

    [Fact]
    public async Task Dots_in_which_money_is_lost_are_crossed()
    {
        await using var page = new BunitContext();
        var cheap = new ReprintRequest(0, new PoissonDemand(60m, 0), 1.5m, 0m, 0m, 0m, null, 0, 120, 1);
        var look = ReprintPlanner.Prepare(ARun.Prepared, cheap).Value.LookAt(120).Value;
        var dots = page.Render<FuturesDots>(set => set.Add(part => part.Look, look).Add(part => part.Over, "").Add(part => part.Format, Format));
        Assert.True(look.Losses > 0, $"{look.Losses} of 50 lose at 120 copies");
        Assert.Equal(look.Losses, dots.FindAll("svg.wide path.lost").Count);
    }

    [Fact]
    public void The_profit_moves_across_and_down_only_and_breaks_where_the_cost_leaps()
    {
        var drawing = ProfitDrawing.Of(Planner.Plan().Value.Curve, StaircaseFrame.Wide);
        Assert.DoesNotContain('L', drawing.Path);
        Assert.Contains(drawing.Dots, dot => dot.Open);
        Assert.Contains(0d, drawing.MoneyMarks);
        Assert.True(drawing.Least < 0);
    }

    [Fact]
    public async Task The_marker_is_a_slider_from_none_and_says_what_a_number_keeps()
    {
        await using var page = new BunitContext();
        page.JSInterop.Mode = JSRuntimeMode.Loose;
        var (plan, moved) = (Planner.Plan().Value, -1);
        var chart = page.Render<ProfitStaircase>(set => set.Add(part => part.Points, plan.Curve).Add(part => part.Quantity, 40).Add(part => part.Format, Format)
            .Add(part => part.Marks, [new MarkedQuantity(plan.BestQuantity, "best")]).Add(part => part.Move, EventCallback.Factory.Create<int>(this, to => moved = to)));
        var marker = chart.Find("svg.wide [role=slider]");
        Assert.Equal("0", marker.GetAttribute("aria-valuemin"));
        Assert.Equal("40", marker.GetAttribute("aria-valuenow"));
        Assert.Single(chart.FindAll(".jump-key"));
        Assert.Equal($"40 keep {Format.Money(plan.Curve[40].ExpectedProfit)}", marker.GetAttribute("aria-valuetext"));
        Assert.Contains("best", chart.FindAll("tbody tr").Single(row => row.QuerySelector("th")!.TextContent == Format.Count(plan.BestQuantity)).TextContent, StringComparison.Ordinal);
        await chart.Instance.MoveTo(500);
        Assert.Equal(120, moved);
    }
}
