using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Web.Shared.Wording;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class PapersJourney(Chromium chromium, SampleApp sample)
{
    private PressFormat Format => sample.Stored.Format;

    [Fact]
    public async Task Prices_of_another_day_are_shown_line_by_line_taken_and_taken_back()
    {
        var book = await sample.Stored.BookAsync("The Bilge Reader No. 1", 1);
        var before = await sample.Stored.ChosenPlanAsync(book.Edition.Id);
        var quantity = before.Plan.Quantity;
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path + "/run");
        var reprice = visit.Page.GetByRole(AriaRole.Region, new() { Name = "Prices of another day" });
        await reprice.GetByLabel("Work it out as of").FillAsync("2025-12-01");
        await reprice.GetByRole(AriaRole.Button, new() { Name = "Work it out" }).ClickAsync();
        await Expect(reprice.Locator("tfoot td").First).ToHaveTextAsync(Format.Money(Reckoned.At(before).Totals.LandedCost));
        var then = await reprice.Locator("tfoot td").Last.InnerTextAsync();
        Assert.Equal(before.Plan.PriceListId, (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan.PriceListId);

        await reprice.GetByRole(AriaRole.Button, new() { Name = "Go by these prices" }).ClickAsync();
        var undo = visit.Page.GetByRole(AriaRole.Button, new() { Name = "Undo prices of another day" });
        await Expect(undo).ToBeVisibleAsync();
        var after = await sample.Stored.ChosenPlanAsync(book.Edition.Id);
        Assert.Equal(new DateOnly(2025, 9, 1), after.PriceList.ValidFrom);
        Assert.Equal(then, Format.Money(Reckoned.At(after).Totals.LandedCost));
        await SaysAsync(visit.Page, Reckoned.At(after).Totals.LandedCost, quantity);

        await undo.ClickAsync();
        await SaysAsync(visit.Page, Reckoned.At(before).Totals.LandedCost, quantity);
        Assert.Equal(before.Plan.PriceListId, (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan.PriceListId);
        visit.WasQuiet();
    }

    private async Task SaysAsync(IPage page, decimal landed, int quantity) =>
        await Expect(page.Locator("p.sentence").First).ToContainTextAsync($"cost {Format.Money(landed)}, that is {Format.Money(landed / quantity)} each");
}
