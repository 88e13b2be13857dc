using Microsoft.Playwright;
using PressRun.Browser.Tests.Pages;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Access;
using PressRun.Data.People;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class SignInJourney(Chromium chromium, PeopleApp people)
{
    [Fact]
    public async Task The_code_in_the_log_makes_the_first_owner_once_and_another_sets_a_forgotten_password()
    {
        var settings = new Dictionary<string, string>();
        await using var app = await AppProcess.StartAsync(sample: true, signIn: true, settings);
        var code = await app.OwnerCodeAsync();
        await using var visit = await Visit.BeginAsync(chromium.Browser, app.Address);
        var page = visit.Page;
        await page.GotoAsync("shelf");
        await page.GetByRole(AriaRole.Link, new() { Name = "becomes its first owner" }).ClickAsync();
        await MakeAsync("0000-0000", "six herons, one umbrella");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("This is not the code");
        await MakeAsync(code, "herons");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("at least 15 characters; this one has 6");
        await MakeAsync(code, "qwertyuiopasdfghjkl");
        await Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Many people have had this password");
        await Expect(visit.Field("Your name")).ToHaveValueAsync("Ada Quill");

        await MakeAsync(code, "six herons, one umbrella");
        await visit.AnswersAsync();
        await Expect(page.Locator(".masthead .account")).ToHaveTextAsync("Ada Quill");
        await visit.OpenAsync("shelf");
        await Expect(page.GetByRole(AriaRole.Link, new() { Name = "What the Harbour Pilot Hums", Exact = true }).First).ToBeVisibleAsync();
        await page.GotoAsync("first-owner");
        await Expect(page.Locator("main")).ToContainTextAsync("Somebody owns this server already");
        Assert.DoesNotContain("six herons", app.Said, StringComparison.Ordinal);
        visit.WasQuiet();

        await app.KillAsync();
        settings["PressRun__NewPasswordFor"] = "Ada@example.org";
        await app.StartAsync();
        await page.GotoAsync("new-password");
        await visit.Field("Code").FillAsync(await app.PasswordCodeAsync());
        await visit.Field("New password").FillAsync("nine wet umbrellas, no heron");
        await page.GetByRole(AriaRole.Button, new() { Name = "Set it and sign in" }).ClickAsync();
        await visit.AnswersAsync();
        using var ada = new HttpPerson(app.Address);
        Assert.Equal(System.Net.HttpStatusCode.OK, await TryAsync("six herons, one umbrella"));
        Assert.Equal(System.Net.HttpStatusCode.Redirect, await TryAsync("nine wet umbrellas, no heron"));

        async Task<System.Net.HttpStatusCode> TryAsync(string password)
        {
            using var answer = await ada.FillAsync("sign-in", new() { ["Email"] = "ada@example.org", ["Password"] = password });
            return answer.StatusCode;
        }

        async Task MakeAsync(string code, string password)
        {
            await visit.Field("Code from the log").FillAsync(code);
            await visit.Field("Your name").FillAsync("Ada Quill");
            await visit.Field("Mail address").FillAsync("ada@example.org");
            await visit.Field("Password").FillAsync(password);
            await page.GetByRole(AriaRole.Button, new() { Name = "Become the owner" }).ClickAsync();
        }
    }

    [Fact]
    public async Task Ending_a_sign_in_from_another_device_closes_its_open_page()
    {
        await people.ReadyAsync();
        var email = await people.PersonAsync("Twice", people.Stored.Press.Id, PressRole.Editor);
        await using var desk = await people.SignInAsync(chromium, email);
        await using var phone = await people.SignInAsync(chromium, email);
        await phone.OpenAsync("papers");

        await desk.Page.GotoAsync("account");
        await Expect(desk.Page.Locator("main .sentence")).ToContainTextAsync("on 2 devices");
        await desk.Page.GetByRole(AriaRole.Button, new() { Name = "End it" }).ClickAsync();

        await phone.Page.WaitForURLAsync("**/sign-in?ended=true");
        await phone.Page.GotoAsync("papers");
        await Expect(phone.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Sign in");
        await desk.OpenAsync("papers");
        await desk.Page.GotoAsync("account");
        await desk.Page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await Expect(desk.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Sign in");
        desk.WasQuiet();
    }

    [Fact]
    public async Task Typing_keeps_a_sign_in_alive_and_a_page_that_nobody_touches_ends_with_it()
    {
        await people.ReadyAsync();
        var email = await people.PersonAsync("Quiet", people.Stored.Press.Id, PressRole.Editor);
        await using var visit = await people.SignInAsync(chromium, email);
        var book = await people.Stored.BookAsync(EveryPage.Title, EveryPage.Printing);
        await visit.OpenAsync(book.Path);
        var almostTooLongAgo = TimeProvider.System.GetUtcNow() - SessionStore.LongestIdle + TimeSpan.FromHours(1);
        await people.Stored.SeenAsync(email, almostTooLongAgo);

        await visit.Field("Price").PressAsync("End");
        await Eventually.HoldsAsync(async () => await people.Stored.SeenAsync(email) > almostTooLongAgo + TimeSpan.FromDays(1), "the key that was pressed is noted");

        await people.Stored.SeenAsync(email, almostTooLongAgo - TimeSpan.FromHours(2));
        await visit.Page.WaitForURLAsync("**/sign-in?ended=true", new() { Timeout = 2 * Visit.Patience });
    }
}
