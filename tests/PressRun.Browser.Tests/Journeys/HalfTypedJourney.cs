using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class HalfTypedJourney(Chromium chromium)
{
    // A row that holds only a name may be a whole one where the rest is usual: this app is nobody else's.
    [Fact]
    public async Task A_half_typed_cell_of_a_new_row_is_there_again_when_the_page_is_fetched_anew()
    {
        await using var app = await AppProcess.StartAsync(sample: true);
        await using var stored = await Stored.OpenAsync(app);
        await using var visit = await Visit.BeginAsync(chromium.Browser, app.Address, press: stored.Press.Id.ToString());
        foreach (var path in new[] { "papers", "post", "selling", "bench", "shops/brobank-book-works" })
        {
            await visit.OpenAsync(path);
            var grid = visit.Page.Locator(".edit-grid").First;
            await grid.Locator("tr.blank").Last.Locator("[data-col]").First.ClickAsync();
            await visit.Page.Keyboard.TypeAsync("Half a na");
            await Expect(visit.Page.Locator("[data-editor] input")).ToHaveValueAsync("Half a na");

            await visit.ReloadAsync();

            await Expect(grid.Locator("[data-col]", new() { HasText = "Half a na" })).ToHaveCountAsync(1);
        }

        visit.WasQuiet();
    }
}
