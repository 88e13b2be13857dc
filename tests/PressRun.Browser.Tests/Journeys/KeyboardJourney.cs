using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class KeyboardJourney(Chromium chromium, SampleApp sample)
{
    private const int MostStops = 120;

    [Fact]
    public async Task A_run_is_found_opened_and_changed_by_the_keyboard_alone()
    {
        var book = await sample.Stored.BookAsync("The Bilge Reader No. 2", 2);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("shelf");
        var page = visit.Page;
        await Expect(page.Locator("h1")).ToBeFocusedAsync();

        await TabToAsync(page, visit.Field("Find a title or its maker"));
        await page.Keyboard.TypeAsync("bilge 2");
        await Expect(page.Locator("table.titles a.title")).ToHaveTextAsync(["The Bilge Reader No. 2"]);
        await TabToAsync(page, page.GetByRole(AriaRole.Link, new() { Name = "The Bilge Reader No. 2, second printing", Exact = true }));
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/" + book.Path);
        await visit.AnswersAsync();
        await TabToAsync(page, page.GetByRole(AriaRole.Link, new() { Name = "Open its run" }));
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForURLAsync("**/run");
        await visit.AnswersAsync();

        await TabToAsync(page, visit.Field("Copies of this run"));
        await page.Keyboard.TypeAsync("110");
        await page.Keyboard.PressAsync("Enter");
        var marker = page.Locator("svg.wide .marker");
        await Expect(marker).ToHaveAttributeAsync("aria-valuenow", "110");
        await TabToAsync(page, marker);
        await page.Keyboard.PressAsync("ArrowRight");
        await Eventually.HoldsAsync(
            async () => (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan.Quantity == 111, "111 copies are stored");
        await TabToAsync(page, page.Locator(".undo button"));
        await page.Keyboard.PressAsync("Enter");
        await Expect(marker).ToHaveAttributeAsync("aria-valuenow", "110");
        visit.WasQuiet();
    }

    // What is reached stands out: a ring or a line around it.
    private static async Task TabToAsync(IPage page, ILocator wanted)
    {
        for (var stop = 0; stop < MostStops; stop++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await wanted.EvaluateAsync<bool>("element => element === document.activeElement"))
            {
                Assert.True(
                    await wanted.EvaluateAsync<bool>("element => element.matches(':focus-visible')"), "What has the focus shows it.");
                return;
            }
        }

        Assert.Fail($"{MostStops} presses of Tab do not reach {wanted}.");
    }
}
