using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class TogetherJourney(Chromium chromium, SampleApp sample)
{
    [Fact]
    public async Task Of_two_people_who_change_one_printing_the_second_sees_both_versions_and_chooses()
    {
        var book = await sample.Stored.BookAsync("Eleven Knots for Nervous People", 3);
        await using var first = await sample.VisitAsync(chromium);
        await using var second = await sample.VisitAsync(chromium);
        await first.OpenAsync(book.Path);
        await second.OpenAsync(book.Path);
        var asked = second.Page.GetByRole(AriaRole.Alertdialog, new() { Name = "Two people changed this printing" });

        await PriceAsync(first, "7.25");
        await second.EnterAsync("Price", "6.75");
        await Expect(asked.GetByRole(AriaRole.Row, new() { Name = "Price 6.75 7.25" })).ToBeVisibleAsync();
        Assert.Equal(7.25m, (await sample.Stored.EditionAsync(book.Slug, 3))!.Price);
        await asked.GetByRole(AriaRole.Button, new() { Name = "Take theirs" }).ClickAsync();
        await Expect(asked).ToHaveCountAsync(0);
        await Expect(second.Field("Price")).ToHaveValueAsync("7.25");
        Assert.Equal(7.25m, (await sample.Stored.EditionAsync(book.Slug, 3))!.Price);

        await PriceAsync(first, "7.50");
        await second.EnterAsync("Price", "8.00");
        await Expect(asked.GetByRole(AriaRole.Row, new() { Name = "Price 8.00 7.50" })).ToBeVisibleAsync();
        await asked.GetByRole(AriaRole.Button, new() { Name = "Let mine stand" }).ClickAsync();
        await Expect(asked).ToHaveCountAsync(0);
        await Expect(second.Field("Price")).ToHaveValueAsync("8.00");
        Assert.Equal(8.00m, (await sample.Stored.EditionAsync(book.Slug, 3))!.Price);
        first.WasQuiet();
        second.WasQuiet();

        async Task PriceAsync(Visit visit, string price)
        {
            await visit.EnterAsync("Price", price);
            await Eventually.HoldsAsync(
                async () => sample.Stored.Format.Money((await sample.Stored.EditionAsync(book.Slug, 3))!.Price) == price, $"the price {price} is stored");
        }
    }

    [Fact]
    public async Task What_somebody_else_changed_in_a_library_is_only_written_over_by_who_looks_at_that_row_again()
    {
        await using var first = await sample.VisitAsync(chromium);
        await using var second = await sample.VisitAsync(chromium);
        await first.OpenAsync("papers");
        await second.OpenAsync("papers");

        await CaliperAsync(second, "Hemp kraft cover 280", "411");
        await Expect(second.Page.Locator(".grid-state")).ToHaveTextAsync("All is saved.");
        await CaliperAsync(first, "Hemp kraft cover 280", "409");
        await Expect(first.Page.Locator(".says")).ToContainTextAsync("Somebody else changed this in between");
        await CaliperAsync(first, "Night-blue cover 270", "352");
        await Expect(first.Page.Locator(".says")).ToContainTextAsync("Somebody else changed this in between");
        Assert.Equal(("411", "352"), (await GaugedAsync("Hemp kraft cover 280"), await GaugedAsync("Night-blue cover 270")));
        await CaliperAsync(first, "Hemp kraft cover 280", "410");
        await Expect(first.Page.Locator(".says")).ToHaveCountAsync(0);
        Assert.Equal("410", await GaugedAsync("Hemp kraft cover 280"));

        await first.OpenAsync("post");
        await second.OpenAsync("post");
        await EnterAsync(first, "Board-backed envelope B4", "Weighs", "75");
        await Expect(first.Page.Locator("[data-grid='grid.post/mailers'] .grid-state")).ToHaveTextAsync("All is saved.");
        await Row(second, "Board-backed envelope B4").Locator("[data-col]").First.ClickAsync();
        await second.Page.Locator("[data-grid='grid.post/mailers']").GetByRole(AriaRole.Button, new() { Name = "Take out" }).ClickAsync();
        await Expect(second.Page.Locator(".says")).ToContainTextAsync("so it stays");
        await Row(second, "Board-backed envelope B4").Locator("[data-col]").First.ClickAsync();
        await second.Page.Keyboard.PressAsync("Control+z");
        await Expect(second.Page.Locator(".says")).ToContainTextAsync("Somebody else changed this in between");
        Assert.Equal("75", await TextAsync("post", "Board-backed envelope B4", "Weighs"));
        first.WasQuiet();
        second.WasQuiet();

        static ILocator Row(Visit visit, string name) => visit.Page.Locator("tr[data-row]", new() { HasText = name });

        static Task CaliperAsync(Visit visit, string paper, string micrometres) => EnterAsync(visit, paper, "Caliper", micrometres);

        static async Task EnterAsync(Visit visit, string row, string column, string typed)
        {
            var cell = Row(visit, row).Locator($"[data-label^='{column}']");
            await cell.ClickAsync();
            await visit.Page.Keyboard.TypeAsync(typed);
            await visit.Page.Keyboard.PressAsync("Enter");
            await Expect(cell).ToContainTextAsync(typed);
        }

        Task<string> GaugedAsync(string paper) => TextAsync("papers", paper, "Caliper");

        async Task<string> TextAsync(string page, string row, string column)
        {
            await using var third = await sample.VisitAsync(chromium);
            await third.OpenAsync(page);
            return (await Row(third, row).Locator($"[data-label^='{column}']").GetAttributeAsync("data-text"))!;
        }
    }

    [Fact]
    public async Task What_was_typed_at_one_machine_and_not_left_waits_at_the_other()
    {
        var book = await sample.Stored.BookAsync("A Dockyard Alphabet of Cranes", 1);
        await using var first = await sample.VisitAsync(chromium);
        await using var second = await sample.VisitAsync(chromium);
        await first.OpenAsync(book.Path);
        await first.TypeAsync("Price", "31.40");

        await second.OpenAsync(book.Path);
        await Eventually.HoldsAsync(
            async () =>
            {
                await second.ReloadAsync();
                return await second.Field("Price").InputValueAsync() == "31.40";
            },
            "the other machine has what was typed");
        await Expect(second.Field("Price")).ToHaveAccessibleDescriptionAsync(Said.TypedEarlier);
        Assert.Equal(book.Edition.Price, (await sample.Stored.EditionAsync(book.Slug, 1))!.Price);
        first.WasQuiet();
        second.WasQuiet();
    }
}
