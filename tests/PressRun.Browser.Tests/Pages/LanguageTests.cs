using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Web.Shared.Wording;

namespace PressRun.Browser.Tests.Pages;

public sealed class LanguageTests(Chromium chromium, SampleApp sample)
{
    [Fact]
    public async Task Whoever_asks_for_German_is_told_so_live_too_and_may_choose_English_by_hand()
    {
        await using var visit = await InGermanAsync();
        await visit.OpenAsync("shelf");
        await Assertions.Expect(visit.Page.Locator("html")).ToHaveAttributeAsync("lang", "de");
        await Assertions.Expect(visit.Page.Locator("h1")).ToHaveTextAsync(German("Shelf"));

        await visit.Page.GetByLabel(German("Find a title or its maker")).FillAsync("zzzz");
        await Assertions.Expect(visit.Page.Locator("p.sentence")).ToHaveTextAsync(German("No title begins like that."));

        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "English" }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator("html")).ToHaveAttributeAsync("lang", "en");
        await visit.AnswersAsync();
        await visit.OpenAsync("papers");
        await Assertions.Expect(visit.Page.Locator("h1")).ToHaveTextAsync("Papers");
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Button, new() { Name = "Deutsch" })).ToHaveCountAsync(1);
        visit.WasQuiet();
    }

    [Fact]
    public async Task No_page_is_wider_than_a_phone_in_German()
    {
        var book = await sample.Stored.BookAsync(EveryPage.Title, EveryPage.Printing);
        var plan = (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan;
        await using var visit = await InGermanAsync();
        await visit.Page.SetViewportSizeAsync(390, 844);
        var wide = new List<string>();
        foreach (var route in EveryPage.Routes().Select(row => row.Data))
        {
            await visit.OpenAsync(EveryPage.Address(route, book.Slug, plan));
            if (await visit.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") is > 0 and var over)
            {
                wide.Add($"{route}: {over} px");
            }
        }

        Assert.True(wide.Count == 0, string.Join(Environment.NewLine, wide));
    }

    private static string German(string text) => Translation.Of(new("de"))!.Find(null, text)!;

    private Task<Visit> InGermanAsync() => Visit.BeginAsync(chromium.Browser, sample.Address, "de-AT", sample.Stored.Press.Id.ToString());
}
