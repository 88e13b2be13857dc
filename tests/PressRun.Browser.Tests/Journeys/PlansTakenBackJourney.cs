using System.Text;
using System.Text.Json.Nodes;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Web.Shared.Wording;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class PlansTakenBackJourney(Chromium chromium, SampleApp sample)
{
    private const string Title = "Lantern Club Winter Broadside";

    private PressFormat Format => sample.Stored.Format;

    [Fact]
    public async Task A_plan_tried_or_taken_out_comes_and_goes_with_undo_and_a_number_that_stays_leaves_nothing_to_undo()
    {
        var book = await sample.Stored.BookAsync(Title, 2);
        var known = await sample.Stored.PlansAsync(book.Edition.Id);
        var (chosen, other) = (known.Single(plan => plan.Plan.Chosen).Plan, known.First(plan => !plan.Plan.Chosen).Plan);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path + "/run");
        var page = visit.Page;
        var (tabs, undo) = (page.GetByRole(AriaRole.Navigation, new() { Name = "Plans" }), page.Locator(".undo button"));

        await visit.EnterAsync("Copies of this run", $"0{Format.Count(chosen.Quantity)}");
        await Expect(visit.Field("Copies of this run")).ToHaveValueAsync(Format.Count(chosen.Quantity));
        await tabs.GetByRole(AriaRole.Button, new() { Name = "Try beside" }).ClickAsync();
        await Expect(undo).ToHaveTextAsync($"Undo trying {chosen.Name}, another way");
        await undo.ClickAsync();
        await Expect(tabs.Locator("a.open")).ToHaveTextAsync(chosen.Name);
        await Expect(tabs.Locator("a")).ToHaveCountAsync(known.Count);
        await Expect(undo).ToHaveCountAsync(0);
        Assert.Equal(known.Select(plan => plan.Plan.Id), (await sample.Stored.PlansAsync(book.Edition.Id)).Select(plan => plan.Plan.Id));

        await tabs.GetByRole(AriaRole.Link, new() { Name = other.Name, Exact = true }).ClickAsync();
        await Expect(tabs.Locator("a.open")).ToHaveTextAsync(other.Name);
        await page.GetByRole(AriaRole.Button, new() { Name = "Take this plan out" }).ClickAsync();
        await Expect(undo).ToHaveTextAsync($"Undo taking out {other.Name}");
        Assert.DoesNotContain(await sample.Stored.PlansAsync(book.Edition.Id), plan => plan.Plan.Id == other.Id);
        await undo.ClickAsync();
        await Expect(tabs.Locator("a.open")).ToHaveTextAsync(other.Name);
        var back = (await sample.Stored.PlansAsync(book.Edition.Id)).Select(plan => plan.Plan).ToList();
        Assert.Equal(known.Select(plan => plan.Plan.Id), back.Select(plan => plan.Id));
        Assert.Equal((other.Quantity, other.Name, other.PriceListId), back.Where(plan => plan.Id == other.Id).Select(plan => (plan.Quantity, plan.Name, plan.PriceListId)).Single());
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_run_goes_out_as_a_job_file_that_costs_the_same_at_the_command_line_and_comes_back_in_beside_its_plans()
    {
        var book = await sample.Stored.BookAsync(Title, 2);
        var known = await sample.Stored.PlansAsync(book.Edition.Id);
        var plan = known.Single(other => other.Plan.Chosen);
        var landed = Reckoned.At(plan).Totals.LandedCost;
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path + "/run");
        var page = visit.Page;
        var file = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { Name = "Job file", Exact = true }).ClickAsync());
        Assert.Equal($"{book.Slug}-2-{plan.Plan.Quantity}-copies.json", file.SuggestedFilename);
        var bytes = await File.ReadAllBytesAsync(await file.PathAsync(), TestContext.Current.CancellationToken);
        Assert.Equal(landed, CommandLine.LandedCost(await CommandLine.EstimateAsync(bytes)));
        Assert.NotNull(JsonNode.Parse(bytes)!["ladder"]);

        await page.GetByRole(AriaRole.Link, new() { Name = "Bring in a job file" }).ClickAsync();
        await visit.AnswersAsync();
        var wrong = JsonNode.Parse(bytes)!.AsObject();
        (wrong["quantity"], wrong["quantty"]) = (0, 5);
        await ChooseAsync(visit, Encoding.UTF8.GetBytes(wrong.ToJsonString()));
        await Expect(page.Locator("p.sentence")).ToContainTextAsync("2 things in it are not right. Nothing was stored.");
        await Expect(page.Locator("tbody tr th")).ToHaveTextAsync(["$.quantity", "$.quantty"], new() { UseInnerText = true });

        await ChooseAsync(visit, bytes);
        await Expect(page.Locator("p.sentence")).ToContainTextAsync($"cost {Format.Money(landed)} by the file, and as much here.");
        Assert.Equal(known.Count, (await sample.Stored.PlansAsync(book.Edition.Id)).Count);
        await page.GetByRole(AriaRole.Button, new() { Name = "Lay it beside the other plans" }).ClickAsync();
        await Expect(page.Locator(".sheet-tabs a.open")).ToContainTextAsync(", from a file");
        await Expect(page.Locator("p.sentence").First).ToContainTextAsync($"cost {Format.Sum(landed)}, that is");
        Assert.Equal(known.Count + 1, (await sample.Stored.PlansAsync(book.Edition.Id)).Count);
        visit.WasQuiet();
    }

    private static Task ChooseAsync(Visit visit, byte[] file) =>
        visit.ChooseFileAsync(new FilePayload { Name = "job.json", MimeType = "application/json", Buffer = file });

    [Fact]
    public async Task While_a_number_is_typed_the_sentence_has_its_cost_and_two_people_who_save_the_same_plan_see_both_versions()
    {
        var book = await sample.Stored.BookAsync(Title, 1);
        var plan = await sample.Stored.ChosenPlanAsync(book.Edition.Id);
        await using var mine = await sample.VisitAsync(chromium);
        await using var theirs = await sample.VisitAsync(chromium);
        await mine.OpenAsync(book.Path + "/run");
        await theirs.OpenAsync(book.Path + "/run");
        var sentence = mine.Page.Locator("p.sentence").First;

        await mine.TypeAsync("Copies of this run", "137");
        await Expect(sentence).ToContainTextAsync($"cost {Format.Sum(Reckoned.At(plan, 137).Totals.LandedCost)}, that is");
        Assert.Equal(plan.Plan.Quantity, (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan.Quantity);
        await mine.TypeAsync("Copies of this run", "some");
        await Expect(sentence.Locator(".unread")).ToContainTextAsync($"these are the figures of {Format.Count(plan.Plan.Quantity)} copies");

        await theirs.EnterAsync("Copies of this run", "90");
        await Expect(theirs.Page.Locator(".undo button")).ToContainTextAsync("to 90");
        await mine.EnterAsync("Copies of this run", "137");
        var versions = mine.Page.GetByRole(AriaRole.Alertdialog, new() { Name = "Two people changed this plan" });
        var copies = versions.Locator("tr", new() { Has = mine.Page.GetByRole(AriaRole.Rowheader, new() { Name = "Copies" }) });
        await Expect(copies.Locator("td")).ToHaveTextAsync(["137", "90"]);
        Assert.Equal(90, (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan.Quantity);

        await versions.GetByRole(AriaRole.Button, new() { Name = "Let mine stand" }).ClickAsync();
        await Expect(versions).ToHaveCountAsync(0);
        await Expect(sentence).ToContainTextAsync($"cost {Format.Sum(Reckoned.At(plan, 137).Totals.LandedCost)}, that is");
        Assert.Equal(137, (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan.Quantity);
        mine.WasQuiet();
        theirs.WasQuiet();
    }
}
