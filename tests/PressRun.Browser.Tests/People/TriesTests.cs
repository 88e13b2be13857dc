using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Access;
using PressRun.Data.People;
using PressRun.Web.People;

namespace PressRun.Browser.Tests.People;

/// <summary>Wrong tries. Places are told by a proxy on this machine; their addresses are those set aside for documents (RFC 5737, RFC 3849).</summary>
public sealed partial class TriesTests(PeopleApp people)
{
    private const string Wrong = "wrong wrong wrong wrong";
    private const string NoMatch = "This address and this password do not belong together.";
    private const string TooMany = "There were too many tries.";

    [Fact]
    public async Task Too_many_tries_are_told_alike_whether_or_not_somebody_has_the_address_and_keep_out_only_whoever_made_them()
    {
        await people.ReadyAsync();
        var email = await people.PersonAsync("Guessed", people.Other, PressRole.Reader);
        using var guesser = new HttpPerson(people.App.Address, "192.0.2.1");
        foreach (var address in new[] { email, "nobody-at-all@example.org" })
        {
            var answers = new List<string>();
            for (var attempt = 0; attempt < 11; attempt++)
            {
                answers.Add(await TryAsync(guesser, address, Wrong));
            }

            // What a program that bars addresses reads (docs/operating.md); who was tried stands nowhere.
            await SaidAsync("Refused sign-in from 192.0.2.1: wrong address or password");
            await SaidAsync("Refused sign-in from 192.0.2.1: too many tries of one account from this place");
            Assert.DoesNotContain(address, people.App.Said, StringComparison.OrdinalIgnoreCase);
            Assert.All(answers[..10], said => Assert.Equal(NoMatch, said));
            Assert.StartsWith(TooMany, answers[10], StringComparison.Ordinal);
        }

        Assert.StartsWith(TooMany, await TryAsync(guesser, email, PeopleApp.Password), StringComparison.Ordinal);
        foreach (var address in new[] { email, "nobody-at-all@example.org" })
        {
            // RFC 6585, 4: the status of too many requests, with the time to wait, in seconds, and a page that says so.
            using var slowed = await guesser.FillAsync("sign-in", new() { ["Email"] = address, ["Password"] = Wrong });
            Assert.Equal((HttpStatusCode.TooManyRequests, TimeSpan.FromMinutes(15)), (slowed.StatusCode, slowed.Headers.RetryAfter!.Delta!.Value));
            Assert.Contains("<button type=\"submit\"", await slowed.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        }

        using var elsewhere = new HttpPerson(people.App.Address, "192.0.2.2");
        Assert.Equal("", await TryAsync(elsewhere, email, PeopleApp.Password));
    }

    [Fact]
    public async Task A_household_of_many_addresses_is_one_place()
    {
        await people.ReadyAsync();
        var last = "";
        for (var attempt = 0; attempt < 11; attempt++)
        {
            using var guesser = new HttpPerson(people.App.Address, $"2001:db8:0:1::{attempt}");
            last = await TryAsync(guesser, "nobody-in-a-household@example.org", Wrong);
        }

        Assert.StartsWith(TooMany, last, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Tries_of_one_address_from_everywhere_keep_strangers_out_and_let_a_device_in_that_signed_in_before()
    {
        var (email, known) = await OfKnownDeviceAsync("Sought");
        using var device = known;
        var attempts = people.Stored.Services.GetRequiredService<AttemptStore>();
        for (var attempt = 0; attempt < SignIns.OfAddress.Most; attempt++)
        {
            await attempts.TakeAsync(SignIns.OfAddress, email.ToUpperInvariant());
        }

        using var stranger = new HttpPerson(people.App.Address, "192.0.2.3");
        Assert.StartsWith(TooMany, await TryAsync(stranger, email, PeopleApp.Password), StringComparison.Ordinal);
        await SaidAsync("Refused sign-in from 192.0.2.3: too many tries of the account S...@example.org,");
        Assert.Equal(NoMatch, await TryAsync(known, email, Wrong));
        Assert.Equal("", await TryAsync(known, email, PeopleApp.Password));
        Assert.Equal(NoMatch, await TryAsync(known, "nobody-at-this-device@example.org", PeopleApp.Password));
    }

    [Fact]
    public async Task Devices_of_whoever_had_the_password_are_strangers_once_it_is_changed_and_the_one_where_it_was_changed_is_not()
    {
        var (email, known) = await OfKnownDeviceAsync("Handed");
        using var device = known;
        using var own = await HttpPerson.SignedInAsync(people.App.Address, email);
        using var changed = await own.FillAsync("account", new() { ["Old"] = PeopleApp.Password, ["New"] = "nine wet umbrellas, no heron" });
        using var signedOut = await own.SendAsync("account", "account/sign-out", []);
        var attempts = people.Stored.Services.GetRequiredService<AttemptStore>();
        for (var attempt = 0; attempt < SignIns.OfAddress.Most; attempt++)
        {
            await attempts.TakeAsync(SignIns.OfAddress, email.ToUpperInvariant());
        }

        Assert.StartsWith(TooMany, await TryAsync(known, email, Wrong), StringComparison.Ordinal);
        Assert.Equal(NoMatch, await TryAsync(own, email, Wrong));
        Assert.Equal("", await TryAsync(own, email, "nine wet umbrellas, no heron"));
    }

    [Fact]
    public async Task A_device_that_signed_in_before_may_not_guess_for_ever_either()
    {
        var (email, known) = await OfKnownDeviceAsync("Lent");
        using var device = known;
        for (var attempt = 0; attempt < 10; attempt++)
        {
            Assert.Equal(NoMatch, await TryAsync(known, email, Wrong));
        }

        Assert.StartsWith(TooMany, await TryAsync(known, email, PeopleApp.Password), StringComparison.Ordinal);
        using var elsewhere = new HttpPerson(people.App.Address, "192.0.2.4");
        Assert.Equal("", await TryAsync(elsewhere, email, PeopleApp.Password));
    }

    [Fact]
    public async Task Devices_that_are_known_share_a_number_of_tries_too_which_no_stranger_uses_up()
    {
        var (email, known) = await OfKnownDeviceAsync("Shared");
        using var device = known;
        using var stranger = new HttpPerson(people.App.Address, "192.0.2.6");
        var attempts = people.Stored.Services.GetRequiredService<AttemptStore>();
        for (var attempt = 1; attempt < SignIns.OfDevices.Most; attempt++)
        {
            await attempts.TakeAsync(SignIns.OfDevices, email.ToUpperInvariant());
        }

        Assert.Equal(NoMatch, await TryAsync(stranger, email, Wrong));
        Assert.Equal("", await TryAsync(known, email, PeopleApp.Password));
        Assert.Equal(NoMatch, await TryAsync(known, email, Wrong));
        Assert.StartsWith(TooMany, await TryAsync(known, email, PeopleApp.Password), StringComparison.Ordinal);
        await SaidAsync("too many tries of one account on all devices that it knows");
        Assert.StartsWith(TooMany, await TryAsync(known, email, Wrong), StringComparison.Ordinal);
        Assert.Equal(NoMatch, await TryAsync(stranger, email, Wrong));
    }

    [Fact]
    public async Task Whoever_guesses_at_invitations_is_slowed_down_and_a_real_one_opens_all_the_same()
    {
        await people.ReadyAsync();
        var link = await people.Stored.Services.GetRequiredService<InvitationStore>().InviteAsync(people.Other, "Isa", PressRole.Reader);
        using var somebody = new HttpPerson(people.App.Address, "192.0.2.5");
        for (var guess = 0; guess < 30; guess++)
        {
            Assert.Equal(HttpStatusCode.Gone, await OpenAsync(somebody, $"join/nothing-{guess.ToString(CultureInfo.InvariantCulture)}"));
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, await OpenAsync(somebody, "join/nothing-more"));
        Assert.Equal(HttpStatusCode.OK, await OpenAsync(somebody, "join/" + link));
    }

    [Fact]
    public async Task Whoever_guesses_at_share_links_is_slowed_down_with_all_of_their_household()
    {
        await people.ReadyAsync();
        for (var guess = 0; guess < 30; guess++)
        {
            using var guesser = new HttpPerson(people.App.Address, $"2001:db8:0:2::{guess.ToString(CultureInfo.InvariantCulture)}");
            Assert.Equal(HttpStatusCode.NotFound, await OpenAsync(guesser, "q/nothing"));
        }

        using var more = new HttpPerson(people.App.Address, "2001:db8:0:2::ffff");
        using var neighbour = new HttpPerson(people.App.Address, "2001:db8:0:3::1");
        Assert.Equal(HttpStatusCode.TooManyRequests, await OpenAsync(more, "q/nothing"));
        Assert.Equal(HttpStatusCode.NotFound, await OpenAsync(neighbour, "q/nothing"));
    }

    private Task SaidAsync(string words) => Eventually.HoldsAsync(() => Task.FromResult(people.App.Said.Contains(words, StringComparison.Ordinal)), words);

    // Somebody new, and a device on which they have signed in and out again.
    private async Task<(string Email, HttpPerson Known)> OfKnownDeviceAsync(string name)
    {
        await people.ReadyAsync();
        var email = await people.PersonAsync(name, people.Other, PressRole.Reader);
        var known = await HttpPerson.SignedInAsync(people.App.Address, email);
        using var signedOut = await known.SendAsync("account", "account/sign-out", []);
        return (email, known);
    }

    private static async Task<HttpStatusCode> OpenAsync(HttpPerson person, string path)
    {
        using var answer = await person.AskAsync("GET", path);
        return answer.StatusCode;
    }

    // What is said to a try; nothing where it was right.
    private static async Task<string> TryAsync(HttpPerson person, string email, string password)
    {
        using var answer = await person.FillAsync("sign-in", new() { ["Email"] = email, ["Password"] = password });
        return answer.StatusCode == HttpStatusCode.Redirect ? "" : Alert().Match(await answer.Content.ReadAsStringAsync()).Groups[1].Value;
    }

    [GeneratedRegex("role=\"alert\"[^>]*>([^<]+)<")]
    private static partial Regex Alert();
}
