using System.Net;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Access;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

/// <summary>Passkeys, at the name of this machine: browsers make none for an address that is a number.</summary>
public sealed class PasskeyJourney(Chromium chromium, PeopleApp people)
{
    [Fact]
    public async Task Somebody_adds_a_passkey_signs_in_by_it_ends_that_sign_in_and_takes_the_passkey_out()
    {
        var (visit, device, email) = await WithPasskeyAsync("Keyed", "Blue phone");
        await using var closing = visit;
        var page = visit.Page;
        using var elsewhere = await HttpPerson.SignedInAsync(people.App.Address, email);

        // Still signed in: the sign-in that is there ends, so that two are left.
        await page.GotoAsync("sign-in");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in with a passkey" }).ClickAsync();
        await visit.AnswersAsync();
        await Expect(page.Locator(".masthead .account")).ToHaveTextAsync("Keyed");

        await page.GotoAsync("account");
        await Expect(page.Locator("main .sentence")).ToContainTextAsync("on 2 devices");
        await page.GetByRole(AriaRole.Button, new() { Name = "Take out Blue phone" }).ClickAsync();
        await Expect(page.Locator("main .sentence")).ToContainTextAsync("on one device");
        using var ended = await elsewhere.AskAsync("GET", "account");
        Assert.Equal(HttpStatusCode.Redirect, ended.StatusCode);

        await SignOutAsync(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in with a passkey" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "opens nothing here" })).ToBeVisibleAsync();
        Assert.Equal(1, await device.CountAsync());
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_passkey_is_added_by_giving_the_password_and_by_nobody_else_who_finds_the_page_open()
    {
        await people.ReadyAsync();
        await using var visit = await SignedInAsync(await people.PersonAsync("Unlocked", people.Stored.Press.Id, PressRole.Reader));
        var device = await Authenticator.IntoAsync(visit.Page);
        await AddAsync(visit.Page, "Mine", "wrong wrong wrong wrong");

        await Expect(visit.Page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "This is not the password that you have now." })).ToBeVisibleAsync();
        Assert.Equal(0, await device.CountAsync());
        Assert.Empty((await visit.Page.RunAxe()).Violations);
    }

