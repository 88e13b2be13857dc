using System.Globalization;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class ReprintJourney(Chromium chromium, SampleApp sample)
{
    [Fact]
    public async Task Who_decides_how_many_to_print_moves_the_number_sees_the_odds_and_changes_what_they_rest_on()
    {
        var book = await sample.Stored.BookAsync("Fog Manners", 2);
        var begun = (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan.Quantity;
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path + "/reprint");
        var chances = visit.Page.GetByLabel("What may happen");
        var marker = visit.Page.GetByRole(AriaRole.Slider, new() { Name = "Copies" });
        await Expect(marker).ToHaveAttributeAsync("aria-valuenow", Text(begun));
        await Expect(chances.Locator("dt").First).ToHaveTextAsync($"{Text(begun)} copies");
        var odds = await chances.InnerTextAsync();

        // While one types, the odds are those of the number typed, and nothing is saved.
        await visit.TypeAsync("Copies to print", Text(begun + 60));
        await Expect(chances.Locator("dt").First).ToHaveTextAsync($"{Text(begun + 60)} copies");
        Assert.NotEqual(odds, await chances.InnerTextAsync());
        Assert.Equal(begun, await QuantityAsync());
        await visit.Field("Copies to print").PressAsync("Enter");
        await Expect(visit.Page.Locator(".undo button")).ToHaveTextAsync($"Undo {Text(begun)} copies to {Text(begun + 60)}");
        Assert.Equal(begun + 60, await QuantityAsync());

        await visit.Page.Locator(".profit[data-pointed]").WaitForAsync();
        await marker.PressAsync("ArrowLeft");
        await Expect(marker).ToHaveAttributeAsync("aria-valuenow", Text(begun + 59));
        await Expect(visit.Field("Copies to print")).ToHaveValueAsync(Text(begun + 59));
        await Eventually.HoldsAsync(async () => await QuantityAsync() == begun + 59, "the marker's number is saved");

        // Promised copies are asked for at every pace; an event lifts only its own day.
        var asked = visit.Page.GetByRole(AriaRole.Row, new() { Name = "as now" }).Locator("td").First;
        var before = int.Parse(await asked.InnerTextAsync(), CultureInfo.InvariantCulture);
        await visit.EnterAsync("Copies promised besides", "25");
        await Expect(asked).ToHaveTextAsync(Text(before + 25));
        await visit.EnterAsync("A day of an event sells", "20");
        await Expect(visit.Field("It lasts")).ToHaveValueAsync("1");
        await Expect(visit.Page.GetByText("Over the whole time that is")).ToBeVisibleAsync();
        await visit.Page.SetViewportSizeAsync(390, 844);
        Assert.True(await visit.Page.Locator("table.paces").First.EvaluateAsync<bool>("table => table.scrollWidth <= table.parentElement.clientWidth"), "No table scrolls sideways.");

        await visit.ReloadAsync();
        await Expect(visit.Field("Copies promised besides")).ToHaveValueAsync("25");
        await Expect(visit.Field("Copies to print")).ToHaveValueAsync(Text(begun + 59));
        visit.WasQuiet();

        async Task<int> QuantityAsync() => (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan.Quantity;
    }

    private static string Text(int copies) => copies.ToString(CultureInfo.InvariantCulture);
}
