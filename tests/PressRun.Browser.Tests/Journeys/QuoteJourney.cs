using System.Globalization;
using System.Net;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Access;
using UglyToad.PdfPig;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class QuoteJourney(Chromium chromium, SampleApp sample, PeopleApp people)
{
    private const string Book = "A Pocket Book of Wrong Tides";

    [Fact]
    public async Task A_plan_is_frozen_sent_by_a_link_read_without_an_account_or_a_script_and_agreed_to()
    {
        var book = await sample.Stored.BookAsync(Book, 2);
        var more = (await sample.Stored.ChosenPlanAsync(book.Edition.Id)).Plan.Quantity + 1;
        await using var maker = await sample.VisitAsync(chromium);
        await maker.OpenAsync(book.Path + "/run");
        await maker.Page.GetByRole(AriaRole.Link, new() { Name = "Freeze as a quote" }).ClickAsync();
        await maker.AnswersAsync();
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Share it with someone" }).ClickAsync();
        await maker.Field("Name of part 2").FillAsync("Ada Reed");
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Freeze as a quote" }).DblClickAsync();
        await maker.Page.WaitForURLAsync("**/quotes/*");
        await maker.AnswersAsync();
        await Expect(maker.Field("Whom the link is for")).ToHaveValueAsync("Ada Reed");
        await maker.Page.GetByLabel("may try other quantities").CheckAsync();
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Make the link" }).ClickAsync();
        var address = await maker.Field("The link").InputValueAsync();
        await maker.Page.Context.GrantPermissionsAsync(["clipboard-read", "clipboard-write"]);
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Copy it" }).ClickAsync();
        await Expect(maker.Page.Locator("[data-copied]")).ToHaveTextAsync("Copied.");
        Assert.Equal(address, await maker.Page.EvaluateAsync<string>("() => navigator.clipboard.readText()"));

        await using var guest = await chromium.Browser.NewContextAsync(new() { JavaScriptEnabled = false, ViewportSize = new() { Width = 390, Height = 844 } });
        var page = await guest.NewPageAsync();
        var answer = (await page.GotoAsync(address))!;
        Assert.Equal(200, answer.Status);
        Assert.Equal("no-referrer", answer.Headers["referrer-policy"]);
        Assert.Contains("noindex", answer.Headers["x-robots-tag"], StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe-inline", answer.Headers["content-security-policy"], StringComparison.Ordinal);
        Assert.DoesNotContain("<script", await page.ContentAsync(), StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(" style=", await page.ContentAsync(), StringComparison.OrdinalIgnoreCase);

        await page.GetByLabel("Copies", new() { Exact = true }).First.FillAsync($"{more}");
        await page.GetByRole(AriaRole.Button, new() { Name = "Work it out" }).ClickAsync();
        await Expect(page.Locator("#another-sheet [role=status]")).ToContainTextAsync($"{sample.Stored.Format.Count(more)} copies would cost");
        await page.GotoAsync(address);
        await page.GetByLabel("Your remark").FillAsync("Could the cover be blue?\n<script>alert(1)</script>");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write the remark" }).ClickAsync();
        await Expect(page.Locator(".said")).ToContainTextAsync("Your remark");
        await Expect(page.Locator(".course .said-words")).ToContainTextAsync("<script>alert(1)</script>");
        await page.Locator("#agree .sign input[name=name]").First.FillAsync("Ada Reed");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Agree to") }).ClickAsync();
        await Expect(page.Locator(".said")).ToContainTextAsync("You have agreed");
        await Expect(page.Locator("#agree")).ToHaveCountAsync(0);

        await Expect(maker.Page.Locator("p.sentence").First).ToContainTextAsync("It is agreed");
        await Expect(maker.Page.Locator(".course")).ToContainTextAsync("Could the cover be blue?");
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "End this link, of Ada Reed" }).ClickAsync();
        // An ended link never opens again, so a first press only asks, and stands on what changes nothing.
        await Expect(maker.Page.GetByRole(AriaRole.Group, new() { Name = "End the link of Ada Reed" })).ToContainTextAsync("never opens again");
        await Expect(maker.Page.GetByRole(AriaRole.Button, new() { Name = "Keep it" })).ToBeFocusedAsync();
        Assert.Equal((int)HttpStatusCode.OK, (await page.GotoAsync(address))!.Status);
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "End it for good" }).ClickAsync();
        await Expect(maker.Page.Locator(".course")).ToContainTextAsync("ended the link of");
        await Expect(maker.Page.Locator(".link-list")).ToContainTextAsync("has agreed");
        await Expect(maker.Page.GetByRole(AriaRole.Button, new() { Name = "End this link, of Ada Reed" })).ToHaveCountAsync(0);
        Assert.Equal((int)HttpStatusCode.Gone, (await page.GotoAsync(address))!.Status);
        maker.WasQuiet();
    }

    [Fact]
    public async Task What_cannot_be_comes_back_with_what_was_typed_and_a_link_that_never_was_opens_nothing()
    {
        var (address, secret) = await SharedAsync("Bo Lind");
        await using var guest = await chromium.Browser.NewContextAsync(new() { JavaScriptEnabled = false, ViewportSize = new() { Width = 390, Height = 844 }, ColorScheme = ColorScheme.Dark });
        var page = await guest.NewPageAsync();
        await page.GotoAsync(address + "?copies=lots");
        await Expect(page.GetByLabel("Copies", new() { Exact = true }).First).ToHaveValueAsync("lots");
        await Expect(page.Locator("#try-says")).ToContainTextAsync("Write a number of copies from");

        using var http = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = sample.Address };
        var other = await http.PostAsync(new Uri($"q/{secret}/agree", UriKind.Relative), new FormUrlEncodedContent(new Dictionary<string, string> { ["name"] = "Bo <b>Lind", ["copies"] = "1", ["fingerprint"] = "zz" }));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, other.StatusCode);
        var words = await other.Content.ReadAsStringAsync();
        Assert.Contains("is not what this quote says", words, StringComparison.Ordinal);
        Assert.Contains("Bo &lt;b&gt;Lind", words, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await http.GetAsync(new Uri("q/" + new string('A', 32), UriKind.Relative))).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await http.PostAsync(new Uri($"q/{secret}/burn", UriKind.Relative), new FormUrlEncodedContent([]))).StatusCode);
        foreach (var broken in new[] { "name=%00&words=a", "name=" + new string('a', 3), string.Join('&', Enumerable.Range(0, 1100).Select(field => $"f{field}=1")) })
        {
            using var body = new StringContent(broken, System.Text.Encoding.ASCII, "application/x-www-form-urlencoded");
            Assert.InRange((int)(await http.PostAsync(new Uri($"q/{secret}/remark", UriKind.Relative), body)).StatusCode, 400, 422);
        }

        using var json = new StringContent("{}", System.Text.Encoding.UTF8, "application/json");
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, (await http.PostAsync(new Uri($"q/{secret}/remark", UriKind.Relative), json)).StatusCode);
        await http.PostAsync(new Uri($"q/{secret}/remark", UriKind.Relative), new FormUrlEncodedContent(new Dictionary<string, string> { ["name"] = "Pilchard Stairs", ["words"] = "Pay elsewhere." }));
        Assert.Contains("Pilchard Stairs (by the link for Bo Lind)", await http.GetStringAsync(new Uri("q/" + secret, UriKind.Relative)), StringComparison.Ordinal);
        Assert.DoesNotContain(secret, sample.Log, StringComparison.Ordinal);
    }

    // Letters at twice their size by the browser's setting (WCAG 2.2, 1.4.4): the page stays as wide as the phone, and its fields show what they hold.
    [Fact]
    public async Task With_large_letters_a_link_s_page_and_a_book_s_page_stay_as_wide_as_the_phone()
    {
        var (address, _) = await SharedAsync("Dee Large");
        await using var guest = await chromium.Browser.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 } });
        var page = await guest.NewPageAsync();
        var session = await guest.NewCDPSessionAsync(page);
        await session.SendAsync("Page.setFontSizes", new() { ["fontSizes"] = new { standard = 32, @fixed = 26 } });
        foreach (var one in new[] { address, new Uri(sample.Address, "titles/fog-manners/2").ToString() })
        {
            await page.GotoAsync(one);

            Assert.Equal("32px", await page.EvaluateAsync<string>("getComputedStyle(document.documentElement).fontSize"));
            Assert.Equal(0, await page.EvaluateAsync<int>("document.documentElement.scrollWidth - innerWidth"));
            Assert.Empty(await page.EvaluateAsync<string[]>(
                "() => [...document.querySelectorAll(':is(.numeric, .try-form) input')].filter(field => field.checkVisibility() && field.scrollWidth > field.clientWidth + 1).map(field => field.outerHTML)"));
        }
    }

    // The page itself moves under a thumb: no box within it does.
    [Fact]
    public async Task On_a_phone_the_table_of_the_chart_stands_in_the_page_whole()
    {
        var (address, _) = await SharedAsync("Eve Whole");
        await using var guest = await chromium.Browser.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 } });
        var page = await guest.NewPageAsync();
        await page.GotoAsync(address);
        await page.GetByText("As a table").ClickAsync();

        Assert.Equal(0, await page.Locator(".staircase .scroll").EvaluateAsync<int>("box => box.scrollHeight - box.clientHeight"));
    }

    [Theory]
    [InlineData(390, ColorScheme.Light)]
    [InlineData(1280, ColorScheme.Dark)]
    public async Task The_page_of_a_link_is_open_to_everyone(int width, ColorScheme scheme)
    {
        var (address, _) = await SharedAsync($"Cy {width}");
        await using var guest = await chromium.Browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = 844 }, ColorScheme = scheme });
        var page = await guest.NewPageAsync();
        var asked = new List<string>();
        page.Request += (_, request) => asked.Add(request.Url);
        await page.GotoAsync(address + "?copies=60");
        foreach (var more in await page.Locator("summary").AllAsync())
        {
            await more.ClickAsync();
        }

        var found = await page.RunAxe();
        var low = await page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('a, button, input:not([type=hidden]), textarea, summary')].filter(one => one.checkVisibility() && one.getBoundingClientRect().height < 44).map(one => one.outerHTML)");
        using var paper = PdfDocument.Open(await page.PdfAsync(new() { Format = "A4", PreferCSSPageSize = true }));

        // WCAG 2.2, 2.5.5 (level AAA): targets of 44 by 44 CSS pixels.
        Assert.Empty(low);
        Assert.InRange(paper.NumberOfPages, 1, 2);
        var words = string.Join(' ', paper.GetPages().SelectMany(one => one.GetWords()).Select(word => word.Text));
        Assert.Contains("I agree to", words, StringComparison.Ordinal);
        Assert.DoesNotContain("Another quantity", words, StringComparison.Ordinal);
        Assert.Empty(found.Violations.Select(violation => $"{violation.Id}: {string.Join(" ", violation.Nodes.Select(node => node.Html))}"));
        Assert.Equal(0, await page.EvaluateAsync<int>("document.documentElement.scrollWidth - innerWidth"));
        Assert.All(asked, url => Assert.StartsWith(sample.Address.ToString(), url, StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_a_reader_says_shows_on_open_pages_counts_beside_the_word_for_quotes_until_it_is_in_sight_and_takes_no_typed_word()
    {
        await using var maker = await sample.VisitAsync(chromium);
        await maker.Page.AddInitScriptAsync("Object.defineProperty(document, 'visibilityState', { get: () => window.nearby ? 'visible' : 'hidden' });");
        var number = await FreezeAsync(maker);
        var secret = await sample.Stored.ShareAsync(number, "Dee Marl");
        await sample.Stored.ReadAllQuotesAsync();
        await maker.Field("A remark to everyone who has it").PressSequentiallyAsync("Half a sentence");
        await maker.Field("Whom the link is for").FillAsync("Someone else");
        await using var list = await sample.VisitAsync(chromium);
        await list.OpenAsync("quotes");
        await Expect(list.Page.Locator(".masthead .news")).ToHaveCountAsync(0);

        using var http = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = sample.Address };
        foreach (var (words, count) in new[] { ("Is the cover laminated?", "1, 1 new thing"), ("And the spine?", "2, 2 new things") })
        {
            using var said = await http.PostAsync(new Uri($"q/{secret}/remark", UriKind.Relative), new FormUrlEncodedContent(new Dictionary<string, string> { ["name"] = "Dee Marl", ["words"] = words }));
            Assert.Equal(HttpStatusCode.SeeOther, said.StatusCode);
            await Expect(maker.Page.Locator(".course")).ToContainTextAsync(words);
            await Expect(maker.Page.Locator(".masthead .news")).ToHaveTextAsync(count);
            await Expect(list.Page.Locator(".masthead .news")).ToHaveTextAsync(count);
            await Expect(list.Page.Locator($"tr:has(a[href='quotes/{number}'])")).ToContainTextAsync(count[3..]);
        }

        await Expect(maker.Field("A remark to everyone who has it")).ToHaveValueAsync("Half a sentence");
        await Expect(maker.Field("Whom the link is for")).ToHaveValueAsync("Someone else");
        await maker.Page.EvaluateAsync("() => { window.nearby = true; document.dispatchEvent(new Event('visibilitychange')); }");
        await Expect(maker.Page.Locator(".masthead .news")).ToHaveCountAsync(0);
        await Expect(list.Page.Locator(".masthead .news")).ToHaveCountAsync(0);
        await Expect(list.Page.Locator($"tr:has(a[href='quotes/{number}'])")).Not.ToContainTextAsync("new thing");
        maker.WasQuiet();
        list.WasQuiet();
    }

    [Fact]
    public async Task Whoever_may_only_read_sees_a_quote_and_leaves_what_is_new_to_its_maker()
    {
        await people.ReadyAsync();
        var press = people.Stored.Press.Id;
        await people.Stored.ReadAllQuotesAsync();
        var secret = await people.Stored.ShareAsync(3, "Fenn Low");
        using var http = new HttpClient(new HttpClientHandler { AllowAutoRedirect = false }) { BaseAddress = people.App.Address };
        using var said = await http.PostAsync(new Uri($"q/{secret}/remark", UriKind.Relative), new FormUrlEncodedContent(new Dictionary<string, string> { ["name"] = "Fenn Low", ["words"] = "Is it thick?" }));

        await using var reader = await people.SignInAsync(chromium, await people.PersonAsync("Quill", press, PressRole.Reader));
        await reader.OpenAsync("quotes/3");

        await Expect(reader.Page.Locator(".course")).ToContainTextAsync("Is it thick?");
        await Expect(reader.Page.Locator("main form, main button, main .edits")).ToHaveCountAsync(0);
        await reader.OpenAsync("quotes");
        await Expect(reader.Page.Locator(".masthead .news")).ToHaveTextAsync("1, 1 new thing");
        reader.WasQuiet();
    }

    [Fact]
    public async Task Whoever_replaces_a_quote_that_is_agreed_to_meanwhile_is_told_and_chooses_again()
    {
        await using var maker = await sample.VisitAsync(chromium);
        var number = await FreezeAsync(maker);
        var secret = await sample.Stored.ShareAsync(number, "Gil Ray");
        var book = await sample.Stored.BookAsync(Book, 2);
        await maker.OpenAsync($"{book.Path}/run/quote?replaces={number}");
        var freeze = maker.Page.GetByRole(AriaRole.Button, new() { Name = "Freeze as a quote" });
        await Expect(freeze).ToBeEnabledAsync();
        await using var guest = await chromium.Browser.NewContextAsync(new() { JavaScriptEnabled = false });
        var page = await guest.NewPageAsync();
        await page.GotoAsync(new Uri(sample.Address, "q/" + secret).AbsoluteUri);
        await page.Locator("#agree .sign input[name=name]").First.FillAsync("Gil Ray");
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Agree to") }).ClickAsync();
        await Expect(page.Locator(".said")).ToContainTextAsync("You have agreed");

        await freeze.ClickAsync();
        await Expect(maker.Page.Locator("main [role=alert]")).ToContainTextAsync("was answered meanwhile");
        await Expect(maker.Page.Locator("main .course")).ToContainTextAsync("Gil Ray agreed to");
        await freeze.ClickAsync();
        await maker.Page.WaitForURLAsync("**/quotes/*");
        await maker.AnswersAsync();
        await maker.OpenAsync($"quotes/{number}");
        await Expect(maker.Page.Locator(".course")).ToContainTextAsync("took its place");
        maker.WasQuiet();
    }

    private async Task<int> FreezeAsync(Visit maker)
    {
        var book = await sample.Stored.BookAsync(Book, 2);
        await maker.OpenAsync(book.Path + "/run/quote");
        await maker.Page.GetByRole(AriaRole.Button, new() { Name = "Freeze as a quote" }).ClickAsync();
        await maker.Page.WaitForURLAsync("**/quotes/*");
        await maker.AnswersAsync();
        return int.Parse(new Uri(maker.Page.Url).Segments[^1], CultureInfo.InvariantCulture);
    }

    private async Task<(string Address, string Secret)> SharedAsync(string name)
    {
        var secret = await sample.Stored.ShareAsync(3, name);
        return (new Uri(sample.Address, "q/" + secret).AbsoluteUri, secret);
    }
}
