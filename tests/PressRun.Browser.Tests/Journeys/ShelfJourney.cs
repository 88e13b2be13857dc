using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class ShelfJourney(Chromium chromium, SampleApp sample)
{
    [Fact]
    public async Task A_title_is_found_by_the_beginning_of_a_word_and_its_printing_opened_from_there()
    {
        var book = await sample.Stored.BookAsync("Herring Arithmetic", 3);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("");
        var titles = visit.Page.Locator("table.titles a.title");
        Assert.True(await titles.CountAsync() > 10, "The sample press fills the shelf.");

        await visit.TypeAsync("Find a title or its maker", "herr");
        await Expect(titles).ToHaveTextAsync(["Herring Arithmetic"]);
        await visit.TypeAsync("Find a title or its maker", "no such title");
        await Expect(titles).ToHaveCountAsync(0);
        await visit.TypeAsync("Find a title or its maker", "arith herr");
        await Expect(titles).ToHaveTextAsync(["Herring Arithmetic"]);

        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Herring Arithmetic, third printing", Exact = true }).ClickAsync();
        await visit.Page.WaitForURLAsync("**/" + book.Path);
        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Herring Arithmetic");
        await Expect(visit.Field("Pages of inside")).ToHaveValueAsync(sample.Stored.Format.Count(book.Edition.Parts[1].Part.Pages));
        visit.WasQuiet();
    }
}
