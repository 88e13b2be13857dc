using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Web.Layout;

namespace PressRun.Browser.Tests.Pages;

public sealed class PageTests(Chromium chromium, SampleApp sample)
{
    [Theory]
    [MemberData(nameof(EveryPage.Routes), MemberType = typeof(EveryPage))]
    public async Task Every_page_keeps_to_this_host_and_is_accessible_on_a_table_and_on_a_phone_light_and_dark(string route)
    {
        var book = await sample.Stored.BookAsync(EveryPage.Title, EveryPage.Printing);
        var plan = (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan;
        await using var visit = await sample.VisitAsync(chromium);
        var response = await visit.OpenAsync(EveryPage.Address(route, book.Slug, plan));
        IsStrict(response, status: route == PageHeaders.NothingHere ? 404 : 200);
        await visit.Page.EvaluateAsync("() => document.querySelectorAll('details').forEach(details => { details.open = true; })");
        var faults = await Barriers.OfAsync(visit.Page);
        Assert.True(faults.Count == 0, string.Join(Environment.NewLine, faults));

        // A browser says in its console that the page was not there.
        if (route != PageHeaders.NothingHere)
        {
            visit.WasQuiet();
        }
    }

    [Fact]
    public async Task Every_word_of_the_masthead_leads_to_a_page_of_its_own()
    {
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("shelf");
        var words = visit.Page.GetByRole(AriaRole.Navigation, new() { Name = "Main" }).GetByRole(AriaRole.Link);
        var names = await words.AllInnerTextsAsync();
        Assert.True(names.Count > 3, "There is somewhere to go.");
        for (var place = 0; place < names.Count; place++)
        {
            await words.Nth(place).ClickAsync();
            await Assertions.Expect(words.Nth(place)).ToHaveAttributeAsync("aria-current", "page");
            await visit.AnswersAsync();
            await Assertions.Expect(visit.Page.Locator("h1")).Not.ToHaveTextAsync("Nothing lies here");
        }

        visit.WasQuiet();
    }

    [Fact]
    public async Task The_switch_lights_the_other_table_and_the_server_sends_it_so_from_then_on()
    {
        await using var visit = await sample.VisitAsync(chromium);
        await visit.OpenAsync("shelf");
        var day = await GroundAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Dark table" }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator("html[data-table=dark]")).ToHaveCountAsync(1);
        var night = await GroundAsync();
        Assert.NotEqual(day, night);

        var sent = await (await visit.OpenAsync("papers")).TextAsync();
        Assert.Contains("data-table=\"dark\"", sent, StringComparison.Ordinal);
        Assert.Equal(night, await GroundAsync());
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Light table" }).ClickAsync();
        Assert.Equal(day, await GroundAsync());
        visit.WasQuiet();

        Task<string> GroundAsync() => visit.Page.EvaluateAsync<string>("() => getComputedStyle(document.body).backgroundColor")!;
    }

    [Fact]
    public async Task The_page_that_describes_the_http_interface_keeps_to_this_host_too()
    {
        await using var visit = await sample.VisitAsync(chromium);
        var response = await visit.Page.GotoAsync("api", new() { WaitUntil = WaitUntilState.NetworkIdle });
        IsStrict(response!, others: "'none'");
        visit.WasQuiet();
    }

    private static void IsStrict(IResponse response, string others = "'self'", int status = 200)
    {
        Assert.Equal(status, response.Status);
        Assert.DoesNotContain("server", response.Headers.Keys);
        var policy = response.Headers["content-security-policy"].Split(';', StringSplitOptions.TrimEntries)
            .Select(directive => directive.Split(' ', 2)).ToDictionary(directive => directive[0], directive => directive.Length > 1 ? directive[1] : "");
        Assert.Equal(others, policy["default-src"]);
        Assert.StartsWith("'self'", policy["script-src"], StringComparison.Ordinal);
        Assert.DoesNotContain("'unsafe", policy["script-src"], StringComparison.Ordinal);
        Assert.Equal("'none'", policy["frame-ancestors"]);
        Assert.Equal("'self'", policy["connect-src"]);
        Assert.Equal("nosniff", response.Headers["x-content-type-options"]);
    }
}
