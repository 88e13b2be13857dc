using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data;
using PressRun.Data.Copies;
using PressRun.Engine.Copies;
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

    [Fact]
    public async Task A_title_is_added_with_its_usual_make_and_nothing_that_was_typed_goes_away_before()
    {
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("shelf");
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Add a title" }).ClickAsync();
        await visit.EnterAsync("Title", "Ropes We Have Known");
        await visit.EnterAsync("By", "Tilde Ferrow");
        await FoldedAsync(visit);
        await visit.EnterAsync("Pages inside the cover", "30");
        await Expect(visit.Field("Pages inside the cover")).ToHaveAccessibleDescriptionAsync(new Regex("the nearest are 28 or 32\\.$"));
        await visit.EnterAsync("Pages inside the cover", "32");
        await visit.Field("Paper inside").SelectOptionAsync(new SelectOptionValue { Label = "Kelp green 90" });
        await Expect(visit.Field("Title")).ToHaveValueAsync("Ropes We Have Known");
        await Expect(visit.Field("By")).ToHaveValueAsync("Tilde Ferrow");
        await Expect(visit.Field("Pages inside the cover")).ToHaveValueAsync("32");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Put it on the shelf" }).ClickAsync();

        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Ropes We Have Known");
        var book = await sample.Stored.BookAsync("Ropes We Have Known", 1);
        Assert.Equal(("kelp-green-90", 32), (book.Edition.Parts[1].Part.StockId, book.Edition.Parts[1].Part.Pages));
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_title_is_put_on_the_shelf_once_however_often_its_button_is_pressed()
    {
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("titles/new");
        await visit.EnterAsync("Title", "Nine Knocks");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Put it on the shelf" })
            .EvaluateAsync("button => { button.click(); button.click(); button.click(); }");
        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Nine Knocks");

        Assert.Single((await sample.Stored.FindAsync("Nine Knocks")).Titles);
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_page_count_that_is_refused_beside_its_field_puts_no_title_on_the_shelf_under_another_count()
    {
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("titles/new");
        await visit.EnterAsync("Title", "Thirty Three Buoys");
        await FoldedAsync(visit);
        await visit.TypeAsync("Pages inside the cover", "33");
        var put = visit.Page.GetByRole(AriaRole.Button, new() { Name = "Put it on the shelf" });
        await put.ClickAsync();

        await Expect(visit.Page.GetByText("It does not stand on the shelf yet")).ToBeVisibleAsync();
        await Expect(visit.Field("Pages inside the cover")).ToHaveAccessibleDescriptionAsync(new Regex("the nearest are 32 or 36\\.$"));
        await Expect(visit.Field("Pages inside the cover")).ToHaveValueAsync("33");
        Assert.EndsWith("titles/new", visit.Page.Url, StringComparison.Ordinal);
        Assert.Empty((await sample.Stored.FindAsync("Thirty Three Buoys")).Titles);

        await visit.EnterAsync("Pages inside the cover", "34");
        await visit.Field("Held together").SelectOptionAsync(new SelectOptionValue { Label = "stapled at the side" });
        await put.ClickAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Thirty Three Buoys");
        Assert.Equal(34, (await sample.Stored.BookAsync("Thirty Three Buoys", 1)).Edition.Parts[1].Part.Pages);
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_press_counts_for_the_button_that_it_began_on_though_a_message_pushes_it_away_before_the_release()
    {
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("titles/new");
        await visit.EnterAsync("Title", "Thirty Five Buoys");
        await FoldedAsync(visit);
        await visit.TypeAsync("Pages inside the cover", "35");
        var put = visit.Page.GetByRole(AriaRole.Button, new() { Name = "Put it on the shelf" });
        await put.ScrollIntoViewIfNeededAsync();
        var box = (await put.BoundingBoxAsync())!;
        await visit.Page.Mouse.MoveAsync(box.X + (box.Width / 2), box.Y + 3);

        await visit.Page.Mouse.DownAsync();
        await Expect(visit.Page.GetByText("the nearest are 32 or 36.").First).ToBeVisibleAsync();
        Assert.True((await put.BoundingBoxAsync())!.Y > box.Y + 3, "The message pushed nothing away, so nothing was tested.");
        await visit.Page.Mouse.UpAsync();

        await Expect(visit.Page.GetByText("It does not stand on the shelf yet")).ToBeVisibleAsync();
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_press_is_taken_back_by_moving_the_mouse_away()
    {
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("titles/new");
        await visit.EnterAsync("Title", "Thirty Six Buoys");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Put it on the shelf" }).HoverAsync();

        await visit.Page.Mouse.DownAsync();
        await visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 }).HoverAsync();
        await visit.Page.Mouse.UpAsync();
        await visit.EnterAsync("By", "Tilde Ferrow");

        Assert.EndsWith("titles/new", visit.Page.Url, StringComparison.Ordinal);
        Assert.Empty((await sample.Stored.FindAsync("Thirty Six Buoys")).Titles);
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_title_that_was_typed_before_the_page_was_fetched_anew_is_put_on_the_shelf_as_it_reads_there()
    {
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("titles/new");
        await visit.TypeAsync("Title", "Letters to a Breakwater");
        await visit.ReloadAsync();
        await Expect(visit.Field("Title")).ToHaveValueAsync("Letters to a Breakwater");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Put it on the shelf" }).ClickAsync();

        await Expect(visit.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Letters to a Breakwater");
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_kept_draft_that_is_no_text_is_let_go_and_the_others_come_back()
    {
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("shelf");
        await visit.Page.EvaluateAsync(
            "() => { const own = `pressrun.draft.${document.querySelector('[data-drafts-of]').dataset.draftsOf}.`; localStorage.setItem(own + 'new/title', 'Half \\ud800'); localStorage.setItem(own + 'new/by', 'Tilde Ferrow'); localStorage.setItem(own + 'x\\udc00', 'y'); }");

        await visit.OpenAsync("titles/new");

        await Expect(visit.Field("By")).ToHaveValueAsync("Tilde Ferrow");
        await Expect(visit.Field("Title")).ToHaveValueAsync("");
        Assert.Equal(1, await visit.Page.EvaluateAsync<int>("() => Object.keys(localStorage).filter(key => key.startsWith('pressrun.draft.')).length"));
        visit.WasQuiet();
    }

    [Fact]
    public async Task The_sentence_of_the_shelf_leads_to_what_needs_a_decision_and_only_that_is_shown_there()
    {
        await using var app = await AppProcess.StartAsync(sample: true);
        await using var stored = await Stored.OpenAsync(app);
        await using var visit = await Visit.BeginAsync(chromium.Browser, app.Address, press: stored.Press.Id.ToString());
        await visit.OpenAsync("shelf");
        var asking = visit.Page.Locator("table.titles tbody", new() { Has = visit.Page.Locator("a.asks") }).Locator("a.title");
        var names = await asking.AllInnerTextsAsync();
        Assert.NotEmpty(names);

        await visit.Page.Locator(".sentence a[href$=asking]").ClickAsync();
        await visit.Page.WaitForURLAsync("**/shelf?show=asking");
        await Expect(visit.Page.Locator("table.titles a.title")).ToHaveTextAsync(names);
        await visit.ReloadAsync();
        await Expect(visit.Page.Locator("table.titles a.title")).ToHaveTextAsync(names);
        await visit.TypeAsync("Find a title or its maker", names[0][..4]);
        await Expect(visit.Page.Locator("table.titles a.title")).ToHaveTextAsync([names[0]]);
        await visit.TypeAsync("Find a title or its maker", "fog man");
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "due to be ordered", Exact = true }).ClickAsync();
        await Expect(visit.Page.Locator("table.titles a.title")).ToHaveTextAsync(["Fog Manners"]);
        var now = visit.Page.Locator("table.titles a.asks");
        await Expect(now).ToHaveTextAsync("Sold out: order now");
        await Expect(now).ToHaveAttributeAsync("href", new System.Text.RegularExpressions.Regex("^titles/fog-manners/\\d+/reprint$"));
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "archived", Exact = true }).ClickAsync();
        await Expect(visit.Page.Locator("table.titles a.title")).ToHaveCountAsync(0);
        visit.WasQuiet();
    }

    [Fact]
    public async Task Copies_that_last_for_years_or_for_nobody_knows_how_long_are_said_within_the_width_of_a_phone()
    {
        await using var app = await AppProcess.StartAsync(sample: true);
        await using var stored = await Stored.OpenAsync(app);
        var book = await stored.BookAsync("Lantern Club Winter Broadside", 1);
        var today = DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime);
        var many = new NewMovement(Guid.NewGuid(), book.Edition.Id, today, MovementKind.Counted, 5 * (int)(await stored.OnHandAsync(book.Edition.Id)).OnHand);
        Assert.IsType<SaveResult<MovementRecord>.Saved>(await stored.Services.GetRequiredService<CopiesLedgerStore>().WriteAsync(stored.Press.Id, many));
        await using var visit = await Visit.BeginAsync(chromium.Browser, app.Address, press: stored.Press.Id.ToString());
        await visit.OpenAsync("shelf");
        await Expect(visit.Page.Locator("td.lasts", new() { HasTextRegex = new Regex(@"over 104\s+\d+ to over 104") })).ToHaveCountAsync(1);

        foreach (var width in new[] { 390, 320 })
        {
            await visit.Page.SetViewportSizeAsync(width, 900);
            Assert.Equal(width, await visit.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth"));
        }

        visit.WasQuiet();
    }

    // A new title is preset by the latest, whatever a test beside this one made.
    private static async Task FoldedAsync(Visit visit) => await visit.Field("Held together").SelectOptionAsync(new SelectOptionValue { Label = "folded and stapled" });
}
