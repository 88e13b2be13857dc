using AngleSharp.Dom;
using Bunit;
using Microsoft.AspNetCore.Components;
using PressRun.Engine.Comparing;
using PressRun.Web.Papers;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Papers;

public class PaperTableTests
{
    private static readonly PapersView View = APost.View();

    [Fact]
    public async Task Rows_stand_by_what_a_copy_costs_in_hand_and_any_head_sorts_them_both_ways()
    {
        await using var page = new BunitContext();
        var table = Table(page, Reading((1, View.Offered)));
        var first = Names(table)[0];

        var weighs = table.FindAll("thead button").Single(button => button.TextContent == "weighs");
        await weighs.ClickAsync(new());
        var rising = Names(table);
        Assert.Equal("Heron 70", rising[0]);
        await table.FindAll("thead button").Single(button => button.TextContent.StartsWith("weighs", StringComparison.Ordinal)).ClickAsync(new());
        Assert.Equal(rising.Reverse(), Names(table));
        Assert.Equal("descending", table.Find("th[aria-sort]").GetAttribute("aria-sort"));
        Assert.Equal(View.StockName(Reading((1, View.Offered)).Cheapest.StockIds[1]), first);
    }

    [Fact]
    public async Task On_a_phone_each_figure_has_its_head_beside_it_and_the_order_is_chosen_above()
    {
        await using var page = new BunitContext();
        var table = Table(page, Reading((1, View.Offered)));

        var heads = table.FindAll("thead th button").Select(head => head.TextContent.TrimEnd(' ', '\u2191')).ToList();
        Assert.Equal(heads, table.FindAll("tbody tr")[0].QuerySelectorAll("td").Select(cell => cell.GetAttribute("data-label")));
        Assert.Equal(2, table.FindAll("tbody tr")[0].QuerySelectorAll("td[data-of=hand], td[data-of=post]").Length);

        var order = table.Find(".papers-order select");
        await order.ChangeAsync(order.Children.ToList().FindIndex(option => option.TextContent == "weighs").ToString(System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal("Heron 70", Names(table)[0]);
        await table.Find(".papers-order button").ClickAsync(new());
        Assert.Equal("Heron 70", Names(table)[^1]);
    }

    [Fact]
    public async Task Of_many_combinations_the_first_and_those_that_stand_out_are_shown_and_their_number_is_said()
    {
        await using var page = new BunitContext();
        var reading = Reading((0, View.Offered), (1, View.Offered));
        var table = Table(page, reading);

        var shown = table.FindAll("tbody tr").Count;
        Assert.InRange(shown, 25, 30);
        Assert.Contains($"{shown} of {reading.Rows.Count} combinations", table.Find("[role=status]").TextContent, StringComparison.Ordinal);
        Assert.Single(table.FindAll("tr.now"));
        await table.FindAll("p button")[0].ClickAsync(new());
        Assert.InRange(table.FindAll("tbody tr").Count, 50, 55);
    }

    [Fact]
    public async Task A_paper_is_taken_by_its_row_and_what_is_planned_cannot_be()
    {
        await using var page = new BunitContext();
        PaperRow? used = null;
        var table = Table(page, Reading((1, View.Offered)), row => used = row);

        Assert.Empty(table.FindAll("tr.now button"));
        await table.FindAll("button").Single(button => button.GetAttribute("aria-label") == "Use this paper: Heron 130").ClickAsync(new());
        Assert.Equal("g130", used!.StockIds[1]);
    }

    private static PaperReading Reading(params (int Part, IReadOnlyList<string> Papers)[] tried) => PapersAnswer.Of(
        View.Source, new PaperChoice(tried.ToDictionary(part => part.Part, part => (IReadOnlyList<string>)[.. part.Papers.Where(id => id != "unpriced")]), [100], "post")).Readings[100]!;

    private static IRenderedComponent<PaperTable> Table(BunitContext page, PaperReading reading, Action<PaperRow>? use = null) => page.Render<PaperTable>(parameters => parameters
        .Add(part => part.Reading, reading)
        .Add(part => part.Columns, PaperColumn.Of(Written.Metric, true, Engine.Editions.Binding.Saddle, 1, false))
        .Add(part => part.Format, Written.Metric)
        .Add(part => part.Name, row => View.StockName(row.StockIds[1]))
        .Add(part => part.ServiceName, View.ServiceName)
        .Add(part => part.Posts, true)
        .Add(part => part.Use, EventCallback.Factory.Create<PaperRow>(page, row => use?.Invoke(row))));

    private static string[] Names(IRenderedComponent<PaperTable> table) => [.. table.FindAll("tbody th").Select(head => head.ChildNodes.OfType<IText>().First().TextContent.Trim())];
}
