using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data.RunPlans;
using PressRun.Engine.Ladder;
using PressRun.Web.Shared.Wording;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class RunPlanJourney(Chromium chromium, SampleApp sample)
{
    private PressFormat Format => sample.Stored.Format;

    [Fact]
    public async Task The_quantity_is_typed_dragged_and_moved_by_arrows_and_the_sentence_and_its_lines_say_what_the_engine_says()
    {
        var book = await sample.Stored.BookAsync("The Bilge Reader No. 3", 1);
        var plan = await sample.Stored.ChosenPlanAsync(book.Edition.Id);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path + "/run");
        var page = visit.Page;
        var marker = page.Locator("svg.wide .marker");
        await SaysAsync(page, plan, plan.Plan.Quantity);

        await visit.EnterAsync("Copies of this run", "120");
        await SaysAsync(page, plan, 120);
        await Expect(marker).ToHaveAttributeAsync("aria-valuenow", "120");
        await AddsUpAsync(page, plan, 120);

        await marker.FocusAsync();
        // What can be undone is said when a move is stored; a key pressed before that is coalesced with the one under way. Where moves follow at once, they are undone as one.
        var undo = page.Locator(".undo button");
        foreach (var (key, moved) in new[] { ("ArrowRight", "121"), ("ArrowUp", "122"), ("ArrowLeft", "121") })
        {
            await marker.PressAsync(key);
            await Expect(undo).ToHaveTextAsync(new Regex($"^Undo 12[012] copies to {moved}$"));
        }

        await SaysAsync(page, plan, 121);

        var drawing = (await page.Locator("svg.wide").BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(drawing.X + (drawing.Width / 3), drawing.Y + (drawing.Height / 2));
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(drawing.X + (drawing.Width * 2 / 3), drawing.Y + (drawing.Height / 2), new() { Steps = 8 });
        await page.Mouse.UpAsync();
        // The marker also follows the pointer on its way: only what can be undone says where it was put down.
        await Expect(undo).ToHaveTextAsync(new Regex(@"^Undo 12[01] copies to (?!12[012]$)\d+$"));
        var dragged = int.Parse((await undo.InnerTextAsync()).Split(' ')[^1], CultureInfo.InvariantCulture);
        Assert.NotInRange(dragged, 119, 123);
        await Expect(marker).ToHaveAttributeAsync("aria-valuenow", $"{dragged}");
        await SaysAsync(page, plan, dragged);
        await Expect(visit.Field("Copies of this run")).ToHaveValueAsync(Format.Count(dragged));
        Assert.Equal(dragged, (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan.Quantity);
        await AddsUpAsync(page, plan, dragged);
        visit.WasQuiet();
    }

    [Fact]
    public async Task Where_more_copies_cost_less_the_margin_says_how_many_and_one_press_prints_them()
    {
        var book = await sample.Stored.BookAsync("Postcards from the Dredger", 2);
        var (plan, curve, band) = (await sample.Stored.PlansAsync(book.Edition.Id)).Select(Banded).First(found => found.Band.Better > 0);
        var saves = curve.At(band.To) - curve.At(band.Better);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync($"{book.Path}/run?plan={plan.Plan.Id}");
        await visit.EnterAsync("Copies of this run", Format.Count(band.To));
        await SaysAsync(visit.Page, plan, band.To);

        var note = visit.Page.Locator(".margin-notes li", new() { HasText = $"{Format.Count(band.Better - band.To)} {(band.Better - band.To == 1 ? "more copy costs" : "more copies cost")} {Format.Money(saves)} less." });
        await Expect(note).ToContainTextAsync(Format.Count(band.Better - band.To));
        await note.GetByRole(AriaRole.Button, new() { Name = $"Print {Format.Count(band.Better)}" }).ClickAsync();
        await SaysAsync(visit.Page, plan, band.Better);
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_plan_is_copied_changed_and_laid_beside_the_first_and_the_difference_is_the_engines()
    {
        var book = await sample.Stored.BookAsync("A Pocket Book of Wrong Tides", 3);
        var known = await sample.Stored.PlansAsync(book.Edition.Id);
        var plan = known.Single(other => other.Plan.Chosen);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path + "/run");
        var page = visit.Page;
        var tabs = page.GetByRole(AriaRole.Navigation, new() { Name = "Plans" });
        await tabs.GetByRole(AriaRole.Button, new() { Name = "Try beside" }).ClickAsync();
        await Expect(tabs.Locator("a.open")).ToHaveTextAsync($"{plan.Plan.Name}, another way");
        await page.WaitForURLAsync("**/run?plan=*");

        var more = plan.Plan.Quantity + 40;
        await visit.EnterAsync("Copies of this run", Format.Count(more));
        await SaysAsync(page, plan, more);
        var row = page.Locator("table.beside tr", new() { Has = page.GetByRole(AriaRole.Rowheader, new() { Name = "Landed cost" }) });
        foreach (var other in known)
        {
            await visit.Field("Compare with").SelectOptionAsync(new SelectOptionValue { Label = other.Plan.Name });
            await Expect(row.Locator("td").Nth(0)).ToHaveTextAsync(Format.Money(Reckoned.At(plan, more).Totals.LandedCost));
            await Expect(row.Locator("td").Nth(1)).ToHaveTextAsync(Format.Money(Reckoned.At(other).Totals.LandedCost));
        }

        var plans = await sample.Stored.PlansAsync(book.Edition.Id);
        Assert.Equal(known.Count + 1, plans.Count);
        Assert.Equal((plan.Plan.Quantity, more), (plans.Single(other => other.Plan.Chosen).Plan.Quantity, plans[^1].Plan.Quantity));
        visit.WasQuiet();
    }

    private async Task SaysAsync(IPage page, JobSource plan, int quantity)
    {
        var estimate = Reckoned.At(plan, quantity);
        var sentence = page.Locator("p.sentence").First;
        await Expect(sentence).ToContainTextAsync($"cost {Format.Sum(estimate.Totals.LandedCost)}, that is {Format.Money(estimate.UnitCost)} each");
        await Expect(page.GetByLabel("Copies of this run", new() { Exact = true })).ToHaveValueAsync(Format.Count(quantity));
    }

    private async Task AddsUpAsync(IPage page, JobSource plan, int quantity)
    {
        var lines = page.Locator("details.lines");
        await lines.EvaluateAsync("details => { details.open = true; }");
        var landed = Reckoned.At(plan, quantity).Totals.LandedCost;
        await Expect(lines.Locator("tfoot td").Last).ToHaveTextAsync(Format.Money(landed));
        var amounts = await lines.Locator("tbody td:last-child, tfoot td.own").AllInnerTextsAsync();
        Assert.True(amounts.Count > 1, "A run costs more than one thing.");
        Assert.Equal(landed, amounts.Sum(amount => Typed.Number(amount, Format.Culture)!.Value));
    }

    private static (JobSource Plan, CostCurve Curve, DearBand Band) Banded(JobSource plan)
    {
        var range = plan.Plan.Ladder!.Value;
        var curve = Reckoned.Prepared(plan).Curve(range.From, range.Last).Value;
        return (plan, curve, curve.DearBands().FirstOrDefault(band => curve.At(band.To) > curve.At(band.Better)));
    }
}
