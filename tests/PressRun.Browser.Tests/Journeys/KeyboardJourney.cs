using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class KeyboardJourney(Chromium chromium, SampleApp sample)
{
    [Fact]
    public async Task A_run_is_found_opened_and_changed_by_the_keyboard_alone()
    {
        var book = await sample.Stored.BookAsync("The Bilge Reader No. 2", 2);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("shelf");
        var page = visit.Page;
        await Expect(page.Locator("h1")).ToBeFocusedAsync();

        await Keys.TabToAsync(page, visit.Field("Find a title or its maker"));
        await page.Keyboard.TypeAsync("bilge 2");
        await Expect(page.Locator("table.titles a.title")).ToHaveTextAsync(["The Bilge Reader No. 2"]);
        await Keys.TabToAsync(page, page.GetByRole(AriaRole.Link, new() { Name = "The Bilge Reader No. 2, second printing", Exact = true }));
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/" + book.Path);
        await visit.AnswersAsync();
        await Keys.TabToAsync(page, page.GetByRole(AriaRole.Link, new() { Name = "Open its run" }));
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/run");
        await visit.AnswersAsync();

        await Keys.TabToAsync(page, visit.Field("Copies of this run"));
        await page.Keyboard.TypeAsync("110");
        await page.Keyboard.PressAsync("Enter");
        var marker = page.Locator("svg.wide .marker");
        await Expect(marker).ToHaveAttributeAsync("aria-valuenow", "110");
        await Keys.TabToAsync(page, marker);
        await page.Keyboard.PressAsync("ArrowRight");
        await Eventually.HoldsAsync(
            async () => (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan.Quantity == 111, "111 copies are stored");
        await Keys.TabToAsync(page, page.Locator(".undo button"));
        await page.Keyboard.PressAsync("Enter");
        await Expect(marker).ToHaveAttributeAsync("aria-valuenow", "110");
        visit.WasQuiet();
    }
}
