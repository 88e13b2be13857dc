using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class PayoutsJourney(Chromium chromium, SampleApp sample)
{
    private const string Book = "What the Harbour Pilot Hums";

    [Fact]
    public async Task Who_gets_what_is_agreed_reckoned_paid_saved_as_a_file_and_taken_back()
    {
        var book = await sample.Stored.BookAsync(Book, 1);
        await using var maker = await sample.VisitAsync(chromium);
        await maker.OpenAsync(book.Path + "/payouts");
        await maker.EnterAsync("First day", "2020-01-01");
        await Expect(maker.Page.Locator("main p.sentence").First).ToContainTextAsync("brought");

        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Promise somebody something" }).ClickAsync();
        await maker.Field("Name in line 1").FillAsync("Isa Quay");
        await maker.Field("How much in line 1").FillAsync("lots");
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Keep this" }).ClickAsync();
        await Expect(maker.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Write how much");
        await maker.Field("How much in line 1").FillAsync("0.25");
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "One more" }).ClickAsync();
        await maker.Field("Name in line 2").FillAsync("Tam Wick");
        await maker.Field("How much in line 2").FillAsync("1");
        await maker.Field("Of what in line 2").SelectOptionAsync("OfProfit");

        // What is typed and not kept comes back.
        await maker.ReloadAsync();
        await Expect(maker.Field("Name in line 2")).ToHaveValueAsync("Tam Wick");
        await Expect(maker.Field("Of what in line 2")).ToHaveValueAsync("OfProfit");
        await Expect(maker.Page.GetByText("Typed here earlier and not kept yet.")).ToBeVisibleAsync();
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Keep this" }).ClickAsync();
        await Expect(maker.Page.Locator(".people tbody tr")).ToHaveCountAsync(2);
        await Expect(maker.Page.GetByRole(AriaRole.Button, new() { Name = "Keep this" })).ToHaveCountAsync(0);

        await maker.Field("How much was paid").FillAsync("2");
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
        await Expect(maker.Page.Locator(".people tbody tr").First.Locator("td").Nth(2)).ToHaveTextAsync("2.00");
        var found = await maker.Page.RunAxe();
        Assert.Empty(found.Violations.Select(violation => $"{violation.Id}: {string.Join(" ", violation.Nodes.Select(node => node.Html))}"));

        var file = await maker.Page.RunAndWaitForDownloadAsync(() => maker.Page.GetByRole(AriaRole.Link, new() { Name = "Save as CSV" }).ClickAsync());
        var text = await File.ReadAllTextAsync((await file.PathAsync())!);
        Assert.Contains("Isa Quay", text, StringComparison.Ordinal);
        Assert.Contains("kept by the press", text, StringComparison.Ordinal);

        // Somebody else keeps other lines while these are typed: both stand side by side until one is chosen.
        await using var other = await sample.VisitAsync(chromium);
        await other.OpenAsync(book.Path + "/payouts");
        await other.Field("How much in line 1").FillAsync("0.3");
        await other.Page.GetByRole(AriaRole.Button, new() { Name = "Keep this" }).ClickAsync();
        await Expect(other.Page.GetByText("Kept.")).ToBeVisibleAsync();
        await maker.Field("How much in line 1").FillAsync("0.4");
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Keep this" }).ClickAsync();
        var two = maker.Page.Locator(".conflict tbody tr");
        await Expect(two).ToHaveCountAsync(1);
        await Expect(two).ToContainTextAsync("0.40 for each copy sold");
        await Expect(two).ToContainTextAsync("0.30 for each copy sold");
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Let mine stand" }).ClickAsync();
        await Expect(maker.Page.GetByText("Yours stand.")).ToBeVisibleAsync();
        await Expect(maker.Field("How much in line 1")).ToHaveValueAsync("0.40");
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Undo letting yours stand" }).ClickAsync();
        await Expect(maker.Field("How much in line 1")).ToHaveValueAsync("0.30");

        // What was kept before the other's lines is not taken back over them.
        await Expect(maker.Page.Locator(".undo button")).ToHaveCountAsync(0);
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Take out line 2" }).ClickAsync();
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Take out line 1" }).ClickAsync();
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Keep this" }).ClickAsync();
        await Expect(maker.Page.GetByText("Nobody is promised anything")).ToBeVisibleAsync();
        await Expect(maker.Page.Locator(".people tbody tr")).ToHaveCountAsync(1);
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Undo the change of who gets what" }).ClickAsync();
        await Expect(maker.Field("How much in line 1")).ToHaveValueAsync("0.30");
        maker.WasQuiet();
    }

    [Fact]
    public async Task Lines_that_come_back_are_not_kept_over_what_somebody_else_has_kept_since_they_were_typed()
    {
        var book = await sample.Stored.BookAsync("Fog Manners", 1);
        await using var maker = await sample.VisitAsync(chromium);
        await maker.OpenAsync(book.Path + "/payouts");
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Promise somebody something" }).ClickAsync();
        await maker.Field("Name in line 1").FillAsync("Isa Quay");
        await maker.Field("How much in line 1").FillAsync("0.25");
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Keep this" }).ClickAsync();
        await Expect(maker.Page.GetByText("Kept.")).ToBeVisibleAsync();
        await maker.Field("How much in line 1").FillAsync("0.4");

        await using var other = await sample.VisitAsync(chromium);
        await other.OpenAsync(book.Path + "/payouts");
        await other.Field("How much in line 1").FillAsync("0.3");
        await other.Page.GetByRole(AriaRole.Button, new() { Name = "Keep this" }).ClickAsync();
        await Expect(other.Page.GetByText("Kept.")).ToBeVisibleAsync();

        await maker.ReloadAsync();
        await Expect(maker.Field("How much in line 1")).ToHaveValueAsync("0.4");
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Keep this" }).ClickAsync();
        var two = maker.Page.Locator(".conflict tbody tr");
        await Expect(two).ToContainTextAsync("0.40 for each copy sold");
        await Expect(two).ToContainTextAsync("0.30 for each copy sold");
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Take theirs" }).ClickAsync();
        await Expect(maker.Field("How much in line 1")).ToHaveValueAsync("0.30");
    }
}
