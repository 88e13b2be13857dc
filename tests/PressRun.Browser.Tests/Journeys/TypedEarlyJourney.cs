using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Web.Shared.Wording;
using PressRun.Web.Start;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class TypedEarlyJourney(Chromium chromium, SampleApp sample)
{
    [Fact]
    public async Task What_is_typed_before_the_page_answers_is_taken_when_it_does_and_the_cursor_stays_where_it_was()
    {
        await using var visit = await sample.VisitAsync(chromium);
        var page = visit.Page;
        var live = new TaskCompletionSource();
        await page.RouteAsync("**/_framework/blazor.web*.js", async route =>
        {
            await live.Task;
            await route.ContinueAsync();
        });
        await page.GotoAsync("start", new() { WaitUntil = WaitUntilState.Commit });
        await visit.Field("Pages inside the cover").WaitForAsync();
        await page.EvaluateAsync("() => import('./js/drafts.js')");
        await visit.Field("Pages inside the cover").FillAsync("");
        await visit.Field("Pages inside the cover").PressSequentiallyAsync("36");
        await visit.Field("Copies").FillAsync("");
        await visit.Field("Copies").PressSequentiallyAsync("8");

        live.SetResult();
        await visit.AnswersAsync();

        // The one that was left is taken; in the other one goes on typing, and leaving it saves.
        await Expect(page.Locator(".start-sentence")).ToContainTextAsync("36 pages of");
        await Expect(visit.Field("Copies")).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync("0");
        await Expect(visit.Field("Copies")).ToHaveValueAsync("80");
        await visit.Field("Pages inside the cover").FocusAsync();
        var format = new PressFormat(Currency.Find("EUR")!, Data.Presses.UnitSystem.Metric, System.Globalization.CultureInfo.GetCultureInfo("en-IE"));
        await Expect(page.Locator(".start-sentence")).ToContainTextAsync(
            $"copies cost {format.Sum(StartJourney.Reckon(FirstNumber.For(PaperRegion.Iso) with { InsidePages = 36, Quantity = 80 }, format.Currency).Totals.LandedCost)}");
        await Expect(page.Locator("[data-state=recalled]")).ToHaveCountAsync(0);
        visit.WasQuiet();
    }
}
