using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class SalesJourney(Chromium chromium, SampleApp sample)
{
    private const string Book = "A Dockyard Alphabet of Cranes";

    [Fact]
    public async Task Sales_from_a_file_come_in_go_back_and_are_known_again_when_the_file_comes_twice()
    {
        var book = await sample.Stored.BookAsync(Book, 1);
        var before = (await sample.Stored.OnHandAsync(book.Edition.Id)).OnHand;
        await using var visit = await sample.VisitAsync(chromium);
        var sentence = visit.Page.Locator("p.sentence").First;

        await ChooseAsync(visit);
        await Expect(sentence).ToContainTextAsync("All are right.");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Bring in 2 sales" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Take it back" }).WaitForAsync();
        Assert.Equal(before - 3, (await sample.Stored.OnHandAsync(book.Edition.Id)).OnHand);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Take it back" }).ClickAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Button, new() { Name = "Bring in 2 sales" })).ToBeEnabledAsync();
        Assert.Equal(before, (await sample.Stored.OnHandAsync(book.Edition.Id)).OnHand);

        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Bring in 2 sales" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Take it back" }).WaitForAsync();
        await ChooseAsync(visit);
        await Expect(sentence).ToContainTextAsync("2 may be in the ledger already and are left out");
        await Expect(visit.Page.Locator("#import-why")).ToContainTextAsync("All of it may be in the ledger already");
        await Expect(visit.Page.GetByRole(AriaRole.Region, new() { Name = "Rows that may be in the ledger already" })).ToBeVisibleAsync();
        var faults = await Barriers.OfAsync(visit.Page);
        Assert.True(faults.Count == 0, string.Join(Environment.NewLine, faults));
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Tick all" }).ClickAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Button, new() { Name = "Bring in 2 sales" })).ToBeEnabledAsync();
        Assert.Equal(before - 3, (await sample.Stored.OnHandAsync(book.Edition.Id)).OnHand);
        visit.WasQuiet();
    }

    private static async Task ChooseAsync(Visit visit)
    {
        await visit.OpenAsync("sales/import");
        await visit.ChooseFileAsync(new FilePayload
        {
            Name = "autumn.csv",
            MimeType = "text/csv",
            Buffer = "Date,Title,Copies,Amount,Reference\n2026-11-21,A Dockyard Alphabet of Cranes,1,24.00,R-501\n2026-11-22,A Dockyard Alphabet of Cranes,2,48.00,R-502\n"u8.ToArray(),
        });
    }
}
