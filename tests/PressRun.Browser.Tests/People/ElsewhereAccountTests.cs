using System.Buffers.Text;
using System.Net;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data.People;

namespace PressRun.Browser.Tests.People;

/// <summary>What becomes of accounts whose people come from elsewhere, or by passkeys.</summary>
[Collection(typeof(Elsewhere))]
public sealed class ElsewhereAccountTests(ServedElsewhere elsewhere, Chromium chromium)
{
    // OpenID Connect Core 1.0, section 2: a subject has at most 255 ASCII characters.
    [Fact]
    public async Task What_no_account_can_be_known_by_is_refused_in_a_sentence()
    {
        foreach (var (subject, email, said) in new[]
        {
            ("a\0b", "nul@example.org", "NotTold"), (new string('s', 256), "long@example.org", "NotTold"), ("s-\u00fc", "umlaut@example.org", "NotTold"),
            ("s-nul", "a\0b@example.org", "Unknown"), (new string('s', 255), "longest@example.org", "Unknown"),
        })
        {
            elsewhere.Server.Person = new(subject, email, true, new string('n', 40_000));
            using var person = new HttpPerson(elsewhere.App.Address);
            using var back = await elsewhere.ComeAsync(person, "/account");
            Assert.Equal(HttpStatusCode.Redirect, back.StatusCode);
            Assert.Contains("sign-in?said=" + said, back.Headers.Location!.ToString(), StringComparison.Ordinal);

            // RFC 6265, section 6.1: browsers keep cookies of 4,096 bytes, and need keep none that are longer.
            Assert.All(back.Headers.TryGetValues("Set-Cookie", out var cookies) ? cookies : [], cookie => Assert.InRange(cookie.Length, 1, 4096));
        }
    }

