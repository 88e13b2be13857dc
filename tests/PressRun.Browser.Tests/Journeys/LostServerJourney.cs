using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class LostServerJourney(Chromium chromium)
{
    [Fact]
    public async Task Who_looks_around_finds_again_what_was_typed_when_the_server_was_killed_and_the_page_says_so_calmly()
    {
        await using var app = await AppProcess.StartAsync(sample: false);
        await using var visit = await Visit.BeginAsync(chromium.Browser, app.Address);
        await visit.OpenAsync("");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Look around with the sample press" }).ClickAsync();
        await visit.Page.WaitForURLAsync("**/shelf");
        await visit.AnswersAsync();
        Book book;
        await using (var stored = await Stored.OpenAsync(app))
        {
            book = await stored.BookAsync("Herring Arithmetic", 3);
        }

        await visit.OpenAsync(book.Path);
        await visit.EnterAsync("Price", "5.25");
        await Expect(visit.Page.Locator(".undo button")).ToHaveTextAsync("Undo price");
        await visit.TypeAsync("Given away", "17");
        await app.KillAsync();

        var notice = visit.Page.Locator("#components-reconnect-modal");
        await Expect(notice).ToContainTextAsync("It is tried again by itself; what you type here is kept in this browser.", new() { UseInnerText = true });
        await visit.TypeAsync("Given away", "19");
        await app.StartAsync();

        await Expect(visit.Field("Given away")).ToHaveAccessibleDescriptionAsync(Said.TypedEarlier);
        await visit.AnswersAsync();
        await Expect(visit.Field("Given away")).ToHaveValueAsync("19");
        await Expect(visit.Field("Price")).ToHaveValueAsync("5.25");
        await visit.Field("Given away").PressAsync("Enter");
        await Expect(visit.Page.Locator(".undo button")).ToHaveTextAsync("Undo copies given away");
        await using var again = await Stored.OpenAsync(app);
        var now = (await again.EditionAsync(book.Slug, 3))!;
        Assert.Equal((5.25m, 19), (now.Price, now.FreeCopies));
    }
}
