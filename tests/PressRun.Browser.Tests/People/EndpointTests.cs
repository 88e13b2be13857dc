using System.Globalization;
using System.Net;
using Microsoft.Extensions.DependencyInjection;
using PressRun.Browser.Tests.Pages;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Access;
using PressRun.Data.People;

namespace PressRun.Browser.Tests.People;

public sealed class EndpointTests(PeopleApp people)
{
    // Whoever opens another to the public says so here too, and in docs/people.md why.
    private static readonly string[] Public = ["/first-owner", "/join/{Secret}", "/livez", "/new-password", "/not-found", "/q/{**rest}", "/q/{secret}", "/q/{secret}/quote.pdf", "/q/{secret}/{form}", "/readyz", "/sign-in", "/sign-in/elsewhere", "/sign-in/passkey"];

    [Fact]
    public void What_is_public_says_why_and_is_listed()
    {
        var open = EveryEndpoint.All().Where(endpoint => endpoint.Public is not null).ToList();

        Assert.Equal(string.Join(' ', Public), string.Join(' ', open.Select(endpoint => "/" + endpoint.Route.TrimStart('/')).Distinct().Order(StringComparer.Ordinal)));
        Assert.All(open, endpoint => Assert.NotEmpty(endpoint.Public!));
    }

    [Fact]
    public async Task Every_other_endpoint_asks_whoever_has_not_signed_in_to_do_so()
    {
        await people.ReadyAsync();
        using var stranger = new HttpPerson(people.App.Address);
        var closed = EveryEndpoint.All().Where(endpoint => endpoint.Public is null).ToList();
        Assert.True(closed.Count > 30, "The endpoints are found.");
        var faults = new List<string>();
        foreach (var endpoint in closed)
        {
            foreach (var method in endpoint.Methods)
            {
                var path = EveryEndpoint.Address(endpoint.Route, new Dictionary<string, string>());
                using var answer = await stranger.AskAsync(method, path, method == "GET" ? null : new StringContent("{}"));
                var asked = answer.StatusCode == HttpStatusCode.Unauthorized
                    || (answer.StatusCode == HttpStatusCode.Redirect && answer.Headers.Location!.ToString().Contains("/sign-in?to=", StringComparison.Ordinal));
                if (!asked)
                {
                    faults.Add($"{method} {path} of {endpoint.Route} answers {(int)answer.StatusCode}");
                }
            }
        }

        Assert.True(faults.Count == 0, string.Join(Environment.NewLine, faults));
    }

