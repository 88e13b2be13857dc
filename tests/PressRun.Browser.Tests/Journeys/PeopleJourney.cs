using Deque.AxeCore.Playwright;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Pages;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Access;
using PressRun.Data.People;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

public sealed class PeopleJourney(Chromium chromium, PeopleApp people)
{
    [Fact]
    public async Task An_owner_invites_by_link_and_what_a_reader_may_not_is_not_offered_until_the_owner_gives_it()
    {
        await people.ReadyAsync();
        await using var owner = await people.SignInAsync(chromium, PeopleApp.Owner);
        await owner.Page.GotoAsync("people");
        await owner.Field("Whom").FillAsync("Nell Newcome");
        await owner.Field("As").SelectOptionAsync("Reader");
        await owner.Page.GetByRole(AriaRole.Button, new() { Name = "Make a link" }).ClickAsync();
        var link = await owner.Page.Locator(".shown-once").InnerTextAsync();

        await using var nell = await Visit.BeginAsync(chromium.Browser, people.App.Address);
        await nell.Page.GotoAsync(link);
        await Expect(nell.Page.Locator("main .sentence")).ToContainTextAsync("as its reader");
        await Expect(nell.Field("Your name")).ToHaveValueAsync("Nell Newcome");
        await nell.Field("Mail address").FillAsync("nell@example.org");
        await nell.Field("Password").FillAsync(PeopleApp.Password);
        await nell.Page.GetByRole(AriaRole.Button, new() { Name = "Make an account and join" }).ClickAsync();
        await nell.AnswersAsync();
        await nell.OpenAsync("shelf");
        await Expect(nell.Page.Locator(".masthead .press")).ToContainTextAsync("you may read");
        await Expect(nell.Page.GetByRole(AriaRole.Link, new() { Name = "Add a title" })).ToBeHiddenAsync();
        var book = await people.Stored.BookAsync(EveryPage.Title, EveryPage.Printing);
        await nell.OpenAsync(book.Path);
        await Expect(nell.Field("Price")).ToBeDisabledAsync();
        await nell.Page.GotoAsync("people");
        await Expect(nell.Page.Locator("main .sentence")).ToContainTextAsync("Only an owner");
        await nell.OpenAsync(book.Path);

        await owner.Page.GotoAsync("people");
        var row = owner.Page.GetByRole(AriaRole.Row).Filter(new() { HasText = "nell@example.org" });
        await row.Locator("select").SelectOptionAsync("Editor");
        await row.GetByRole(AriaRole.Button, new() { Name = "Give it" }).ClickAsync();

        await Expect(nell.Field("Price")).ToBeEnabledAsync();
        await nell.AnswersAsync();
        await using var again = await Visit.BeginAsync(chromium.Browser, people.App.Address);
        await again.Page.GotoAsync(link);
        await Expect(again.Page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("This invitation has ended");
        Assert.DoesNotContain(link[(link.LastIndexOf('/') + 1)..], people.App.Said, StringComparison.Ordinal);

        // Taking somebody out asks once more, where the button was.
        await row.GetByText("Take out", new() { Exact = true }).ClickAsync();
        await Expect(row.GetByText("sees nothing of this press from then on")).ToBeVisibleAsync();
        await Expect(row.GetByText("nell@example.org")).ToBeVisibleAsync();
        await row.GetByRole(AriaRole.Button, new() { Name = "out of the press" }).ClickAsync();
        await Expect(owner.Page.GetByText("nell@example.org")).ToHaveCountAsync(0);
        owner.WasQuiet();
    }

    [Fact]
    public async Task What_somebody_may_that_was_changed_while_the_line_to_the_database_was_lost_reaches_their_open_page_and_leaves_others_alone()
    {
        await people.ReadyAsync();
        var book = await people.Stored.BookAsync(EveryPage.Title, EveryPage.Printing);
        await using var missed = await people.SignInAsync(chromium, await people.PersonAsync("Mist", people.Stored.Press.Id, PressRole.Reader));
        await using var other = await people.SignInAsync(chromium, await people.PersonAsync("Otto", people.Stored.Press.Id, PressRole.Reader));
        await missed.OpenAsync(book.Path);
        await other.OpenAsync(book.Path);
        await other.Page.EvaluateAsync("() => { window.stayed = true; }");
        await Expect(missed.Field("Price")).ToBeDisabledAsync();

        await people.Stored.GiveUnheardAsync("mist@example.org", PressRole.Editor);

        await Expect(missed.Field("Price")).ToBeEnabledAsync(new() { Timeout = 15_000 });
        await missed.AnswersAsync();
        Assert.True(await other.Page.EvaluateAsync<bool>("() => window.stayed === true"));
    }

    [Fact]
    public async Task A_page_stays_while_another_press_changes_what_somebody_may_there_and_leads_to_the_start_once_its_own_press_is_gone()
    {
        await people.ReadyAsync();
        var email = await people.PersonAsync("Twyla", people.Other, PressRole.Reader);
        var (invitations, members) = (people.Stored.Services.GetRequiredService<InvitationStore>(), people.Stored.Services.GetRequiredService<PeopleStore>());
        var twyla = (await members.ListAsync(people.Other)).Single(member => member.Email == email).UserId;
        Assert.NotNull(await invitations.AcceptAsync(await invitations.InviteAsync(people.Stored.Press.Id, "Twyla", PressRole.Reader), twyla));
        await using var visit = await people.SignInAsync(chromium, email);
        await visit.OpenAsync("papers");
        await Expect(visit.Page.Locator(".masthead .press")).ToContainTextAsync(PeopleApp.OtherPress);
        await visit.Page.EvaluateAsync("() => { window.stayed = true; }");

        await members.ChangeAsync(people.Stored.Press.Id, twyla, PressRole.Editor);
        await Task.Delay(TimeSpan.FromSeconds(2), TestContext.Current.CancellationToken);
        Assert.True(await visit.Page.EvaluateAsync<bool>("() => window.stayed === true"));

        // The same address is a page of the other press too.
        await members.RemoveAsync(people.Other, twyla);
        await Expect(visit.Page.GetByText("The press that was open here is not there for you any more.")).ToBeVisibleAsync(new() { Timeout = 15_000 });
        await Expect(visit.Page.GetByRole(AriaRole.Button, new() { Name = people.Stored.Press.Name })).ToBeVisibleAsync();
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_page_whose_role_changed_comes_again_as_a_page_of_its_own_press_though_the_browser_has_chosen_another_meanwhile()
    {
        await people.ReadyAsync();
        var email = await people.PersonAsync("Una", people.Other, PressRole.Editor);
        var (invitations, members) = (people.Stored.Services.GetRequiredService<InvitationStore>(), people.Stored.Services.GetRequiredService<PeopleStore>());
        var una = (await members.ListAsync(people.Other)).Single(member => member.Email == email).UserId;
        Assert.NotNull(await invitations.AcceptAsync(await invitations.InviteAsync(people.Stored.Press.Id, "Una", PressRole.Reader), una));
        await using var visit = await people.SignInAsync(chromium, email);
        await visit.OpenAsync("papers");
        await Expect(visit.Page.Locator(".masthead .press")).ToContainTextAsync(PeopleApp.OtherPress);
        await visit.Page.EvaluateAsync($"() => {{ document.cookie = 'press={people.Stored.Press.Id}; path=/'; }}");

        await members.ChangeAsync(people.Other, una, PressRole.Reader);

        await Expect(visit.Page.Locator(".masthead .press")).ToContainTextAsync("you may read", new() { Timeout = 15_000 });
        await Expect(visit.Page.Locator(".masthead .press")).ToContainTextAsync(PeopleApp.OtherPress);
        Assert.EndsWith("/papers", visit.Page.Url, StringComparison.Ordinal);
        visit.WasQuiet();
    }

    // A proxy's log has the referrer of whatever a page loads, and the address of an open invitation is its key.
    [Fact]
    public async Task Nothing_that_a_page_loads_tells_of_the_invitation_that_is_open()
    {
        await people.ReadyAsync();
        var secret = await people.Stored.Services.GetRequiredService<InvitationStore>().InviteAsync(people.Stored.Press.Id, "Tess Told", PressRole.Reader);
        await using var tess = await Visit.BeginAsync(chromium.Browser, people.App.Address);
        var asked = new List<IRequest>();
        tess.Page.Request += (_, request) => asked.Add(request);

        await tess.Page.GotoAsync("join/" + secret);
        await tess.Page.WaitForLoadStateAsync(LoadState.NetworkIdle);
        await tess.Page.GetByRole(AriaRole.Link, new() { Name = "Sign in first" }).ClickAsync();
        await tess.Page.WaitForURLAsync("**/sign-in?to=*");
        await tess.Page.WaitForLoadStateAsync(LoadState.NetworkIdle);

        Assert.True(asked.Count > 5, "Its styles and fonts are asked for.");
        foreach (var request in asked.ToList())
        {
            Assert.DoesNotContain(secret, (await request.AllHeadersAsync()).GetValueOrDefault("referer", ""), StringComparison.Ordinal);
        }

        // The form says where it comes from all the same.
        await tess.Page.GotoAsync("join/" + secret);
        await tess.Field("Your name").FillAsync("Tess Told");
        await tess.Field("Mail address").FillAsync("tess@example.org");
        await tess.Field("Password").FillAsync(PeopleApp.Password);
        await tess.Page.GetByRole(AriaRole.Button, new() { Name = "Make an account and join" }).ClickAsync();
        await tess.AnswersAsync();
    }

    [Fact]
    public async Task An_editors_links_to_quotes_are_told_of_before_the_editor_is_taken_out_and_open_nothing_right_after()
    {
        await people.ReadyAsync();
        var email = await people.PersonAsync("Edda", people.Stored.Press.Id, PressRole.Editor);
        await using var editor = await people.SignInAsync(chromium, email);
        await editor.OpenAsync("quotes/3");
        await editor.Field("Whom the link is for").FillAsync("Wim Vole");
        await editor.Page.GetByRole(AriaRole.Button, new() { Name = "Make the link" }).ClickAsync();
        var link = await editor.Field("The link").InputValueAsync();
        await Expect(editor.Page.Locator(".course")).ToContainTextAsync("Edda (the press) made a link for Wim Vole.");
        await editor.Page.GotoAsync("account");
        await Expect(editor.Page.GetByText("One open link that you made ends with it, to quote 3.")).ToBeVisibleAsync();
        using var reader = new HttpPerson(people.App.Address);
        Assert.Equal(System.Net.HttpStatusCode.OK, await AskAsync());

        await using var owner = await people.SignInAsync(chromium, PeopleApp.Owner);
        await owner.Page.GotoAsync("people");
        var row = owner.Page.GetByRole(AriaRole.Row).Filter(new() { HasText = email });
        await Expect(row.GetByText("Making them a reader ends one open link of theirs, to quote 3.")).ToBeVisibleAsync();
        await row.GetByText("Take out", new() { Exact = true }).ClickAsync();
        await Expect(row.GetByText("One open link that they made ends too, to quote 3. Its reader needs a new one.")).ToBeVisibleAsync();
        await row.GetByRole(AriaRole.Button, new() { Name = "out of the press" }).ClickAsync();
        await Expect(owner.Page.GetByText(email)).ToHaveCountAsync(0);

        Assert.Equal(System.Net.HttpStatusCode.Gone, await AskAsync());
        await owner.OpenAsync("quotes/3");
        await Expect(owner.Page.Locator(".course")).ToContainTextAsync("The link of Wim Vole ended, because whoever made it may change nothing in this press any more.");
        owner.WasQuiet();

        async Task<System.Net.HttpStatusCode> AskAsync()
        {
            using var answer = await reader.AskAsync("GET", new Uri(link).AbsolutePath);
            return answer.StatusCode;
        }
    }

    [Fact]
    public async Task An_owner_finds_the_links_that_end_with_nobody_and_ends_one_on_its_quote()
    {
        await people.ReadyAsync();
        await people.Stored.ShareAsync(3, "Ursa Unmade");
        await using var owner = await people.SignInAsync(chromium, PeopleApp.Owner);
        await owner.Page.GotoAsync("people");
        await owner.Page.GetByRole(AriaRole.Row).Filter(new() { HasText = "Ursa Unmade" }).GetByRole(AriaRole.Link, new() { Name = "quote 3" }).ClickAsync();
        await owner.AnswersAsync();
        var link = owner.Page.Locator(".link-list li").Filter(new() { HasText = "Ursa Unmade" });
        await link.GetByRole(AriaRole.Button).ClickAsync();
        await link.GetByRole(AriaRole.Button, new() { Name = "End it for good" }).ClickAsync();
        // The question before it speaks of an ended link too.
        await Expect(owner.Page.Locator(".course")).ToContainTextAsync("ended the link of Ursa Unmade");

        await owner.Page.GotoAsync("people");
        await Expect(owner.Page.GetByRole(AriaRole.Heading, new() { Name = "Who is here" })).ToBeVisibleAsync();
        await Expect(owner.Page.GetByText("Ursa Unmade")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_key_opens_the_http_interface_until_it_is_revoked()
    {
        await people.ReadyAsync();
        await using var owner = await people.SignInAsync(chromium, PeopleApp.Owner);
        await owner.Page.GotoAsync("people");
        await owner.Field("What it is for").FillAsync("The shop's till");
        await owner.Page.GetByRole(AriaRole.Button, new() { Name = "Make a key" }).ClickAsync();
        var key = await owner.Page.Locator(".shown-once").InnerTextAsync();
        using var program = new HttpClient { BaseAddress = people.App.Address };
        Assert.Equal(401, await AskAsync());
        program.DefaultRequestHeaders.Authorization = new("Bearer", key);
        Assert.Equal(200, await AskAsync());

        await owner.Page.GotoAsync("people");
        await owner.Page.GetByRole(AriaRole.Button, new() { Name = "Revoke the key for The shop's till" }).ClickAsync();
        await Expect(owner.Page.GetByText("The shop's till")).ToHaveCountAsync(0);
        Assert.Equal(401, await AskAsync());
        Assert.DoesNotContain(key, people.App.Said, StringComparison.Ordinal);

        async Task<int> AskAsync()
        {
            using var answer = await program.GetAsync(new Uri("api/v1/job.schema.json", UriKind.Relative));
            return (int)answer.StatusCode;
        }
    }

    [Fact]
    public async Task An_owner_makes_a_code_by_which_somebody_sets_a_forgotten_password_and_is_signed_out_everywhere_else()
    {
        await people.ReadyAsync();
        var email = await people.PersonAsync("Forgetful", people.Stored.Press.Id, PressRole.Reader);
        using var before = await HttpPerson.SignedInAsync(people.App.Address, email);
        await using var owner = await people.SignInAsync(chromium, PeopleApp.Owner);
        await owner.Page.GotoAsync("people");
        await owner.Field("Whose").SelectOptionAsync("Forgetful");
        await owner.Page.GetByRole(AriaRole.Button, new() { Name = "Make a code" }).ClickAsync();
        await Expect(owner.Page.GetByRole(AriaRole.Status).First).ToContainTextAsync("Give this code to Forgetful");
        var code = await owner.Page.Locator(".shown-once").InnerTextAsync();

        await using var visit = await Visit.BeginAsync(chromium.Browser, people.App.Address);
        await visit.Page.GotoAsync("sign-in");
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "set a new password" }).ClickAsync();
        await SetAsync("0000-0000", "nine wet umbrellas, no heron");
        await Expect(visit.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("This is no code, or it has ended");
        await SetAsync(code, "heron");
        await Expect(visit.Page.GetByRole(AriaRole.Alert)).ToContainTextAsync("at least 15 characters");
        await SetAsync(code, "nine wet umbrellas, no heron");
        await visit.AnswersAsync();
        await Expect(visit.Page.Locator(".masthead .account")).ToHaveTextAsync("Forgetful");

        using var ended = await before.AskAsync("GET", "account");
        Assert.Equal(System.Net.HttpStatusCode.Redirect, ended.StatusCode);
        Assert.DoesNotContain(code, people.App.Said, StringComparison.Ordinal);
        visit.WasQuiet();

        async Task SetAsync(string typed, string password)
        {
            await visit.Field("Code").FillAsync(typed);
            await visit.Field("New password").FillAsync(password);
            await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Set it and sign in" }).ClickAsync();
        }
    }

    [Theory]
    [InlineData("new-password")]
    [InlineData("account")]
    [InlineData("people")]
    [InlineData("first-owner")]
    [InlineData("join/nothing")]
    public async Task Pages_about_people_are_accessible_on_a_table_and_on_a_phone_light_and_dark(string path)
    {
        await people.ReadyAsync();
        await using var visit = await people.SignInAsync(chromium, PeopleApp.Owner);
        await visit.Page.GotoAsync(path);
        // Whoever has a long address has no wider page: nothing in it asks to be broken.
        await visit.Page.EvaluateAsync("() => document.querySelectorAll('main p.sentence').forEach(one => one.append(' ' + 'fitzgerald'.repeat(8) + '@example.org'))");
        foreach (var width in new[] { 1280, 390, 320 })
        {
            await visit.Page.SetViewportSizeAsync(width, 900);
            foreach (var scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
            {
                await visit.Page.EmulateMediaAsync(new() { ColorScheme = scheme });
                var found = await visit.Page.RunAxe();
                Assert.True(found.Violations.Length == 0, string.Join(Environment.NewLine, found.Violations.Select(violation => $"{width} {scheme} {violation.Id}: {violation.Nodes[0].Html}")));
            }

            Assert.True(await visit.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth") <= width, $"{path} scrolls sideways at {width} px.");
        }

        await visit.Page.Context.ClearCookiesAsync();
        await visit.Page.GotoAsync("sign-in");
        Assert.Empty((await visit.Page.RunAxe()).Violations);
    }
}