    [Fact]
    public async Task An_answer_opens_once_and_at_the_device_that_was_asked()
    {
        var (visit, _, _) = await WithPasskeyAsync("Overheard", "Phone");
        await using var closing = visit;
        var page = visit.Page;
        await SignOutAsync(page);
        var (form, cookie) = ("", "");
        await page.RouteAsync("**/sign-in", async route =>
        {
            if (route.Request.Method == "POST")
            {
                (form, cookie) = (route.Request.PostData!, (await route.Request.AllHeadersAsync())["cookie"]);
            }

            await route.ContinueAsync();
        });
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in with a passkey" }).ClickAsync();
        await visit.AnswersAsync();

        Assert.Contains("passkey=", cookie, StringComparison.Ordinal);
        Assert.Contains("opens nothing here", await SendAsync(cookie), StringComparison.Ordinal);
        Assert.Contains("opens nothing here", await SendAsync(string.Join("; ", cookie.Split("; ").Where(one => !one.StartsWith("passkey=", StringComparison.Ordinal)))), StringComparison.Ordinal);

        async Task<string> SendAsync(string cookies)
        {
            using var http = new HttpClient(new HttpClientHandler { UseCookies = false, AllowAutoRedirect = false }) { BaseAddress = Named };
            using var request = new HttpRequestMessage(HttpMethod.Post, "sign-in") { Content = new StringContent(form, null, "application/x-www-form-urlencoded") };
            request.Headers.Add("Cookie", cookies);
            request.Headers.Add("Origin", Named.GetLeftPart(UriPartial.Authority));
            using var answer = await http.SendAsync(request, TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            return await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        }
    }

    // W3C Web Authentication, level 3, 6.1.1: a count that does not grow is the sign of a copied key.
    [Fact]
    public async Task A_copy_of_a_passkey_that_counts_from_the_start_again_opens_nothing()
    {
        var (visit, device, _) = await WithPasskeyAsync("Copied", "Phone");
        await using var closing = visit;
        await SignOutAsync(visit.Page);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Sign in with a passkey" }).ClickAsync();
        await visit.AnswersAsync();
        await visit.Page.GotoAsync("account");
        await SignOutAsync(visit.Page);
        await device.TurnBackAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Sign in with a passkey" }).ClickAsync();

        await Expect(visit.Page.GetByRole(AriaRole.Alert).Filter(new() { HasText = "opens nothing here" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_code_for_a_forgotten_password_takes_the_passkeys_out()
    {
        var (visit, _, email) = await WithPasskeyAsync("Lost", "Phone");
        await using var closing = visit;
        await using var owner = await people.SignInAsync(chromium, PeopleApp.Owner);
        await owner.Page.GotoAsync("people");
        await owner.Field("Whose").SelectOptionAsync("Lost");
        await owner.Page.GetByRole(AriaRole.Button, new() { Name = "Make a code" }).ClickAsync();
        using var lost = new HttpPerson(people.App.Address);
        using var set = await lost.FillAsync("new-password", new() { ["Code"] = await owner.Page.Locator(".shown-once").InnerTextAsync(), ["Password"] = "nine wet umbrellas, no heron" });
        Assert.Equal((email, HttpStatusCode.Redirect), (email, set.StatusCode));

        using var account = await lost.AskAsync("GET", "account");
        Assert.Contains("You have none yet.", await account.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_a_browser_makes_none_the_page_says_so_and_offers_nothing()
    {
        await people.ReadyAsync();
        using var person = await HttpPerson.SignedInAsync(people.App.Address, PeopleApp.Owner);
        using var account = await person.AskAsync("GET", "account");
        Assert.Contains("Browsers make passkeys for names only", await account.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        await using var visit = await SignedInAsync(PeopleApp.Owner);
        await visit.Page.AddInitScriptAsync("delete window.PublicKeyCredential;");
        await visit.Page.GotoAsync("account");
        await Expect(visit.Page.GetByText("This browser makes none here")).ToBeVisibleAsync();
        await Expect(visit.Page.GetByRole(AriaRole.Button, new() { Name = "Add a passkey" })).ToBeHiddenAsync();
    }

    private Uri Named => new UriBuilder(people.App.Address) { Host = "localhost" }.Uri;

    private static async Task SignOutAsync(IPage page)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await page.WaitForURLAsync("**/sign-in");
    }

    private static async Task AddAsync(IPage page, string name, string password)
    {
        await page.GotoAsync("account");
        await page.GetByLabel("What to call it").FillAsync(name);
        await page.GetByLabel("Your password").FillAsync(password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Add a passkey" }).ClickAsync();
    }

    private async Task<(Visit Visit, Authenticator Device, string Email)> WithPasskeyAsync(string name, string passkey)
    {
        await people.ReadyAsync();
        var email = await people.PersonAsync(name, people.Stored.Press.Id, PressRole.Reader);
        var visit = await SignedInAsync(email);
        var device = await Authenticator.IntoAsync(visit.Page);
        await AddAsync(visit.Page, passkey, PeopleApp.Password);
        await Expect(visit.Page.GetByRole(AriaRole.Status)).ToContainTextAsync("The passkey is added.");
        await Expect(visit.Page.GetByRole(AriaRole.Rowheader, new() { Name = passkey })).ToBeVisibleAsync();
        return (visit, device, email);
    }

    private async Task<Visit> SignedInAsync(string email)
    {
        var visit = await Visit.BeginAsync(chromium.Browser, Named);
        await visit.Page.GotoAsync("sign-in");
        await visit.Field("Mail address").FillAsync(email);
        await visit.Field("Password").FillAsync(PeopleApp.Password);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await visit.AnswersAsync();
        return visit;
    }
}
