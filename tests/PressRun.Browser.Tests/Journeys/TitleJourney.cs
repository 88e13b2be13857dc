using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Engine.Editions;
using PressRun.Web.Shared;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class TitleJourney(Chromium chromium, SampleApp sample)
{
    [Fact]
    public async Task A_title_is_renamed_put_away_found_again_and_taken_out_with_each_step_said_where_it_is_done()
    {
        await using var visit = await sample.VisitAsync(chromium);
        var page = visit.Page;
        var heading = page.GetByRole(AriaRole.Heading, new() { Level = 1 });
        await visit.OpenAsync("titles/new");
        await visit.EnterAsync("Title", "Moorings and Excuses");
        await visit.Field("Page").SelectOptionAsync(new SelectOptionValue { Label = await visit.Field("Page").Locator("option", new() { HasText = "A6," }).InnerTextAsync() });
        await visit.Field("Held together").SelectOptionAsync(new SelectOptionValue { Label = Words.Of(Binding.Side) });
        await ClickAsync("Put it on the shelf");
        await Expect(heading).ToHaveTextAsync("Moorings and Excuses");

        // The next one is made like it until it is said otherwise.
        await visit.OpenAsync("titles/new");
        await Expect(visit.Field("Page").Locator("option:checked")).ToContainTextAsync("A6");
        await Expect(visit.Field("Held together").Locator("option:checked")).ToHaveTextAsync(Words.Of(Binding.Side));
        await visit.OpenAsync("titles/moorings-and-excuses/1");

        await visit.EnterAsync("It is called", "Moorings, Excuses");
        await Expect(heading).ToHaveTextAsync("Moorings, Excuses");
        await ClickAsync("Undo name of the title");
        await Expect(heading).ToHaveTextAsync("Moorings and Excuses");

        await ClickAsync("Take it off the shelf");
        await Expect(page.GetByText("It is archived")).ToBeVisibleAsync();
        Assert.Equal((0, 1), ((await sample.Stored.FindAsync("moorings")).Total, (await sample.Stored.FindAsync("moorings", archived: true)).Total));
        await visit.OpenAsync("shelf?show=archived");
        await page.GetByRole(AriaRole.Link, new() { Name = "Moorings and Excuses", Exact = true }).ClickAsync();
        await ClickAsync("Put it back on the shelf");
        await Expect(page.GetByText("It is archived")).ToHaveCountAsync(0);

        await ClickAsync("Copy forward to the next printing");
        await page.WaitForURLAsync("**/titles/moorings-and-excuses/2");
        await Expect(page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Take .*printing", RegexOptions.None) })).ToHaveCountAsync(1);
        await ClickAsync("Take out the second printing");
        await ClickAsync("Keep it");
        await ClickAsync("Take out the second printing");
        await ClickAsync("Take the second printing out for good");
        await page.WaitForURLAsync("**/shelf");
        Assert.Null(await sample.Stored.EditionAsync("moorings-and-excuses", 2));

        await visit.OpenAsync("titles/moorings-and-excuses/1");
        await ClickAsync("Take out the title");
        await ClickAsync("Take the title out for good");
        await page.WaitForURLAsync("**/shelf");
        Assert.Equal(0, (await sample.Stored.FindAsync("moorings")).Total);
        visit.WasQuiet();

        Task ClickAsync(string button) => page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).ClickAsync();
    }

    [Theory]
    [InlineData("ספר הים", "ספר-הים")]
    public async Task A_title_that_runs_or_turns_the_other_way_has_an_address_and_leaves_the_words_around_it_in_place(string words, string slug)
    {
        await using var visit = await sample.VisitAsync(chromium);
        var page = visit.Page;
        await visit.OpenAsync("titles/new");
        await visit.EnterAsync("Title", words);
        await page.GetByRole(AriaRole.Button, new() { Name = "Put it on the shelf", Exact = true }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync(words);
        await visit.OpenAsync($"titles/{Uri.EscapeDataString(slug)}/1");
        await Expect(page).ToHaveTitleAsync($"\u2068{words}\u2069, first printing - PressRun");

        // Where the words after the title stand, seen on the line: to the right of it, as behind any title.
        var isBehind = await page.EvaluateAsync<bool>(
            """
            () => {
              const title = document.querySelector('.trail [aria-current] bdi');
              const rest = document.createRange();
              rest.selectNode(title.nextSibling);
              return rest.getBoundingClientRect().left >= title.getBoundingClientRect().right - 1;
            }
            """);
        Assert.True(isBehind);
        await page.GetByRole(AriaRole.Button, new() { Name = "Take out the title", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Take the title out for good" }).ClickAsync();
        await page.WaitForURLAsync("**/shelf");
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_title_of_which_copies_went_out_is_not_taken_out_and_says_why()
    {
        await using var visit = await sample.VisitAsync(chromium);
        var book = await sample.Stored.BookAsync("Tarpaulin Weather", 1);
        await visit.OpenAsync(book.Path);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Take out the title", Exact = true }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Take the title out for good" }).ClickAsync();

        await Expect(visit.Page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "Copies of it are written down" })).ToBeVisibleAsync();
        Assert.NotNull(await sample.Stored.EditionAsync(book.Slug, 1));
        visit.WasQuiet();
    }
}
