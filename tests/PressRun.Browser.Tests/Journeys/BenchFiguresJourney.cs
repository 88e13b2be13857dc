using PressRun.Browser.Tests.Running;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

/// <summary>The page of one's own table shows what was typed, everywhere on it and at once.</summary>
public sealed class BenchFiguresJourney(Chromium chromium, OwnApp own) : IClassFixture<OwnApp>
{
    private readonly AppProcess app = own.App;

    [Fact]
    public async Task What_is_typed_stands_in_its_field_in_the_sentence_and_in_the_comparison_with_the_shop()
    {
        await using var visit = await Visit.BeginAsync(chromium.Browser, app.Address);
        await visit.OpenAsync("bench");
        await visit.EnterAsync("An hour costs", "17.25");
        await Expect(visit.Field("An hour costs")).ToHaveValueAsync("17.25");
        await Expect(visit.Page.Locator(".sentence").First).ToContainTextAsync("17.25");
        await Expect(visit.Page.Locator(".two-ways")).ToContainTextAsync("at 17.25 an hour");
        var shop = visit.Page.Locator(".two-ways input").First;
        var ticked = await shop.IsCheckedAsync();
        await shop.ClickAsync();
        await visit.EnterAsync("An hour costs", "18");
        await Expect(visit.Page.Locator(".two-ways")).ToContainTextAsync("at 18.00 an hour");
        await Expect(shop).ToBeCheckedAsync(new() { Checked = !ticked });
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_limit_is_shown_as_it_was_typed_and_an_emptied_one_goes_back_to_common_practice()
    {
        await using var visit = await Visit.BeginAsync(chromium.Browser, app.Address);
        await visit.OpenAsync("bench");
        var limits = visit.Page.Locator("section[aria-labelledby=limits] input").First;
        var usual = await limits.InputValueAsync();
        await limits.FillAsync("7");
        await limits.BlurAsync();
        await Expect(limits).ToHaveAttributeAsync("data-kept", "7");
        await Expect(limits).ToHaveValueAsync("7");
        await limits.FillAsync("");
        await limits.BlurAsync();
        await Expect(limits).ToHaveValueAsync(usual);
        visit.WasQuiet();
    }
}
