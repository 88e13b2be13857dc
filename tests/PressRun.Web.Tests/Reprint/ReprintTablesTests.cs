using System.Globalization;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Data.Presses;
using PressRun.Engine.Copies;
using PressRun.Engine.Reprint;
using PressRun.Web.Reprint;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Reprint;

public class ReprintTablesTests
{
    private static readonly PressFormat Format = new(ARun.Dollars, UnitSystem.Metric, CultureInfo.GetCultureInfo("en-US"));

    private static readonly ReprintPlanner Planner =
        ReprintPlanner.Prepare(ARun.Prepared, new ReprintRequest(0, new PoissonDemand(60m, 0), 5m, 0m, 0m, 0m, null, 0, 300, 1)).Value;

    [Fact]
    public async Task Each_pace_stands_with_its_best_quantity_and_each_figure_says_on_a_phone_what_it_is()
    {
        var paces = ReprintPaces.Of(Planner, Planner.Costs().Value, 60).Value;
        await using var page = new BunitContext();
        var table = page.Render<PaceTable>(set => set.Add(part => part.Paces, paces).Add(part => part.Own, 60).Add(part => part.Format, Format));

        var rows = table.FindAll("table.paces tbody tr");
        Assert.Equal(paces.Rows.Count, rows.Count);
        foreach (var (row, pace) in rows.Zip(paces.Rows))
        {
            Assert.Equal(ReprintWords.Pace(pace.Pace, Format), row.QuerySelector("th")!.TextContent);
            Assert.Equal(
                ["asked for", "best to print", "that keeps", "60 would keep", "less by"], row.QuerySelectorAll("td").Select(cell => cell.GetAttribute("data-label")));
            Assert.Equal(pace.Best.Quantity == 0 ? "none" : Format.Count(pace.Best.Quantity), row.QuerySelectorAll("td")[1].TextContent);
        }
    }

    [Fact]
    public async Task The_sentence_offers_the_best_number_where_ones_own_is_another()
    {
        var plan = Planner.Plan().Value;
        var (best, mine) = (Planner.LookAt(plan.BestQuantity).Value, Planner.LookAt(10).Value);
        await using var page = new BunitContext();
        page.JSInterop.Mode = JSRuntimeMode.Loose;
        page.Services.AddSingleton<IServerDrafts>(new KeptNowhere());
        page.Services.AddScoped<Drafts>();
        var taken = 0;
        var sentence = page.Render<ReprintSentence>(set => set.Add(part => part.Best, best).Add(part => part.Mine, mine).Add(part => part.Shown, 10).Add(part => part.WithinCash, plan.WithinCash)
            .Add(part => part.Short, best.Point.ExpectedProfit - mine.Point.ExpectedProfit).Add(part => part.OnHand, 0).Add(part => part.Low, 50).Add(part => part.High, 70)
            .Add(part => part.Over, "6 months").Add(part => part.Format, Format).Add(part => part.SaveQuantity, _ => Task.FromResult<string?>(null)).Add(part => part.Take, quantity => taken = quantity));

        Assert.Equal("10", sentence.Find("input").GetAttribute("value"));
        await sentence.Find("button").ClickAsync(new());
        Assert.Equal(plan.BestQuantity, taken);
    }

    [Fact]
    public async Task A_number_that_was_looked_at_while_it_was_typed_is_saved_and_stays_in_its_place()
    {
        var plan = Planner.Plan().Value;
        var best = Planner.LookAt(plan.BestQuantity).Value;
        await using var page = new BunitContext();
        page.JSInterop.Mode = JSRuntimeMode.Loose;
        page.Services.AddSingleton<IServerDrafts>(new KeptNowhere());
        page.Services.AddScoped<Drafts>();
        var saved = "";
        var sentence = page.Render<ReprintSentence>(set => set.Add(part => part.Best, best).Add(part => part.Mine, Planner.LookAt(10).Value).Add(part => part.Shown, 10)
            .Add(part => part.WithinCash, plan.WithinCash).Add(part => part.Over, "6 months").Add(part => part.Format, Format)
            .Add(part => part.SaveQuantity, text =>
            {
                saved = text;
                return Task.FromResult<string?>(null);
            }));
        var field = sentence.Find("input").Id;

        // The best number itself is typed: the page looks at it before Enter.
        sentence.Render(set => set.Add(part => part.Mine, best));
        Assert.Equal(field, sentence.Find("input").Id);
        await sentence.Find("input").ChangeAsync(new() { Value = $"{plan.BestQuantity}" });

        Assert.Equal($"{plan.BestQuantity}", saved);
    }

    [Theory]
    [InlineData(14, 21, 70, "3", "2 to 10")]
    [InlineData(800, 900, 1000, "over 104", "")]
    [InlineData(14, 70, 1000, "10", "2 to over 104")]
    public void Weeks_are_whole_and_those_far_off_are_not_counted(double low, double middle, double high, string weeks, string between)
    {
        var outlook = new StockOutlook(30, low, middle, high);
        Assert.Equal((weeks, between), (StockWords.Weeks(outlook.Weeks.Middle, Format), StockWords.Between(outlook, Format)));
    }
}