    // The press of a page is the one that was chosen last, in whatever tab: a form of another press's page arrives for it.
    [Fact]
    public async Task What_was_asked_on_the_page_of_another_press_is_not_made_for_this_one()
    {
        await people.ReadyAsync();
        var invitations = people.Stored.Services.GetRequiredService<InvitationStore>();
        var before = (await invitations.ListAsync(people.Stored.Press.Id)).Count;
        using var owner = await HttpPerson.SignedInAsync(people.App.Address, PeopleApp.Owner);
        var fields = new Dictionary<string, string> { ["InvitePress"] = people.Other.ToString(), ["Whom"] = "Somebody Else", ["Role"] = "Owner" };

        using (var refused = await owner.FillAsync("people", fields))
        {
            Assert.Contains("nothing was made", await refused.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        }

        Assert.Equal(before, (await invitations.ListAsync(people.Stored.Press.Id)).Count);
        using var made = await owner.FillAsync("people", new(fields) { ["InvitePress"] = people.Stored.Press.Id.ToString() });
        Assert.Contains("link-text", await made.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(before + 1, (await invitations.ListAsync(people.Stored.Press.Id)).Count);
    }

    // A link that lost or won a sign on its way: the way to the door would carry it along, into logs and histories.
    [Theory]
    [InlineData("q//a-secret")]
    [InlineData("Q//a-secret/quote.pdf")]
    [InlineData("q%2Fa-secret")]
    [InlineData("press/q/a-secret")]
    [InlineData("join//a-secret")]
    public async Task An_address_that_is_nearly_a_secret_link_is_sent_nowhere(string path)
    {
        await people.ReadyAsync();
        using var stranger = new HttpPerson(people.App.Address);
        using var answer = await stranger.AskAsync("GET", path);

        Assert.Equal((HttpStatusCode.NotFound, null), (answer.StatusCode, answer.Headers.Location));
        Assert.DoesNotContain("a-secret", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    // A page that waits for a line to the server would stay blank: whoever has not signed in gets none.
    [Fact]
    public async Task An_address_of_nothing_says_so_to_whoever_has_not_signed_in()
    {
        await people.ReadyAsync();
        using var stranger = new HttpPerson(people.App.Address);
        using var answer = await stranger.AskAsync("GET", "nowhere");

        var page = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("Nothing lies here", page, StringComparison.Ordinal);
        Assert.DoesNotContain("blazor.web", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_endpoint_tells_or_does_anything_of_a_press_by_its_ids_to_somebody_of_another()
    {
        // By itself: what others do in their journeys meanwhile is no deed of this stranger.
        await using var alone = new PeopleApp();
        await alone.ReadyAsync();
        var email = await alone.PersonAsync("Stranger", alone.Other, PressRole.Owner);
        var theirs = alone.Stored.Press;
        var book = await alone.Stored.BookAsync(EveryPage.Title, EveryPage.Printing);
        var plan = await alone.Stored.ChosenPlanAsync(book.Edition.Id);
        var ids = new Dictionary<string, string>
        {
            ["slug"] = book.Slug, ["printing"] = EveryPage.Printing.ToString(CultureInfo.InvariantCulture), ["id"] = plan.Plan.ShopId, ["shop"] = plan.Plan.ShopId,
            ["list"] = plan.Plan.PriceListId.ToString(),
        };
        // What only that press knows.
        var marks = new[] { theirs.Name, EveryPage.Title.Replace("'", "&#x27;", StringComparison.Ordinal), EveryPage.Title };
        using var stranger = await HttpPerson.SignedInAsync(alone.App.Address, email, theirs.Id.ToString());
        using var insider = await HttpPerson.SignedInAsync(alone.App.Address, PeopleApp.Owner, theirs.Id.ToString());
        var before = await alone.Stored.ArchiveAsync();
        var (faults, told) = (new List<string>(), 0);
        foreach (var endpoint in EveryEndpoint.All().Where(endpoint => endpoint.Methods.Contains("GET") && !endpoint.Route.Contains("_blazor", StringComparison.Ordinal)))
        {
            var path = EveryEndpoint.Address(endpoint.Route, ids) + $"?plan={plan.Plan.Id}&press={theirs.Id}";
            using var answer = await stranger.AskAsync("GET", path);
            var text = await answer.Content.ReadAsStringAsync();
            faults.AddRange(marks.Where(mark => text.Contains(mark, StringComparison.Ordinal)).Select(mark => $"{path} tells of {mark}"));
            using var own = await insider.AskAsync("GET", path);
            told += marks.Any((await own.Content.ReadAsStringAsync()).Contains) ? 1 : 0;
        }

        Assert.True(faults.Count == 0, string.Join(Environment.NewLine, faults));
        Assert.True(told > 10, $"The same addresses tell somebody of the press about it: {told}.");
        foreach (var endpoint in EveryEndpoint.All().Where(endpoint => endpoint.Route.StartsWith("/people/", StringComparison.Ordinal)))
        {
            var owner = alone.Stored.UserId(PeopleApp.Owner);
            using var answer = await stranger.SendAsync("account", EveryEndpoint.Address(endpoint.Route, ids), new()
            {
                ["press"] = theirs.Id.ToString(), ["user"] = owner.ToString(), ["role"] = "Reader", ["invitation"] = owner.ToString(), ["key"] = owner.ToString(),
            });
            Assert.Equal((endpoint.Route, HttpStatusCode.Forbidden), (endpoint.Route, answer.StatusCode));
        }

        Assert.Equal(before, await alone.Stored.ArchiveAsync());
    }

    // A form is read whole before anybody is asked who they are.
    [Theory]
    [InlineData("sign-in")]
    [InlineData("first-owner")]
    [InlineData("new-password")]
    [InlineData("join/no-such-secret")]
    [InlineData("sign-in/passkey")]
    public async Task A_form_that_is_larger_than_any_of_the_pages_is_not_read(string page)
    {
        using var stranger = new HttpPerson(people.App.Address);
        using var answer = await stranger.AskAsync("POST", page, new FormUrlEncodedContent([new("Email", new string('x', 70_000))]));

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
    }

    [Theory]
    [InlineData("9")]
    [InlineData("-1")]
    public async Task Nobody_is_invited_as_what_there_is_not(string role)
    {
        await people.ReadyAsync();
        using var owner = await HttpPerson.SignedInAsync(people.App.Address, PeopleApp.Owner);
        using var answer = await owner.FillAsync("people", new() { ["Press"] = people.Stored.Press.Id.ToString(), ["Whom"] = "Nobody at all", ["Role"] = role });

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.DoesNotContain("Nobody at all", await (await owner.AskAsync("GET", "people")).Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    // JSON is UTF-8 (RFC 8259, 8.1); another alphabet is no fault of the server's.
    [Theory]
    [InlineData("application/json; charset=nonsense", HttpStatusCode.UnsupportedMediaType)]
    [InlineData("application/json; charset=utf-7", HttpStatusCode.UnsupportedMediaType)]
    [InlineData("application/json; charset=", HttpStatusCode.UnsupportedMediaType)]
    [InlineData("application/json; charset=\"UTF-8\"", HttpStatusCode.BadRequest)]
    [InlineData("application/json", HttpStatusCode.BadRequest)]
    public async Task A_message_of_a_kept_page_is_taken_in_its_one_alphabet_and_refused_in_any_other(string kind, HttpStatusCode expected)
    {
        await people.ReadyAsync();
        using var owner = await HttpPerson.SignedInAsync(people.App.Address, PeopleApp.Owner);
        foreach (var path in new[] { "fair/entries", "tally/begin", "tally/entries" })
        {
            using var body = new StringContent("{}");
            body.Headers.Remove("Content-Type");
            body.Headers.TryAddWithoutValidation("Content-Type", kind);
            using var answer = await owner.AskAsync("POST", path, body);
            Assert.Equal((path, expected), (path, answer.StatusCode));
        }
    }

    [Fact]
    public async Task No_form_is_taken_without_the_token_of_its_page()
    {
        await people.ReadyAsync();
        using var owner = await HttpPerson.SignedInAsync(people.App.Address, PeopleApp.Owner);
        foreach (var endpoint in EveryEndpoint.All().Where(endpoint => endpoint.Methods.Contains("POST") && !endpoint.Route.StartsWith("/api/", StringComparison.Ordinal) && !endpoint.Route.Contains('_')))
        {
            var path = EveryEndpoint.Address(endpoint.Route, new Dictionary<string, string> { ["printing"] = "1" });
            using var form = new FormUrlEncodedContent([new("session", Guid.NewGuid().ToString()), new("press", people.Other.ToString()), new("user", Guid.NewGuid().ToString()), new("role", "Reader")]);
            using var answer = await owner.AskAsync("POST", path, form);
            Assert.True(answer.StatusCode is HttpStatusCode.BadRequest or HttpStatusCode.MethodNotAllowed or HttpStatusCode.NotFound or HttpStatusCode.UnsupportedMediaType, $"{path} answers {(int)answer.StatusCode}");
        }

        using var still = await owner.AskAsync("GET", "account");
        Assert.Equal(HttpStatusCode.OK, still.StatusCode);
    }

    [Theory]
    [InlineData("livez")]
    [InlineData("readyz")]
    public async Task A_supervisor_may_ask_for_the_answer_without_its_body(string path)
    {
        await people.ReadyAsync();
        using var supervisor = new HttpPerson(people.App.Address);
        using var whole = await supervisor.AskAsync("GET", path);
        using var head = await supervisor.AskAsync("HEAD", path);

        Assert.Equal((HttpStatusCode.OK, whole.Content.Headers.ContentType), (head.StatusCode, head.Content.Headers.ContentType));
        Assert.Empty(await head.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
    }
}
