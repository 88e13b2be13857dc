using System.Globalization;
using Bunit;
using Microsoft.AspNetCore.Components;
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
            Assert.Equal(pace.Best.Quantity == 60, row.QuerySelectorAll("td")[4].TextContent == "the best");
        }
    }

    [Fact]
    public async Task The_sentence_offers_the_best_number_where_ones_own_is_another_and_says_why_it_is_no_higher()
    {
        var advice = Advice(Planner, 10);
        var (taken, best) = (0, advice.Best.Point.Quantity);
        await using var page = APage();
        var sentence = page.Render<ReprintSentence>(set => Set(set, advice).Add(part => part.Take, quantity => taken = quantity));

        Assert.Equal("10", sentence.Find("input").GetAttribute("value"));
        Assert.Contains($"One more would bring {Format.Money(advice.Next!.Value.Brings)} on average and cost {Format.Money(advice.Next.Value.Costs)}", Text(sentence), StringComparison.Ordinal);
        await sentence.Find("button").ClickAsync(new());
        Assert.Equal(best, taken);
    }

    [Fact]
    public async Task Cash_that_forbids_the_best_turns_the_headline_to_the_best_that_it_pays_for()
    {
        var planner = ReprintPlanner.Prepare(ARun.Prepared, new ReprintRequest(0, new PoissonDemand(60m, 0), 5m, 0m, 0m, 0m, 60m, 0, 300, 1)).Value;
        var advice = Advice(planner, 40);
        Assert.InRange(advice.Answer.Point.Quantity, 1, advice.Best.Point.Quantity - 1);
        await using var page = APage();
        var words = Text(page.Render<ReprintSentence>(set => Set(set, advice).Add(part => part.Cash, 60m)));

        Assert.StartsWith($"Print {advice.Answer.Point.Quantity}, the best that the cash of $60.00 pays for: on hand are none;", words, StringComparison.Ordinal);
        Assert.Contains(
            $"With {Format.Money(advice.WithMoreCash!.Value.More)} more to pay out, {advice.Best.Point.Quantity} would be best, and keep {Format.Money(advice.WithMoreCash.Value.Gains)} more.", words, StringComparison.Ordinal);
        Assert.Contains($"takes {Format.Money(advice.OwnBeyondCash!.Value)} more cash than there is", words, StringComparison.Ordinal);
        Assert.DoesNotContain("One more", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_copy_left_over_that_is_worth_more_than_one_more_costs_is_said_to_hold_nothing_back()
    {
        var planner = ReprintPlanner.Prepare(ARun.Prepared, new ReprintRequest(0, new PoissonDemand(60m, 0), 5m, 4m, 0m, 0m, null, 0, 300, 1)).Value;
        var advice = Advice(planner, 300);
        Assert.Equal(300, advice.Answer.Point.Quantity);
        await using var page = APage();

        Assert.Contains(
            "That is the last number looked at: as a copy left over is still worth 4.00, nothing holds the number back.",
            Text(page.Render<ReprintSentence>(set => Set(set, advice).Add(part => part.Salvage, 4m))),
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_none_is_best_the_sentence_says_what_the_copies_on_hand_keep()
    {
        var planner = ReprintPlanner.Prepare(ARun.Prepared, new ReprintRequest(300, new PoissonDemand(60m, 0), 5m, 0m, 0m, 0m, null, 0, 300, 1)).Value;
        var advice = Advice(planner, 40);
        Assert.Equal(0, advice.Answer.Point.Quantity);
        await using var page = APage();
        var words = Text(page.Render<ReprintSentence>(set => Set(set, advice)));

        Assert.StartsWith("Print none: on hand are 300;", words, StringComparison.Ordinal);
        Assert.Contains($"What is on hand keeps {Format.Money(advice.Answer.Point.ExpectedProfit)} on average, and no printing keeps more.", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_own_number_that_loses_money_says_by_how_much_it_is_worse()
    {
        var planner = ReprintPlanner.Prepare(ARun.Prepared, new ReprintRequest(300, new PoissonDemand(60m, 0), 5m, 0m, 0m, 0m, null, 0, 300, 1)).Value;
        var advice = Advice(planner, 300);
        Assert.True(advice is { Own.Point.ExpectedProfit: < 0m, OwnShort: > 0m });
        await using var page = APage();

        var words = Text(page.Render<ReprintSentence>(set => Set(set, advice)));

        Assert.Contains($"it would lose {Format.Sum(-advice.Own.Point.ExpectedProfit)} on average, {Format.Money(advice.OwnShort)} worse", words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, 1.93, 2.25, 18, "One more would bring 1.93 on average and cost 2.25: it is asked for in 18 of the 50.")]
    [InlineData(1, 2.251, 2.252, 20, "One more would bring no more on average than the 2.25 it costs: it is asked for in 20 of the 50.")]
    [InlineData(25, 12.4, 30, 9, "The next step up, to 130, would bring 12.40 on average and cost 30.00.")]
    [InlineData(1, -2, 0.5, 0, "One more would cost 0.50, and bring 2.00 less on average.")]
    [InlineData(1, -3, -1, 0, "One more would cost 1.00 less, and bring 3.00 less on average.")]
    public void Why_no_more_is_one_plain_sentence(int more, decimal brings, decimal costs, int asked, string words) =>
        Assert.Equal(words, ReprintWords.WhyNoMore(new NextCopies(105 + more, more, brings, costs, asked), 50, Format));

    [Fact]
    public async Task The_odds_are_counted_in_dots_and_what_is_paid_out_says_that_own_hours_are_left_out()
    {
        await using var page = APage();
        var look = Planner.LookAt(62).Value;
        var words = Text(page.Render<ReprintChances>(set => set.Add(part => part.Look, look).Add(part => part.Format, Format)));
        Assert.Contains($"Selling out{look.SoldOut} of 50 dots {decimal.Round((decimal)look.Odds.SellingOut * 100, 0)} %", words, StringComparison.Ordinal);
        Assert.Contains($"Paid out at once{Format.Money(look.Point.CashOut)} without your own hours", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_number_that_was_looked_at_while_it_was_typed_is_saved_and_stays_in_its_place()
    {
        var saved = "";
        var best = Advice(Planner, 10).Best.Point.Quantity;
        await using var page = APage();
        var sentence = page.Render<ReprintSentence>(set => Set(set, Advice(Planner, 10), text => saved = text));
        var field = sentence.Find("input").Id;

        // The best number itself is typed: the page looks at it before Enter.
        sentence.Render(set => set.Add(part => part.Advice, Advice(Planner, best)));
        Assert.Equal(field, sentence.Find("input").Id);
        await sentence.Find("input").ChangeAsync(new() { Value = $"{best}" });

        Assert.Equal($"{best}", saved);
    }

    [Theory]
    [InlineData(14, 21, 70, "3", "2 to 10")]
    [InlineData(800, 900, 1000, "over 104", "")]
    [InlineData(14, 70, 1000, "10", "2 to over 104")]
    [InlineData(13, 14, 15, "2", "2")]
    public void Weeks_are_whole_and_those_far_off_are_not_counted(double low, double middle, double high, string weeks, string between)
    {
        var outlook = new CopiesOutlook(30, low, middle, high);
        Assert.Equal((weeks, between), (OutlookWords.Weeks(outlook.Weeks.Middle, Format), OutlookWords.Between(outlook, Format)));
    }

    private static ReprintAdvice Advice(ReprintPlanner planner, int own) => ReprintAdvice.Of(planner, planner.Plan().Value, own).Value;

    private static BunitContext APage()
    {
        var page = new BunitContext();
        page.JSInterop.Mode = JSRuntimeMode.Loose;
        page.Services.AddSingleton<IServerDrafts>(new KeptNowhere());
        page.Services.AddScoped<Drafts>();
        return page;
    }

    private static ComponentParameterCollectionBuilder<ReprintSentence> Set(ComponentParameterCollectionBuilder<ReprintSentence> set, ReprintAdvice advice, Action<string>? save = null) => set
        .Add(part => part.Advice, advice).Add(part => part.Shown, advice.Own.Point.Quantity).Add(part => part.Low, 50).Add(part => part.High, 70)
        .Add(part => part.Over, "6 months").Add(part => part.Format, Format).Add(part => part.SaveQuantity, text =>
        {
            save?.Invoke(text);
            return Task.FromResult<string?>(null);
        });

    private static string Text(IRenderedComponent<IComponent> part) =>
        string.Join(' ', string.Concat(part.Nodes.Select(node => node.TextContent)).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
