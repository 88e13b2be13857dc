using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class FixListJourney(Chromium chromium, SampleApp sample)
{
    private const string New = "Noticed in this printing, to mend at the next";

    [Fact]
    public async Task What_is_noticed_in_one_printing_waits_at_the_next_and_is_ticked_off_there()
    {
        var book = await sample.Stored.BookAsync("Postcards from the Dredger", 1);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path);
        await visit.TypeAsync(New, "the stamp on card 3 is cut");
        await visit.TypeAsync("On page", "three");
        await visit.ReloadAsync();
        await Expect(visit.Field(New)).ToHaveValueAsync("the stamp on card 3 is cut");
        await Expect(visit.Field("On page")).ToHaveValueAsync("three");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Note it" }).ClickAsync();
        await Expect(visit.Page.Locator(".fix-list [role=alert]")).ToHaveTextAsync("Write the number of the page, or leave it empty.");
        await visit.EnterAsync("On page", "3");
        var here = visit.Page.GetByRole(AriaRole.List, new() { Name = "Noticed in this printing" });
        await Expect(here).ToContainTextAsync("the stamp on card 3 is cut page 3, waits for the next printing");
        await visit.EnterAsync(New, "green too dark");
        await Expect(here.GetByRole(AriaRole.Listitem)).ToHaveCountAsync(2);
        await here.GetByRole(AriaRole.Button, new() { Name = "Take out: green too dark" }).ClickAsync();
        await Expect(here.GetByRole(AriaRole.Listitem)).ToHaveCountAsync(1);
        await visit.Page.Locator(".undo button").ClickAsync();
        await Expect(here.GetByRole(AriaRole.Listitem)).ToHaveCountAsync(2);

        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Copy forward to the next printing" }).ClickAsync();
        await Expect(visit.Page.Locator("p.sentence a.look")).ToHaveTextAsync("2 things to mend wait here.");
        var earlier = visit.Page.GetByRole(AriaRole.List, new() { Name = "Noticed in earlier printings" });
        await earlier.GetByRole(AriaRole.Button, new() { Name = "Mended: the stamp on card 3 is cut" }).ClickAsync();
        await Expect(earlier).ToContainTextAsync("mended here");
        await earlier.GetByRole(AriaRole.Button, new() { Name = "Carry on to the next printing: green too dark" }).ClickAsync();
        await Expect(earlier).ToContainTextAsync("carried on to the next printing");
        await Expect(visit.Page.Locator("p.sentence a.look")).ToHaveCountAsync(0);
        await visit.Page.Locator(".undo button").ClickAsync();
        await Expect(visit.Page.Locator("p.sentence a.look")).ToHaveTextAsync("1 thing to mend waits here.");
        await visit.ReloadAsync();
        await Expect(earlier.Locator("li.waits")).ToContainTextAsync("green too dark");

        await visit.OpenAsync(book.Path);
        await Expect(here).ToContainTextAsync("mended in the third printing");
        visit.WasQuiet();
    }
}
