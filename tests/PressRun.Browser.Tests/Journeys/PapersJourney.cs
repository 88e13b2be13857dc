using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data.RunPlans;
using PressRun.Web.Shared.Wording;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class PapersJourney(Chromium chromium, SampleApp sample)
{
    private PressFormat Format => sample.Stored.Format;

    [Fact]
    public async Task Prices_of_another_day_are_shown_line_by_line_taken_and_taken_back()
    {
        var book = await sample.Stored.BookAsync("The Bilge Reader No. 1", 1);
        var before = await sample.Stored.ChosenPlanAsync(book.Edition.Id);
        var quantity = before.Plan.Quantity;
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path + "/run");
        var reprice = visit.Page.GetByRole(AriaRole.Region, new() { Name = "Prices of another day" });
        await reprice.GetByLabel("Work it out as of").FillAsync("2025-12-01");
        await reprice.GetByRole(AriaRole.Button, new() { Name = "Work it out" }).ClickAsync();
        await Expect(reprice.Locator("tfoot td").First).ToHaveTextAsync(Format.Money(Reckoned.At(before).Totals.LandedCost));
        var then = await reprice.Locator("tfoot td").Last.InnerTextAsync();
        Assert.Equal(before.Plan.PriceListId, (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan.PriceListId);

        await reprice.GetByRole(AriaRole.Button, new() { Name = "Go by these prices" }).ClickAsync();
        var undo = visit.Page.GetByRole(AriaRole.Button, new() { Name = "Undo prices of another day" });
        await Expect(undo).ToBeVisibleAsync();
        var after = await sample.Stored.ChosenPlanAsync(book.Edition.Id);
        Assert.Equal(new DateOnly(2025, 9, 1), after.PriceList.ValidFrom);
        Assert.Equal(then, Format.Money(Reckoned.At(after).Totals.LandedCost));
        await SaysAsync(visit.Page, Reckoned.At(after).Totals.LandedCost, quantity);

        await undo.ClickAsync();
        await SaysAsync(visit.Page, Reckoned.At(before).Totals.LandedCost, quantity);
        Assert.Equal(before.Plan.PriceListId, (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan.PriceListId);
        visit.WasQuiet();
    }

    [Fact]
    public async Task Papers_are_compared_one_is_used_in_one_act_that_can_be_taken_back_and_both_pages_show_the_engines_figures()
    {
        var book = await sample.Stored.BookAsync("The Bilge Reader No. 1", 2);
        var plan = await sample.Stored.ChosenPlanAsync(book.Edition.Id);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path + "/run");
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Compare papers" }).ClickAsync();
        await Expect(visit.Page.Locator("h1")).ToHaveTextAsync("Papers side by side");
        await visit.AnswersAsync();

        const string paper = "limewash-90";
        var name = plan.Stocks.Single(stock => stock.Id == paper).Name;
        var tried = plan with { Plan = plan.Plan with { Stocks = new Dictionary<Guid, string> { [book.Edition.Parts[1].Id] = paper } } };
        var row = visit.Page.Locator("table.papers tbody tr", new() { HasText = name });
        await Expect(row.Locator("td").First).ToHaveTextAsync(Unit(tried, plan.Plan.Quantity));
        await visit.EnterAsync("Copies, or several numbers", "150 200");
        await Expect(row.Locator("td").First).ToHaveTextAsync(Unit(tried, 150));
        await Expect(visit.Page.Locator("table.papers thead")).ToContainTextAsync("at 200");

        // On a phone the postage and the cost in hand stand within the page, and nothing of a paper waits at the side.
        await visit.Page.SetViewportSizeAsync(390, 844);
        await Expect(row.Locator("td[data-of=post]")).ToBeVisibleAsync();
        Assert.Equal(0, await visit.Page.Locator(".scroll-x", new() { Has = visit.Page.Locator("table.papers") }).EvaluateAsync<int>("place => place.scrollWidth - place.clientWidth"));
        await visit.Page.SetViewportSizeAsync(1280, 900);

        // The old plan stays; the new one is gone by, and the same papers stand side by side as seen from it.
        await row.GetByRole(AriaRole.Button, new() { Name = "Use this paper" }).ClickAsync();
        await Expect(row).ToHaveClassAsync("now");
        Assert.Equal((150, paper), Goes(await sample.Stored.ChosenPlanAsync(book.Edition.Id)));
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Undo going by" }).ClickAsync();
        await Expect(row).Not.ToHaveClassAsync("now");
        Assert.Equal(plan.Plan.Id, Assert.Single(await sample.Stored.PlansAsync(book.Edition.Id)).Plan.Id);

        await row.GetByRole(AriaRole.Button, new() { Name = "Use this paper" }).ClickAsync();
        await Expect(row).ToHaveClassAsync("now");
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Open its run" }).ClickAsync();
        await Expect(visit.Page.Locator(".sheet-tabs a.open")).ToHaveTextAsync($"{plan.Plan.Name}, on {name}");
        var chosen = await sample.Stored.ChosenPlanAsync(book.Edition.Id);
        Assert.Equal((150, paper), Goes(chosen));
        Assert.Equal(2, (await sample.Stored.PlansAsync(book.Edition.Id)).Count);
        await SaysAsync(visit.Page, Reckoned.At(chosen).Totals.LandedCost, 150);

        // Back from its run it can still be taken back.
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Compare papers" }).ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Undo going by" }).ClickAsync();
        await Expect(row).Not.ToHaveClassAsync("now");
        Assert.Equal(plan.Plan.Id, Assert.Single(await sample.Stored.PlansAsync(book.Edition.Id)).Plan.Id);
        visit.WasQuiet();

        (int, string) Goes(JobSource of) => (of.Plan.Quantity, of.Plan.Stocks[book.Edition.Parts[1].Id]);
    }

    [Fact]
    public async Task The_post_is_told_for_each_way_of_selling_with_the_services_that_refuse_the_piece()
    {
        var book = await sample.Stored.BookAsync("The Bilge Reader No. 1", 2);
        var plan = await sample.Stored.ChosenPlanAsync(book.Edition.Id);
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync(book.Path + "/post");
        foreach (var way in plan.Channels.Where(way => way is { MailerId: not null, PostageRegion: not null }))
        {
            var posted = Reckoned.At(plan).Postage.Single(choice => choice.ChannelId == way.Id);
            await visit.Field("Reaches the reader by").SelectOptionAsync(new SelectOptionValue { Label = way.Name });
            await Expect(visit.Page.Locator("p.sentence")).ToContainTextAsync(
                posted.Price is { } price ? $"for {Format.Sum(price)}, with " : "taken by no service");
            await Expect(visit.Page.Locator("p.sentence")).ToContainTextAsync(plan.Mailers.Single(mailer => mailer.Id == way.MailerId).Name);
        }

        var home = visit.Page.Locator("details.region", new() { HasText = "To: Home" });
        if (await home.GetAttributeAsync("open") is null)
        {
            await home.Locator("> summary").ClickAsync();
        }

        var refused = home.Locator("details.lines");
        await refused.Locator("summary").ClickAsync();
        await Expect(refused.Locator("tbody tr", new() { HasText = "Ternpost note" }).First).ToContainTextAsync("too ");
        visit.WasQuiet();
    }

    private string Unit(JobSource plan, int quantity) => Format.Money(Reckoned.At(plan, quantity).UnitCost);

    private async Task SaysAsync(IPage page, decimal landed, int quantity) =>
        await Expect(page.Locator("p.sentence").First).ToContainTextAsync($"cost {Format.Sum(landed)}, that is {Format.Money(landed / quantity)} each");
}
