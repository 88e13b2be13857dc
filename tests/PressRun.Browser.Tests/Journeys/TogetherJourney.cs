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
