using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class EditionJourney(Chromium chromium, SampleApp sample)
{
    private const int Inside = 1;

    private Web.Shared.Wording.PressFormat Format => sample.Stored.Format;

    [Fact]
    public async Task Every_change_of_pages_paper_and_size_shows_at_once_what_the_engine_says_and_is_stored()
    {
        var book = await sample.Stored.BookAsync("What the Harbour Pilot Hums", 2);
        var plan = await sample.Stored.ChosenPlanAsync(book.Edition.Id);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path);
        await Comes.ToWhatTheEngineSaysAsync(visit.Page, plan, Format);

        plan = With(plan, part => part with { Pages = part.Pages + 8 });
        var pages = Format.Count(plan.Edition.Parts[Inside].Part.Pages);
        await visit.TypeAsync("Pages of inside", pages);
        await Expect(visit.Page.Locator(".consequences")).ToContainTextAsync("As you type");
        await Expect(visit.Page.Locator("p.sentence").First).ToContainTextAsync($"{Format.Count(plan.Edition.Parts.Sum(part => part.Part.Pages))} pages");
        await Comes.ToWhatTheEngineSaysAsync(visit.Page, plan, Format);
        Assert.Equal(book.Edition.Parts, (await sample.Stored.EditionAsync(book.Slug, 2))!.Parts);
        await visit.Field("Pages of inside").PressAsync("Enter");
        await Expect(visit.Page.Locator(".consequences")).Not.ToContainTextAsync("As you type");

        var paper = AnotherPaper(plan);
        plan = With(plan, part => part with { StockId = paper.Id });
        await visit.Field("Paper of inside").SelectOptionAsync(new SelectOptionValue { Label = paper.Name });
        await Comes.ToWhatTheEngineSaysAsync(visit.Page, plan, Format);

        var size = StandardSizes.Find("A6")!;
        plan = plan with { Edition = plan.Edition with { Page = size.Size } };
        await visit.Field("Page size").SelectOptionAsync(new SelectOptionValue { Label = $"A6, {Format.Size(size.Size)}" });
        await Comes.ToWhatTheEngineSaysAsync(visit.Page, plan, Format);
        await Expect(visit.Field("Page width")).ToHaveValueAsync(Format.Length(size.Size.Width).NumberText);

        var stored = (await sample.Stored.EditionAsync(book.Slug, 2))!;
        Assert.Equal(plan.Edition.Parts, stored.Parts);
        Assert.Equal(size.Size, stored.Page);
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_page_count_that_cannot_be_folded_stays_as_typed_names_the_nearest_counts_and_outlasts_a_reload()
    {
        var book = await sample.Stored.BookAsync("Fog Manners", 3);
        var pages = book.Edition.Parts[Inside].Part.Pages + 1;
        var nearest = string.Join(" or ", BindingRules.Nearest(Binding.Saddle, Inside, pages).Select(count => Format.Count(count)));
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path);

        await visit.EnterAsync("Pages of inside", Format.Count(pages));
        var field = visit.Field("Pages of inside");
        await Expect(field).ToHaveAttributeAsync("aria-invalid", "true");
        await Expect(field).ToHaveAccessibleDescriptionAsync(new Regex($"the nearest are {nearest}\\.$"));
        await Expect(field).ToHaveValueAsync(Format.Count(pages));

        await visit.ReloadAsync();
        await Expect(field).ToHaveValueAsync(Format.Count(pages));
        await Expect(field).ToHaveAccessibleDescriptionAsync(Said.TypedEarlier);
        Assert.Equal(book.Edition.Version, (await sample.Stored.EditionAsync(book.Slug, 3))!.Version);

        await field.PressAsync("Escape");
        await Expect(field).ToHaveValueAsync(Format.Count(pages - 1));
        await visit.ReloadAsync();
        await Expect(field).ToHaveValueAsync(Format.Count(pages - 1));
        visit.WasQuiet();
    }

    [Fact]
    public async Task Saved_edits_are_taken_back_by_the_button_and_by_the_keyboard_last_first_and_what_is_left_outlasts_a_reload()
    {
        var book = await sample.Stored.BookAsync("The Lamp That Counted Boats", 3);
        var before = book.Edition.Parts[Inside].Part;
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path);

        await visit.EnterAsync("Price", "11.50");
        var undo = visit.Page.Locator(".undo button");
        await Expect(undo).ToHaveTextAsync("Undo price");
        await visit.EnterAsync("Pages of inside", Format.Count(before.Pages + 4));
        await Expect(undo).ToContainTextAsync("Undo pages of inside");
        await visit.EnterAsync("Given away", "9");
        await Expect(undo).ToHaveTextAsync("Undo copies given away");

        await undo.ClickAsync();
        await Expect(visit.Field("Given away")).ToHaveValueAsync(Format.Count(book.Edition.FreeCopies));
        await visit.Page.Locator("h1").ClickAsync();
        await visit.Page.Keyboard.PressAsync("ControlOrMeta+z");
        await Expect(visit.Field("Pages of inside")).ToHaveValueAsync(Format.Count(before.Pages));
        await Expect(undo).ToHaveTextAsync("Undo price");

        await visit.ReloadAsync();
        await Expect(visit.Field("Price")).ToHaveValueAsync("11.50");
        var stored = (await sample.Stored.EditionAsync(book.Slug, 3))!;
        Assert.Equal(book.Edition with { Price = 11.50m, Version = stored.Version, Parts = stored.Parts, FixedCosts = stored.FixedCosts }, stored);
        Assert.Equal(book.Edition.Parts, stored.Parts);
        Assert.Equal(book.Edition.FixedCosts, stored.FixedCosts);
        visit.WasQuiet();
    }

    [Fact]
    public async Task Who_tabs_quickly_through_the_fields_saves_each_of_them_and_is_no_second_person()
    {
        var book = await sample.Stored.BookAsync("Mending Nets in Bad Light", 1);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path);
        await visit.TypeAsync("Price", "12.75");
        await visit.Page.Keyboard.PressAsync("Tab");
        await visit.Page.Keyboard.TypeAsync("3");
        await visit.Page.Keyboard.PressAsync("Tab");
        await visit.TypeAsync("A copy weighed", "210");
        await visit.Page.Keyboard.PressAsync("Tab");

        await Expect(visit.Page.Locator(".undo button")).ToHaveTextAsync("Undo weight");
        await Expect(visit.Page.GetByRole(AriaRole.Alertdialog)).ToHaveCountAsync(0);
        var stored = (await sample.Stored.EditionAsync(book.Slug, 1))!;
        Assert.Equal((12.75m, 3, Mass.FromGrams(210m)), (stored.Price, stored.FreeCopies, stored.Weighed?.Mass));
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_printing_is_copied_forward_with_its_make_and_its_plan_and_without_its_copies()
    {
        var book = await sample.Stored.BookAsync("Soup on a Moving Boat", 2);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Copy forward to the next printing" }).ClickAsync();
        await visit.Page.WaitForURLAsync($"**/titles/{book.Slug}/3");
        await Expect(visit.Page.Locator("p.sentence").First).ToContainTextAsync("The third printing has");
        await Expect(visit.Field("Pages of inside")).ToHaveValueAsync(Format.Count(book.Edition.Parts[Inside].Part.Pages));

        var next = (await sample.Stored.EditionAsync(book.Slug, 3))!;
        Assert.Equal(book.Edition.Parts.Select(part => part.Part), next.Parts.Select(part => part.Part));
        Assert.Equal((null, null, 0L), (next.CopiesPrinted, next.Weighed, next.CopiesOnHand));
        var plan = await sample.Stored.ChosenPlanAsync(next.Id);
        Assert.Equal((await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan.Quantity, plan.Plan.Quantity);
        await Comes.ToWhatTheEngineSaysAsync(visit.Page, plan, Format);

        var undo = visit.Page.Locator(".undo button");
        await Expect(undo).ToHaveTextAsync("Undo copying the second printing forward");
        await undo.ClickAsync();
        await Expect(visit.Page.Locator("p.sentence").First).ToContainTextAsync("The second printing has");
        await visit.Page.WaitForURLAsync($"**/titles/{book.Slug}/2");
        Assert.Null(await sample.Stored.EditionAsync(book.Slug, 3));
        visit.WasQuiet();
    }

    private static JobSource With(JobSource plan, Func<Part, Part> change) => plan with
    {
        Edition = plan.Edition with
        {
            Parts = [.. plan.Edition.Parts.Select((part, place) => place == Inside ? part with { Part = change(part.Part) } : part)],
        },
    };

    // A paper that the plan's shop sells for this part and that makes another price.
    private static Stock AnotherPaper(JobSource plan) => plan.Stocks.First(stock =>
        stock.Id != plan.Edition.Parts[Inside].Part.StockId
        && PreparedJob.Prepare(With(plan, part => part with { StockId = stock.Id }).Build()) is { Succeeded: true } prepared
        && prepared.Value.Estimate(plan.Plan.Quantity) is { Succeeded: true } estimate
        && estimate.Value.Totals.LandedCost != Reckoned.At(plan).Totals.LandedCost);
}
