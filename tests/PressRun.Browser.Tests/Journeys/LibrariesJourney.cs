using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data.RunPlans;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class LibrariesJourney(Chromium chromium, SampleApp sample)
{
    private const string PasteScript =
        """
        text => {
          const data = new DataTransfer();
          data.setData('text/plain', text);
          document.activeElement.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
        }
        """;

    [Fact]
    public async Task A_block_of_cells_is_pasted_into_the_right_cells_mended_and_taken_back()
    {
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("papers");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Add a paper" }).ClickAsync();
        await visit.Page.EvaluateAsync(PasteScript, "Gull grey 90\t90 gsm\t\t1,3\tuncoated\nTar black 160\theavy\t\t\tcoated\n");

        await Expect(Row(visit, "Gull grey 90")).ToContainTextAsync("90 gsm");
        await Expect(Row(visit, "Gull grey 90")).ToContainTextAsync("1.3");
        var wrong = Row(visit, "Tar black 160").Locator("[aria-invalid=true]");
        await Expect(wrong).ToHaveTextAsync("heavy");
        await Expect(visit.Page.Locator(".says")).ToContainTextAsync("Write a paper weight");

        await visit.ReloadAsync();
        await Expect(wrong).ToHaveTextAsync("heavy");
        await wrong.ClickAsync();
        await visit.Page.Keyboard.TypeAsync("160");
        await visit.Page.Keyboard.PressAsync("Enter");
        await Expect(visit.Page.Locator(".says")).ToHaveCountAsync(0);
        await Expect(visit.Page.Locator(".grid-state")).ToHaveTextAsync("All is saved.");

        await visit.ReloadAsync();
        await Expect(Row(visit, "Tar black 160")).ToContainTextAsync("160 gsm");
        await Row(visit, "Tar black 160").Locator("[data-col]").First.ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Take out" }).ClickAsync();
        await Expect(Row(visit, "Tar black 160")).ToHaveCountAsync(0);
        await Row(visit, "Gull grey 90").Locator("[data-col]").First.ClickAsync();
        await visit.Page.Keyboard.PressAsync("Control+z");
        await Expect(Row(visit, "Tar black 160")).ToContainTextAsync("160 gsm");
        visit.WasQuiet();
    }

    [Fact]
    public async Task Past_postage_is_out_of_the_way_until_it_is_asked_for_and_an_edit_beside_it_leaves_it_alone()
    {
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("post");
        var rows = visit.Page.Locator("[data-grid='grid.post/services'] tr[data-row]:not(.blank)");
        var past = visit.Page.GetByRole(AriaRole.Checkbox, new() { Name = "show past prices" });
        await Expect(past).ToBeVisibleAsync();
        var current = await rows.CountAsync();
        await past.CheckAsync();
        await Expect(rows).Not.ToHaveCountAsync(current);
        var all = await rows.CountAsync();
        Assert.True(all > current, $"{all} rows with past prices, {current} without");
        await past.UncheckAsync();
        await Expect(rows).ToHaveCountAsync(current);

        var price = rows.Last.Locator("[data-label^='Price']");
        await price.ClickAsync();
        await visit.Page.Keyboard.TypeAsync("98.76");
        await visit.Page.Keyboard.PressAsync("Enter");
        await Expect(price).ToContainTextAsync("98.76");
        await Expect(visit.Page.Locator("[data-grid='grid.post/services'] .grid-state")).ToHaveTextAsync("All is saved.");

        await visit.ReloadAsync();
        await Expect(rows).ToHaveCountAsync(current);
        await Expect(price).ToContainTextAsync("98.76");
        await past.CheckAsync();
        await Expect(rows).ToHaveCountAsync(all);
        await visit.Page.Keyboard.PressAsync("Escape");
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_paper_in_use_stays_and_says_where()
    {
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("papers");
        await Row(visit, "Kelp green 90").Locator("[data-col]").First.ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Take out" }).ClickAsync();

        await Expect(visit.Page.Locator(".held")).ToContainTextAsync("stays, because it is in use");
        await Expect(Row(visit, "Kelp green 90")).ToHaveCountAsync(1);
        visit.WasQuiet();
    }

    [Fact]
    public async Task From_when_delivery_is_free_can_be_written_before_what_it_costs()
    {
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("shops");
        await visit.Page.GetByLabel("Add a shop").FillAsync("Quayside Copies");
        await visit.Page.GetByLabel("Add a shop").PressAsync("Enter");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Start an empty list" }).ClickAsync();
        var free = visit.Page.GetByLabel("Delivery free from goods of", new() { Exact = true });
        await free.FillAsync("150");
        await free.PressAsync("Enter");
        var field = visit.Page.Locator(".field", new() { Has = free });
        await Expect(field.Locator(".message")).ToContainTextAsync("First write what delivery costs");

        await visit.Page.GetByLabel("Each further kg", new() { Exact = true }).FillAsync("2.50");
        await visit.Page.GetByLabel("Each further kg", new() { Exact = true }).PressAsync("Enter");
        await Expect(free).ToHaveValueAsync("150.00");
        await Expect(field.Locator(".message")).ToHaveCountAsync(0);
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_link_from_one_file_page_to_another_opens_that_one_and_leaves_the_file_behind()
    {
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("shops/marrow-and-latch/import");
        await visit.ChooseFileAsync(new FilePayload
        {
            Name = "unknown.csv", MimeType = "text/csv", Buffer = "Papier;Format;ab 1\nSlate nobody has 90;SRA3;0,105\n"u8.ToArray(),
        });
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "bring it in as papers" }).ClickAsync();

        await Expect(visit.Page.Locator("h1")).ToHaveTextAsync("Bring in papers");
        await Expect(visit.Page.GetByText("Choose a CSV file")).ToBeVisibleAsync();
        await Expect(visit.Page.Locator("table.mapping")).ToHaveCountAsync(0);
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_price_list_in_somebody_elses_shape_comes_in_and_goes_back()
    {
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("shops/marrow-and-latch/import");
        await visit.ChooseFileAsync(new FilePayload
        {
            Name = "winter.csv",
            MimeType = "text/csv",
            Buffer = "Winterpreise;;;;\nGültig ab 1.3.2031;;;;\nPapier;Format;ab 1;ab 100;ab 500\nKelp green 90;SRA3;0,105;0,098;0,09\nHemp kraft 120;SRA3;0,14;0,13;0,12\nPebble silk 250;SRA3;0,31;0,3;0,29\n\nLieferung 6,90, frei ab 150,00\n"u8.ToArray(),
        });
        var bringIn = visit.Page.GetByRole(AriaRole.Button, new() { Name = "Bring in 3 paper prices" });
        await Expect(bringIn).ToBeEnabledAsync();
        await Expect(visit.Page.Locator(".import-preview")).ToContainTextAsync("0.098");
        await Expect(visit.Page.Locator(".import-passed")).ToContainTextAsync("Winterpreise");
        await visit.Page.GetByLabel("free from goods of 150.00 – take this").CheckAsync();
        var place = visit.Page.Locator(".import-place");
        await Expect(place).ToContainTextAsync("no plan changes");
        await Expect(place.GetByLabel("First day of the new list")).ToHaveValueAsync("1 Mar 2031");
        await place.GetByLabel("in place of what it says of the same things").CheckAsync();
        await Expect(place.Locator("li").First).ToContainTextAsync(", plan ");
        await place.GetByLabel("a new list, in force from").CheckAsync();
        await bringIn.ClickAsync();
        await Expect(visit.Page.Locator(".sentence").First).ToContainTextAsync("The new list from 1 March 2031 is stored with what the file holds and one term of its notes");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Take it back" }).ClickAsync();
        await Expect(bringIn).ToBeVisibleAsync();
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_run_is_held_against_the_same_run_bound_at_the_other_place_and_both_costs_are_the_engines()
    {
        var plans = await sample.Stored.PlansAsync((await sample.Stored.BookAsync("The Ballast Atlas", 1)).Edition.Id);
        var atBench = plans.Single(plan => Reckoned.Prepared(plan).BoundAtHome);
        var atShop = plans.Single(plan => plan.Plan.PriceListId == atBench.Plan.PriceListId && plan != atBench);
        var plan = atBench;
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync($"bench?run={plan.Plan.Id}");

        var costs = visit.Page.Locator("table.two-ways tr.total td");
        await Expect(costs.Nth(0)).ToHaveTextAsync(sample.Stored.Format.Money(Reckoned.At(atShop, plan.Plan.Quantity).Totals.LandedCost));
        await Expect(costs.Nth(1)).ToHaveTextAsync(sample.Stored.Format.Money(Reckoned.At(atBench, plan.Plan.Quantity).Totals.LandedCost));

        var step = atBench.Plan.BenchSteps!.First(name => name != "collate");
        await visit.Page.GetByLabel($"{step} at your own table, your way", new() { Exact = true }).UncheckAsync();
        var without = atBench with { Plan = atBench.Plan with { BenchSteps = [.. atBench.Plan.BenchSteps!.Where(name => name != step)] } };
        await Expect(costs.Nth(1)).ToHaveTextAsync(sample.Stored.Format.Money(Reckoned.At(without, plan.Plan.Quantity).Totals.LandedCost));
        visit.WasQuiet();
    }

    private static ILocator Row(Visit visit, string name) => visit.Page.Locator("tr[data-row]", new() { HasText = name });
}
