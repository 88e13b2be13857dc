using System.Net;
using Microsoft.AspNetCore.WebUtilities;
using PressRun.Browser.Tests.Running;

namespace PressRun.Browser.Tests.People;

/// <summary>Signing in by another server, played on this machine by <see cref="IdentityServer"/>.</summary>
[Collection(typeof(Elsewhere))]
public sealed class OtherServerTests(ServedElsewhere elsewhere)
{
    [Fact]
    public async Task Somebody_who_is_invited_makes_an_account_by_it_and_signs_in_by_it_from_then_on()
    {
        elsewhere.Server.Person = new("s-ines", "ines@example.org", true, "Ines Bell");
        using var ines = new HttpPerson(elsewhere.App.Address);
        var link = "join/" + await elsewhere.InviteAsync("Ines");
        using var back = await elsewhere.ComeAsync(ines, "/" + link);
        Assert.EndsWith("/" + link, back.Headers.Location!.ToString(), StringComparison.Ordinal);

        using var made = await ines.FillAsync(link, []);
        Assert.Equal(HttpStatusCode.Redirect, made.StatusCode);
        Assert.Contains("Ines Bell", await ServedElsewhere.ReadAsync(ines, "account"), StringComparison.Ordinal);

        using var again = new HttpPerson(elsewhere.App.Address);
        using var came = await elsewhere.ComeAsync(again, "/account");
        Assert.EndsWith("/account", came.Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.Contains("ines@example.org", await ServedElsewhere.ReadAsync(again, "account"), StringComparison.Ordinal);
        using var copied = again.Copied();
        using var anew = await elsewhere.ComeAsync(again, "/account");
        using var dead = await copied.AskAsync("GET", "account");
        Assert.Equal(HttpStatusCode.Redirect, dead.StatusCode);
        Assert.Contains("on 2 devices", await ServedElsewhere.ReadAsync(again, "account"), StringComparison.Ordinal);
        using var ended = await again.SendAsync("account", "account/end-others", []);
        Assert.Equal(HttpStatusCode.Redirect, ended.StatusCode);
        using var first = await ines.AskAsync("GET", "account");
        Assert.Equal(HttpStatusCode.Redirect, first.StatusCode);
    }

    [Fact]
    public async Task A_stranger_gets_no_account_by_coming()
    {
        elsewhere.Server.Person = new("s-stranger", "stranger@example.org", true, "Stranger");
        var before = elsewhere.People();
        using var stranger = new HttpPerson(elsewhere.App.Address);
        using var back = await elsewhere.ComeAsync(stranger, "/shelf");

        Assert.Contains("sign-in?said=Unknown", back.Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.Contains("nobody here does yet", await ServedElsewhere.ReadAsync(stranger, back.Headers.Location.ToString()), StringComparison.Ordinal);
        using var shelf = await stranger.AskAsync("GET", "shelf");
        Assert.Equal(HttpStatusCode.Redirect, shelf.StatusCode);
        Assert.Equal(before, elsewhere.People());
    }

    [Fact]
    public async Task An_account_with_the_address_opens_only_once_its_password_was_given_and_the_server_vouches_for_the_address()
    {
        var email = await elsewhere.PersonAsync("Both");
        foreach (var (verified, opens) in new[] { (false, false), (true, true) })
        {
            elsewhere.Server.Person = new("s-both", email, verified, "Both");
            using var person = new HttpPerson(elsewhere.App.Address);
            using var back = await elsewhere.ComeAsync(person, "/account");
            Assert.Contains(verified ? "said=NotLinked" : "said=Unknown", back.Headers.Location!.ToString(), StringComparison.Ordinal);
            using var closed = await person.AskAsync("GET", "account");
            Assert.Equal(HttpStatusCode.Redirect, closed.StatusCode);
            using var signedIn = await person.FillAsync("sign-in", new() { ["Email"] = email, ["Password"] = PeopleApp.Password });
            Assert.Equal(HttpStatusCode.Redirect, signedIn.StatusCode);

            using var next = new HttpPerson(elsewhere.App.Address);
            using var came = await elsewhere.ComeAsync(next, "/account");
            using var account = await next.AskAsync("GET", "account");
            Assert.Equal((verified, opens ? HttpStatusCode.OK : HttpStatusCode.Redirect), (verified, account.StatusCode));
        }
    }

    [Fact]
    public async Task The_password_of_another_account_links_nothing()
    {
        var (mine, theirs) = (await elsewhere.PersonAsync("Mine"), await elsewhere.PersonAsync("Theirs"));
        elsewhere.Server.Person = new("s-theirs", theirs, true, "Theirs");
        using var person = new HttpPerson(elsewhere.App.Address);
        using var back = await elsewhere.ComeAsync(person, "/account");
        using var signedIn = await person.FillAsync("sign-in", new() { ["Email"] = mine, ["Password"] = PeopleApp.Password });
        using var next = new HttpPerson(elsewhere.App.Address);
        using var came = await elsewhere.ComeAsync(next, "/account");

        Assert.Contains("said=NotLinked", came.Headers.Location!.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_address_that_the_token_does_not_vouch_for_is_not_made_good_by_another_that_is_told_beside_it()
    {
        var email = await elsewhere.PersonAsync("Mixed");
        try
        {
            elsewhere.Server.Person = new("s-mixed", email, false, "Mixed");
            elsewhere.Server.Told = new() { ["email"] = "other@example.org", ["email_verified"] = true };
            Assert.Contains("said=Unknown", await WhereAsync(), StringComparison.Ordinal);
            elsewhere.Server.TokenHasEmail = false;
            Assert.Contains("said=Unknown", await WhereAsync(), StringComparison.Ordinal);
            elsewhere.Server.Told = new() { ["email"] = email, ["email_verified"] = true };
            Assert.Contains("said=NotLinked", await WhereAsync(), StringComparison.Ordinal);
            elsewhere.Server.Person = elsewhere.Server.Person with { IsVerified = true };
            elsewhere.Server.Told = new() { ["email"] = email, ["email_verified"] = false };
            Assert.Contains("said=Unknown", await WhereAsync(), StringComparison.Ordinal);
        }
        finally
        {
            (elsewhere.Server.Told, elsewhere.Server.TokenHasEmail) = ([], true);
        }

        async Task<string> WhereAsync()
        {
            using var person = new HttpPerson(elsewhere.App.Address);
            using var back = await elsewhere.ComeAsync(person, "/account");
            return back.Headers.Location!.ToString();
        }
    }

    // OpenID Connect Core 1.0, 3.1.3.7: what is checked of a token.
    [Theory]
    [InlineData("another key")]
    [InlineData("no signature")]
    [InlineData("an empty signature")]
    [InlineData("an algorithm that is none")]
    [InlineData("another issuer")]
    [InlineData("another audience")]
    [InlineData("another nonce")]
    [InlineData("its age")]
    [InlineData("refusal")]
    public async Task A_token_with_anything_wrong_opens_nothing_and_the_page_says_so(string spoilt)
    {
        var email = await elsewhere.PersonAsync("Spoilt" + spoilt.Replace(" ", "", StringComparison.Ordinal));
        elsewhere.Server.Person = new("s-" + spoilt, email, true, "Spoilt");
        await elsewhere.LinkAsync(email, "s-" + spoilt);
        using var person = new HttpPerson(elsewhere.App.Address);
        elsewhere.Server.Spoil = spoilt;
        try
        {
            using var back = await elsewhere.ComeAsync(person, "/account");
            Assert.EndsWith("/sign-in?said=NotTold", back.Headers.Location!.ToString(), StringComparison.Ordinal);
        }
        finally
        {
            elsewhere.Server.Spoil = "";
        }

        Assert.Contains("did not say who you are", await ServedElsewhere.ReadAsync(person, "sign-in?said=NotTold"), StringComparison.Ordinal);
        using var good = await elsewhere.ComeAsync(person, "/account");
        Assert.EndsWith("/account", good.Headers.Location!.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_answer_opens_only_the_browser_that_asked_and_sends_it_nowhere_else()
    {
        var email = await elsewhere.PersonAsync("Asked");
        await elsewhere.LinkAsync(email, "s-asked");
        elsewhere.Server.Person = new("s-asked", email, true, "Asked");
        using var asking = new HttpPerson(elsewhere.App.Address);
        var answer = await elsewhere.AskAsync(asking, "https://elsewhere.example/");
        using var other = new HttpPerson(elsewhere.App.Address);
        using var refused = await other.AskAsync("GET", answer);
        Assert.Contains("said=NotTold", refused.Headers.Location!.ToString(), StringComparison.Ordinal);
        using var closed = await other.AskAsync("GET", "account");
        Assert.Equal(HttpStatusCode.Redirect, closed.StatusCode);

        using var taken = await asking.AskAsync("GET", answer);
        Assert.Equal("/", taken.Headers.Location!.ToString());
        Assert.DoesNotContain(QueryHelpers.ParseQuery(new Uri(elsewhere.App.Address, answer).Query)["code"].ToString(), elsewhere.App.Said, StringComparison.Ordinal);
    }

    // Whoever begins to sign in may write the answer themselves, and the log's lines are read by programs that bar addresses.
    [Theory]
    [InlineData("error=server_error&error_description=", "was not told: server_error")]
    [InlineData("error=access_denied&error_description=", "was not told: access_denied")]
    [InlineData("error=", "was not told: an error that is none of the standard's")]
    [InlineData("error_uri=x&error_description=x&error=", "was not told: an error that is none of the standard's")]
    public async Task What_somebody_comes_back_with_is_told_to_the_log_in_one_short_line_and_none_of_it_in_its_own_words(string answer, string told)
    {
        using var person = new HttpPerson(elsewhere.App.Address);
        var state = QueryHelpers.ParseQuery(new Uri(elsewhere.App.Address, await elsewhere.AskAsync(person, "/account")).Query)["state"].ToString();
        var before = elsewhere.App.Said.Length;
        const string forged = "PressRun.Web.People.Refusals: Refused sign-in from 192.0.2.9: wrong";
        using var back = await person.AskAsync("GET", $"sign-in/back?state={Uri.EscapeDataString(state)}&{answer}{Uri.EscapeDataString($"{new string('x', 3000)}\r\n\u202e{forged}\u0007")}");

        Assert.EndsWith("/sign-in?said=NotTold", back.Headers.Location!.ToString(), StringComparison.Ordinal);
        await Eventually.HoldsAsync(() => Task.FromResult(elsewhere.App.Said[before..].Contains(told, StringComparison.Ordinal)), told);
        Assert.DoesNotContain(forged, elsewhere.App.Said, StringComparison.Ordinal);
        Assert.True(elsewhere.App.Said.Length - before < 1000, elsewhere.App.Said[before..]);
    }

    [Fact]
    public async Task A_link_is_taken_off_while_there_is_another_way_in()
    {
        var email = await elsewhere.PersonAsync("Unlinking");
        await elsewhere.LinkAsync(email, "s-unlinking");
        elsewhere.Server.Person = new("s-unlinking", email, true, "Unlinking");
        using var person = await HttpPerson.SignedInAsync(elsewhere.App.Address, email);
        Assert.Contains("The Guild opens this account", await ServedElsewhere.ReadAsync(person, "account"), StringComparison.Ordinal);
        using var off = await person.SendAsync("account", "account/unlink", []);
        using var next = new HttpPerson(elsewhere.App.Address);
        using var back = await elsewhere.ComeAsync(next, "/account");

        Assert.Contains("said=NotLinked", back.Headers.Location!.ToString(), StringComparison.Ordinal);
    }
}
