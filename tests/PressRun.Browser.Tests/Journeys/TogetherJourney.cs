using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data;
using PressRun.Data.Payouts;
using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Engine.Quoting;
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
    public async Task What_somebody_else_changed_in_a_library_is_only_written_over_by_who_looks_at_that_row_again()
    {
        await using var first = await sample.VisitAsync(chromium);
        await using var second = await sample.VisitAsync(chromium);
        await first.OpenAsync("papers");
        await second.OpenAsync("papers");

        await CaliperAsync(second, "Hemp kraft cover 280", "411");
        await Expect(second.Page.Locator(".grid-state")).ToHaveTextAsync("All is saved.");
        await CaliperAsync(first, "Hemp kraft cover 280", "409");
        await Expect(first.Page.Locator(".says")).ToContainTextAsync("Somebody else changed this in between");
        await CaliperAsync(first, "Night-blue cover 270", "352");
        await Expect(first.Page.Locator(".says")).ToContainTextAsync("Somebody else changed this in between");
        Assert.Equal(("411", "352"), (await GaugedAsync("Hemp kraft cover 280"), await GaugedAsync("Night-blue cover 270")));
        await CaliperAsync(first, "Hemp kraft cover 280", "410");
        await Expect(first.Page.Locator(".says")).ToHaveCountAsync(0);
        Assert.Equal("410", await GaugedAsync("Hemp kraft cover 280"));

        await CaliperAsync(second, "Hemp kraft cover 280", "412");
        await Expect(second.Page.Locator(".says")).ToContainTextAsync("Somebody else changed this in between");
        await second.Page.Keyboard.PressAsync("Control+z");
        await Expect(Row(second, "Hemp kraft cover 280")).ToContainTextAsync("411");
        await CaliperAsync(second, "Hemp kraft cover 280", "412");
        await Expect(second.Page.Locator(".says")).ToHaveCountAsync(0);
        Assert.Equal("412", await GaugedAsync("Hemp kraft cover 280"));

        await first.OpenAsync("post");
        await second.OpenAsync("post");
        await EnterAsync(first, "Board-backed envelope B4", "Weighs", "75");
        await Expect(first.Page.Locator("[data-grid='grid.post/mailers'] .grid-state")).ToHaveTextAsync("All is saved.");
        await Row(second, "Board-backed envelope B4").Locator("[data-col]").First.ClickAsync();
        await second.Page.Locator("[data-grid='grid.post/mailers']").GetByRole(AriaRole.Button, new() { Name = "Take out" }).ClickAsync();
        await Expect(second.Page.Locator(".says")).ToContainTextAsync("so it stays");
        await Row(second, "Board-backed envelope B4").Locator("[data-col]").First.ClickAsync();
        await second.Page.Keyboard.PressAsync("Control+z");
        await Expect(second.Page.Locator(".says")).ToContainTextAsync("Somebody else changed this in between");
        Assert.Equal("75", await TextAsync("post", "Board-backed envelope B4", "Weighs"));
        first.WasQuiet();
        second.WasQuiet();

        static ILocator Row(Visit visit, string name) => visit.Page.Locator("tr[data-row]", new() { HasText = name });

        static Task CaliperAsync(Visit visit, string paper, string micrometres) => EnterAsync(visit, paper, "Caliper", micrometres);

        static async Task EnterAsync(Visit visit, string row, string column, string typed)
        {
            var cell = Row(visit, row).Locator($"[data-label^='{column}']");
            await cell.ClickAsync();
            await visit.Page.Keyboard.TypeAsync(typed);
            await visit.Page.Keyboard.PressAsync("Enter");
            await Expect(cell).ToContainTextAsync(typed);
        }

        Task<string> GaugedAsync(string paper) => TextAsync("papers", paper, "Caliper");

        async Task<string> TextAsync(string page, string row, string column)
        {
            await using var third = await sample.VisitAsync(chromium);
            await third.OpenAsync(page);
            return (await Row(third, row).Locator($"[data-label^='{column}']").GetAttributeAsync("data-text"))!;
        }
    }

    [Fact]
    public async Task What_is_changed_while_two_versions_wait_is_ones_own_too()
    {
        var book = await sample.Stored.BookAsync("Postcards from the Dredger", 2);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path);
        var asked = visit.Page.GetByRole(AriaRole.Alertdialog, new() { Name = "Two people changed this printing" });
        Assert.IsType<SaveResult<EditionRecord>.Saved>(await Of<EditionStore>().SaveAsync(
            sample.Stored.Press.Id, (await sample.Stored.EditionAsync(book.Slug, 2))! with { Price = book.Edition.Price + 1m }));

        await visit.EnterAsync("Head", "4");
        await Expect(asked).ToBeVisibleAsync();
        await visit.EnterAsync("Given away", "7");
        await Expect(asked.GetByRole(AriaRole.Row, new() { Name = "Given away 7" })).ToBeVisibleAsync();
        await asked.GetByRole(AriaRole.Button, new() { Name = "Let mine stand" }).ClickAsync();
        await Expect(asked).ToHaveCountAsync(0);

        await Eventually.HoldsAsync(
            async () => await sample.Stored.EditionAsync(book.Slug, 2) is { Trim.Head.Millimetres: 4m, FreeCopies: 7 } now && now.Price == book.Edition.Price, "mine is stored, with both changes");
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_plan_that_somebody_else_changed_is_shown_as_it_is_now_before_it_is_taken_out()
    {
        var book = await sample.Stored.BookAsync("The Bilge Reader No. 3", 1);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path + "/run");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Try beside" }).ClickAsync();
        await Expect(visit.Page.Locator(".undo button")).ToContainTextAsync("Undo trying");
        var added = (await Of<PlanStore>().OfEditionAsync(sample.Stored.Press.Id, book.Edition.Id))[^1];
        Assert.IsType<SaveResult<PlanRecord>.Saved>(await Of<PlanStore>().SaveAsync(sample.Stored.Press.Id, added with { Name = "Named by somebody else" }));

        var takeOut = visit.Page.GetByRole(AriaRole.Button, new() { Name = "Take this plan out" });
        await takeOut.ClickAsync();
        await Expect(visit.Page.GetByText("Somebody saved this in between, so it stays.")).ToBeVisibleAsync();
        await Expect(visit.Field("Called")).ToHaveValueAsync("Named by somebody else");
        await Expect(visit.Page.Locator(".undo button")).ToHaveCountAsync(0);
        await takeOut.ClickAsync();
        await Eventually.HoldsAsync(
            async () => (await Of<PlanStore>().OfEditionAsync(sample.Stored.Press.Id, book.Edition.Id)).All(plan => plan.Id != added.Id), "the plan is taken out");
        visit.WasQuiet();
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

    [Fact]
    public async Task An_undo_after_going_by_another_plan_asks_before_it_writes_over_what_somebody_else_made_of_the_first()
    {
        var book = await sample.Stored.BookAsync("A Dockyard Alphabet of Cranes", 1);
        var first = (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan;
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path + "/run");
        var asked = visit.Page.GetByRole(AriaRole.Alertdialog, new() { Name = "Two people changed this plan" });

        await GoByAnotherAsync();
        await UndoAsync("Undo going by");
        await UndoAsync("Undo trying");
        await UndoAsync($"to {sample.Stored.Format.Count(first.Quantity + 1)}");
        await Expect(visit.Page.Locator(".undo button")).ToHaveCountAsync(0);
        await Expect(asked).ToHaveCountAsync(0);
        Assert.Equal((first.Quantity, first.Name, true), await StoredAsync());

        await GoByAnotherAsync();
        var changed = (await StoredPlanAsync()) with { Name = "Named by somebody else" };
        Assert.IsType<SaveResult<PlanRecord>.Saved>(await Of<PlanStore>().SaveAsync(sample.Stored.Press.Id, changed));
        await UndoAsync("Undo going by");
        await UndoAsync("Undo trying");
        await UndoAsync($"to {sample.Stored.Format.Count(first.Quantity + 1)}");
        await Expect(asked.GetByRole(AriaRole.Row, new() { Name = $"Called {first.Name} Named by somebody else" })).ToBeVisibleAsync();
        Assert.Equal((first.Quantity + 1, "Named by somebody else", true), await StoredAsync());
        await asked.GetByRole(AriaRole.Button, new() { Name = "Take theirs" }).ClickAsync();
        await Expect(asked).ToHaveCountAsync(0);
        await Expect(visit.Page.Locator(".undo button")).ToHaveCountAsync(0);
        Assert.Equal((first.Quantity + 1, "Named by somebody else", true), await StoredAsync());
        visit.WasQuiet();

        async Task GoByAnotherAsync()
        {
            await visit.EnterAsync("Copies of this run", sample.Stored.Format.Count(first.Quantity + 1));
            await Expect(visit.Page.Locator(".undo button")).ToContainTextAsync($"to {sample.Stored.Format.Count(first.Quantity + 1)}");
            await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Try beside" }).ClickAsync();
            await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Go by this plan" }).ClickAsync();
            await Expect(visit.Page.Locator(".undo button")).ToContainTextAsync("Undo going by");
        }

        async Task UndoAsync(string what)
        {
            var undo = visit.Page.Locator(".undo button", new() { HasText = what });
            await undo.ClickAsync();
            await Expect(undo).ToHaveCountAsync(0);
        }

        async Task<PlanRecord> StoredPlanAsync() => (await Of<PlanStore>().LoadAsync(sample.Stored.Press.Id, first.Id))!;

        async Task<(int Quantity, string Name, bool Chosen)> StoredAsync() => await StoredPlanAsync() is var plan ? (plan.Quantity, plan.Name, plan.Chosen) : default;
    }

    [Fact]
    public async Task Going_back_to_a_plan_leaves_alone_what_somebody_else_chose_since()
    {
        var book = await sample.Stored.BookAsync("A Dockyard Alphabet of Cranes", 1);
        var first = (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan;
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path + "/run");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Try beside" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Go by this plan" }).ClickAsync();
        await Expect(visit.Page.Locator(".undo button")).ToContainTextAsync("Undo going by");

        var third = Assert.IsType<SaveResult<PlanRecord>.Saved>(await Of<PlanStore>().DuplicateAsync(sample.Stored.Press.Id, first.Id, "Chosen by somebody else")).Now;
        await Of<PlanStore>().ChooseAsync(sample.Stored.Press.Id, third.Id);
        await visit.Page.Locator(".undo button").ClickAsync();
        await Expect(visit.Page.Locator(".undo")).ToContainTextAsync("This printing goes by another plan since.");
        Assert.Equal(third.Id, (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan.Id);
        await Of<PlanStore>().ChooseAsync(sample.Stored.Press.Id, first.Id);
        visit.WasQuiet();
    }

    [Fact]
    public async Task Who_gets_what_is_kept_and_taken_back_only_over_the_lines_that_were_seen_also_after_a_payment()
    {
        var book = await sample.Stored.BookAsync("The Ballast Atlas", 1);
        await ElsewhereAsync(0.50m);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path + "/payouts");
        var (page, asked) = (visit.Page, visit.Page.Locator(".conflict tbody tr"));

        await ElsewhereAsync(0.77m);
        await visit.Field("How much in line 1").FillAsync("0.40");
        await PayAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep this" }).ClickAsync();
        await Expect(asked).ToHaveCountAsync(2);
        Assert.Equal((0.25m, 0.77m), await StoredAsync());
        await page.GetByRole(AriaRole.Button, new() { Name = "Take theirs" }).ClickAsync();
        await Expect(visit.Field("How much in line 2")).ToHaveValueAsync("0.77");

        await visit.Field("How much in line 1").FillAsync("0.40");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep this" }).ClickAsync();
        await Expect(page.GetByText("Kept.")).ToBeVisibleAsync();
        await ElsewhereAsync(0.90m);
        await PayAsync();
        await Expect(visit.Field("How much in line 2")).ToHaveValueAsync("0.90");
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo the change of who gets what" }).ClickAsync();
        await Expect(asked).ToHaveCountAsync(1);
        Assert.Equal((0.25m, 0.90m), await StoredAsync());
        await page.GetByRole(AriaRole.Button, new() { Name = "Let mine stand" }).ClickAsync();
        await Expect(page.GetByText("Yours stand.")).ToBeVisibleAsync();
        Assert.Equal((0.25m, 0.77m), await StoredAsync());
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo letting yours stand" }).ClickAsync();
        await Expect(visit.Field("How much in line 2")).ToHaveValueAsync("0.90");
        Assert.Equal((0.25m, 0.90m), await StoredAsync());
        visit.WasQuiet();

        async Task<EditionClaims> ClaimsAsync() => (await Of<PayoutStore>().LoadAsync(sample.Stored.Press.Id, book.Edition.Id)).Claims;

        async Task ElsewhereAsync(decimal illustrator) => Assert.IsType<SaveResult<EditionClaims>.Saved>(await Of<PayoutStore>().SaveAsync(
            sample.Stored.Press.Id, (await ClaimsAsync()) with { Claims = [new Claim.PerCopy("Isa Quay", 0.25m), new Claim.PerCopy("Tam Wick", illustrator)] }));

        async Task<(decimal, decimal)> StoredAsync() => (await ClaimsAsync()).Claims.Cast<Claim.PerCopy>().ToList() is [var author, var illustrator] ? (author.Amount, illustrator.Amount) : default;

        async Task PayAsync()
        {
            await visit.Field("How much was paid").FillAsync("1");
            await page.GetByRole(AriaRole.Button, new() { Name = "Write it down" }).ClickAsync();
            await Expect(page.GetByText("Written down:")).ToBeVisibleAsync();
        }
    }

    [Fact]
    public async Task Once_it_was_told_that_somebody_else_changed_a_title_nothing_from_before_is_taken_back_over_theirs()
    {
        var book = await sample.Stored.BookAsync("A Dockyard Alphabet of Cranes", 1);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path);
        var undo = visit.Page.GetByRole(AriaRole.Button, new() { Name = "Undo sentence about the title" });

        await visit.EnterAsync("In one sentence", "Cranes from A on.");
        await Expect(undo).ToBeVisibleAsync();
        await ElsewhereAsync("Somebody and somebody else");
        await visit.EnterAsync("In one sentence", "Cranes from A to Z.");
        await Expect(visit.Page.GetByText("Somebody else changed this title in between")).ToBeVisibleAsync();
        await Expect(visit.Field("It is by")).ToHaveValueAsync("Somebody and somebody else");
        await Expect(undo).ToHaveCountAsync(0);

        await visit.EnterAsync("In one sentence", "Cranes from A to Z, drawn.");
        await undo.ClickAsync();
        await Expect(visit.Field("In one sentence")).ToHaveValueAsync("Cranes from A on.");
        await Expect(undo).ToHaveCountAsync(0);
        Assert.Equal(("Somebody and somebody else", "Cranes from A on."), await StoredAsync());

        await visit.EnterAsync("In one sentence", "Cranes, all of them.");
        await Expect(undo).ToBeVisibleAsync();
        await ElsewhereAsync("Somebody else");
        await undo.ClickAsync();
        await Expect(visit.Page.Locator(".undo")).ToContainTextAsync("Somebody else changed this title in between");
        await Expect(visit.Field("It is by")).ToHaveValueAsync("Somebody else");
        await Expect(undo).ToHaveCountAsync(0);
        Assert.Equal(("Somebody else", "Cranes, all of them."), await StoredAsync());
        visit.WasQuiet();

        async Task<TitleRecord> TitleAsync() => (await Of<TitleStore>().FindAsync(sample.Stored.Press.Id, book.Slug))!;

        async Task ElsewhereAsync(string by) =>
            Assert.IsType<SaveResult<TitleRecord>.Saved>(await Of<TitleStore>().SaveAsync(sample.Stored.Press.Id, (await TitleAsync()) with { By = by }));

        async Task<(string By, string About)> StoredAsync() => await TitleAsync() is var title ? (title.By, title.About) : default;
    }

    private T Of<T>()
        where T : notnull => sample.Stored.Services.GetRequiredService<T>();
}