    [Fact]
    public async Task Of_those_who_join_with_one_address_at_once_one_has_an_account_and_the_others_are_told()
    {
        var invitations = new List<string>();
        for (var count = 0; count < 8; count++)
        {
            invitations.Add(await elsewhere.InviteAsync("Double"));
        }

        var made = await Task.WhenAll(invitations.Select(async invitation =>
        {
            await using var scope = elsewhere.Stored.Services.CreateAsyncScope();
            return (await scope.ServiceProvider.GetRequiredService<Accounts>()
                .JoinAsync(new NewAccount("Double", "double@example.org", null, new AccountLink(elsewhere.Server.Address, "s-double")), invitation)).Account;
        }));

        Assert.Single(made, one => one.User is not null);
        Assert.All(made.Where(one => one.User is null), one => Assert.Contains("has an account here", one.Problem, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("signout-oidc")]
    [InlineData("signout-callback-oidc")]
    public async Task Nobody_is_signed_out_by_an_address_that_is_opened(string path)
    {
        var email = await elsewhere.PersonAsync("Staying" + path.Length);
        using var person = await HttpPerson.SignedInAsync(elsewhere.App.Address, email);
        using var answer = await person.AskAsync("GET", path);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains(email, await ServedElsewhere.ReadAsync(person, "account"), StringComparison.Ordinal);
    }

    // W3C, Fetch Metadata Request Headers: what a browser says of where a step comes from; "none" is a link in a mail, too.
    [Theory]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    [InlineData("Sec-Fetch-Site", "none")]
    [InlineData("Referer", "http://elsewhere.example/sign-in")]
    [InlineData("Accept", "text/html")]
    public async Task A_link_that_somebody_opens_leads_to_the_page_to_sign_in_and_not_on_to_the_other_server(string header, string from)
    {
        var email = await elsewhere.PersonAsync("Opening" + (header + from).Length);
        using var person = await HttpPerson.SignedInAsync(elsewhere.App.Address, email);
        using var answer = await person.ComeAsync("sign-in/elsewhere?to=%2Faccount", header, from);

        Assert.Equal((HttpStatusCode.Redirect, "/sign-in?to=%2Faccount"), (answer.StatusCode, answer.Headers.Location?.ToString()));
        Assert.Contains(email, await ServedElsewhere.ReadAsync(person, "account"), StringComparison.Ordinal);
        // Over plain http a browser says of which page its step comes, and no more.
        using var own = await person.ComeAsync("sign-in/elsewhere", "Referer", elsewhere.App.Address.ToString());
        Assert.StartsWith(elsewhere.Server.Address + "/authorize?", own.Headers.Location?.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_browser_is_led_there_and_back_by_the_button_and_by_another_sites_link_only_to_the_button()
    {
        var email = await elsewhere.PersonAsync("Clicking");
        await elsewhere.LinkAsync(email, "s-clicking");
        elsewhere.Server.Person = new("s-clicking", email, true, "Clicking");
        await using var browser = await chromium.Browser.NewContextAsync();
        var page = await browser.NewPageAsync();
        await page.RouteAsync("http://elsewhere.example/", route => route.FulfillAsync(new() { ContentType = "text/html", Body = $"<a href='{elsewhere.App.Address}sign-in/elsewhere?to=%2Faccount'>A prize</a>" }));
        await page.GotoAsync("http://elsewhere.example/");
        await page.GetByText("A prize").ClickAsync();
        await page.WaitForURLAsync("**/sign-in?to=%2Faccount");

        await page.GetByRole(AriaRole.Link, new() { Name = "Sign in with The Guild" }).ClickAsync();
        await page.WaitForURLAsync("**/account");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync(email);
    }

    [Fact]
    public async Task The_last_way_into_an_account_is_not_taken_out_and_taking_out_another_ends_the_other_sign_ins()
    {
        elsewhere.Server.Person = new("s-last", "last@example.org", true, "Last");
        using var person = new HttpPerson(elsewhere.App.Address);
        var link = "join/" + await elsewhere.InviteAsync("Last");
        using var back = await elsewhere.ComeAsync(person, "/" + link);
        using var made = await person.FillAsync(link, []);
        var (first, second) = (await PasskeyAsync("last@example.org"), await PasskeyAsync("last@example.org"));
        using var other = new HttpPerson(elsewhere.App.Address);
        using var came = await elsewhere.ComeAsync(other, "/account");

        Assert.Equal(HttpStatusCode.Redirect, await SendAsync("account/passkey/remove", new() { ["passkey"] = first }));
        Assert.Equal(HttpStatusCode.Redirect, await SendAsync("account/unlink", []));
        using var ended = await other.AskAsync("GET", "account");
        Assert.Equal(HttpStatusCode.Redirect, ended.StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest, await SendAsync("account/passkey/remove", new() { ["passkey"] = second }));
        Assert.Contains("It is your only way in", await ServedElsewhere.ReadAsync(person, "account"), StringComparison.Ordinal);

        async Task<HttpStatusCode> SendAsync(string to, Dictionary<string, string> fields)
        {
            using var answer = await person.SendAsync("account", to, fields);
            return answer.StatusCode;
        }
    }

    [Fact]
    public async Task Unlinking_ends_all_other_sign_ins()
    {
        var email = await elsewhere.PersonAsync("Parting");
        await elsewhere.LinkAsync(email, "s-parting");
        using var here = await HttpPerson.SignedInAsync(elsewhere.App.Address, email);
        elsewhere.Server.Person = new("s-parting", email, true, "Parting");
        using var there = new HttpPerson(elsewhere.App.Address);
        using var came = await elsewhere.ComeAsync(there, "/account");
        Assert.Contains(email, await ServedElsewhere.ReadAsync(there, "account"), StringComparison.Ordinal);
        await using var scope = elsewhere.Stored.Services.CreateAsyncScope();
        var looked = await scope.ServiceProvider.GetRequiredService<Accounts>().FindByLinkAsync(new AccountLink(elsewhere.Server.Address, "s-parting"));
        using var off = await here.SendAsync("account", "account/unlink", []);

        Assert.Null(await elsewhere.Stored.Services.GetRequiredService<SessionStore>().BeginAsync(looked!, "Just coming", TestContext.Current.CancellationToken));
        using var ended = await there.AskAsync("GET", "account");
        Assert.Equal(HttpStatusCode.Redirect, ended.StatusCode);
        Assert.Contains(email, await ServedElsewhere.ReadAsync(here, "account"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_passkey_of_somebody_else_is_not_added_and_nobodys_account_is_harmed()
    {
        var id = Guid.NewGuid().ToByteArray();
        var (first, second) = (await elsewhere.PersonAsync("Holder"), await elsewhere.PersonAsync("Copier"));
        Assert.Null(await AddAsync(first, id));
        Assert.NotNull(await AddAsync(second, id));
        Assert.Null(await AddAsync(second, Guid.NewGuid().ToByteArray()));
        var once = Guid.NewGuid().ToByteArray();
        Assert.Single(await Task.WhenAll(AddAsync(first, once), AddAsync(second, once)), problem => problem is null);
    }

    private async Task<string> PasskeyAsync(string email)
    {
        var id = Guid.NewGuid().ToByteArray();
        Assert.Null(await AddAsync(email, id));
        return Base64Url.EncodeToString(id);
    }

    private async Task<string?> AddAsync(string email, byte[] id)
    {
        await using var scope = elsewhere.Stored.Services.CreateAsyncScope();
        var user = await scope.ServiceProvider.GetRequiredService<Accounts>().FindAsync(elsewhere.Stored.UserId(email));
        return await scope.ServiceProvider.GetRequiredService<AccountPasskeys>()
            .AddAsync(user!, new UserPasskeyInfo(id, [1], DateTimeOffset.UnixEpoch, 0, null, true, false, false, [], []) { Name = "Phone" });
    }
}
