using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Engine.Copies;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class CopiesJourney(Chromium chromium, SampleApp sample)
{
    [Fact]
    public async Task Copies_are_sold_counted_and_taken_back_where_they_stand_and_the_ledger_outlasts_a_reload()
    {
        var book = await sample.Stored.BookAsync("Lantern Club Winter Broadside", 1);
        var before = (await sample.Stored.OnHandAsync(book.Edition.Id)).OnHand;
        var lines = (await sample.Stored.LedgerAsync(book.Edition.Id)).Count;
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path);
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Write down printed, sold and counted copies" }).ClickAsync();
        await visit.Page.WaitForURLAsync($"**/{book.Path}/copies");
        await visit.AnswersAsync();
        var sentence = visit.Page.Locator("p.sentence").First;
        var said = visit.Page.Locator(".over-sheet > [role=status]");

        await visit.TypeAsync("Copies", "2");
        await visit.Page.Keyboard.PressAsync("Tab");
        await Expect(visit.Field("Money")).ToHaveValueAsync(sample.Stored.Format.Money(2 * book.Edition.Price));
        await visit.EnterAsync("Money", "5.50");
        await Expect(said).ToContainTextAsync("Written down: 2 copies sold");
        await Expect(visit.Field("Copies")).ToHaveValueAsync("");
        var sale = (await sample.Stored.LedgerAsync(book.Edition.Id)).Single(line => line.Movement.Amount == 5.50m);
        Assert.Equal((MovementKind.Sold, -2, 5.50m), (sale.Movement.Kind, sale.Movement.Copies, sale.Movement.Amount));
        Assert.Equal(before - 2, (await sample.Stored.OnHandAsync(book.Edition.Id)).OnHand);

        await visit.Field("What happened").SelectOptionAsync(new SelectOptionValue { Label = "counted" });
        await visit.EnterAsync("Copies", "many");
        await Expect(visit.Field("Copies")).ToHaveAttributeAsync("aria-invalid", "true");
        await Expect(visit.Field("Copies")).ToHaveValueAsync("many");
        await visit.EnterAsync("Copies", "9");
        await Expect(said).ToContainTextAsync("Written down: the count of");
        await Expect(sentence).ToContainTextAsync("9 of");
        Assert.Equal(9, (await sample.Stored.OnHandAsync(book.Edition.Id)).OnHand);

        await visit.Page.Locator("table.ledger").GetByRole(AriaRole.Button, new() { Name = "Take back the count of" }).First.ClickAsync();
        await Expect(said).ToContainTextAsync("Taken back: the count of");
        await Expect(visit.Page.Locator("table.ledger tr.taken-back")).ToHaveCountAsync(2);
        await visit.Page.Locator(".undo button").ClickAsync();
        await Expect(sentence).ToContainTextAsync("9 of");
        await Expect(visit.Page.Locator("table.ledger tr.taken-back")).ToHaveCountAsync(2);

        await visit.ReloadAsync();
        await Expect(sentence).ToContainTextAsync("9 of");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Open all months" }).ClickAsync();
        await Expect(visit.Page.Locator("table.ledger tr.line")).ToHaveCountAsync(lines + 4);
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_line_that_was_begun_comes_back_after_a_reload_and_is_written_once_however_often_its_button_is_pressed()
    {
        var book = await sample.Stored.BookAsync("Postcards from the Dredger", 1);
        var before = (await sample.Stored.LedgerAsync(book.Edition.Id)).Count;
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path + "/copies");
        await visit.TypeAsync("Copies", "3");
        await visit.TypeAsync("Note", "to the harbour library");
        await visit.ReloadAsync();
        await Expect(visit.Field("Copies")).ToHaveValueAsync("3");
        await Expect(visit.Field("Note")).ToHaveValueAsync("to the harbour library");
        await visit.Field("What happened").SelectOptionAsync(new SelectOptionValue { Label = "given away" });
        await Expect(visit.Field("Money")).ToHaveCountAsync(0);

        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).DblClickAsync();
        await Expect(visit.Page.Locator(".over-sheet > [role=status]")).ToContainTextAsync("Written down: 3 copies given away");
        await Expect(visit.Field("Copies")).ToHaveValueAsync("");
        await visit.ReloadAsync();
        await Expect(visit.Field("Copies")).ToHaveValueAsync("");
        Assert.Equal(before + 1, (await sample.Stored.LedgerAsync(book.Edition.Id)).Count);
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_printing_is_written_down_with_what_it_really_cost_and_took()
    {
        var book = await sample.Stored.BookAsync("Soup on a Moving Boat", 1);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path + "/copies");
        await visit.Field("What happened").SelectOptionAsync(new SelectOptionValue { Label = "printed" });
        // The page then puts the planned copies into the field: what is typed before would be typed over.
        await Expect(visit.Field("The shop's invoice, with delivery and tax")).ToBeVisibleAsync();
        await visit.EnterAsync("Copies", "40");
        await Expect(visit.Page.GetByText("Write an amount such as").First).ToBeVisibleAsync();
        await visit.TypeAsync("The shop's invoice, with delivery and tax", "100");
        await visit.TypeAsync("Staples, blades, thread", "2");
        await visit.TypeAsync("Art, proof, number", "0");
        await visit.EnterAsync("An hour at the table", "10");
        await Expect(visit.Page.Locator(".over-sheet > [role=status]")).ToContainTextAsync("Written down: 40 copies printed");

        var line = (await sample.Stored.LedgerAsync(book.Edition.Id)).Single(line => line.Printing is { GoodCopies: 40 });
        Assert.Equal((40, 102m), (line.Movement.Copies, line.Movement.Amount));
        await Expect(visit.Page.Locator("table.ledger")).ToContainTextAsync("+40");
        visit.WasQuiet();
    }
}
