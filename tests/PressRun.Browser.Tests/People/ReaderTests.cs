using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Components;
using PressRun.Browser.Tests.Pages;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Access;
using PressRun.Web.Layout;
using PressRun.Web.People;

namespace PressRun.Browser.Tests.People;

/// <summary>What the pages offer somebody who may only read: what looks, and nothing that a store would refuse.</summary>
public sealed partial class ReaderTests(Chromium chromium, PeopleApp people)
{
    // Every control of the pages that changes only what is shown, by its page and what it is called. One that is new is decided here.
    private static readonly (string Route, string Called)[] Looks =
    [
        ("/bench", "select For the run"), ("/bench", "input .* at (the shop|your own table), (the shop's|your) way"),
        ("/(papers|post|selling|shops)", "input show archived ones"), ("/post", @"input show past prices \d+"),
        ("/shelf", "input Find.*"), ("/shelf", "button Show .* more"),
        ("/start", "button Pilchard Stairs"),
        (".*/copies", "input How it stood at the end of"), (".*/copies", @"button \w+ \d{4}"), (".*/copies", "button Open all months"),
        (".*/papers", "select (Plan|Part|One half on|The other half on)"), (".*/papers", "button (?!Use this paper).*"), (".*/papers", "input .*"),
        (".*/post", "select Plan"),
        (".*/imposition", "select Both sides turned"),
        (".*/payouts", "input (First|Last) day"),
        (".*/run", "select Compare with"), (".*/run", "input Work it out as of"), (".*/run", "button Work it out"),
    ];

    // Controls that can be seen and used, and links that lead to pages which change something, as lines. The calendar behind a field for a day is that field.
    private const string Offered = """
        () => [...document.querySelectorAll('main :is(button, input, select, textarea):enabled, main a[href]')]
          .filter(one => one.checkVisibility() && !one.readOnly && !one.closest('.term, .day-pick'))
          .map(one => one.localName === 'a' ? `link ${one.getAttribute('href')}`
            : `${one.localName} ${(one.getAttribute('aria-label') ?? one.labels?.[0]?.innerText ?? one.innerText).replace(/\s+/g, ' ').trim()}`)
        """;

    [Fact]
    public async Task A_reader_is_offered_on_no_page_what_would_be_refused()
    {
        await people.ReadyAsync();
        var email = await people.PersonAsync("Looker", people.Stored.Press.Id, PressRole.Reader);
        var book = await people.Stored.BookAsync(EveryPage.Title, EveryPage.Printing);
        var plan = (await people.Stored.ChosenPlanAsync(book.Edition.Id)).Plan;
        await using var visit = await people.SignInAsync(chromium, email);
        var faults = new List<string>();

        // Of the page that says that nothing is here a browser says in its console that it is not. At a fair a reader is told by a page without a circuit that it is
        // for editors, as the next test tries.
        foreach (var route in EveryPage.Routes().Select(row => row.Data).Where(route => route != PageHeaders.NothingHere && route != "/fair"))
        {
            await visit.OpenAsync(EveryPage.Address(route, book.Slug, plan));
            await visit.Page.EvaluateAsync("() => document.querySelectorAll('main details').forEach(details => { details.open = true; })");
            var offered = await visit.Page.EvaluateAsync<string[]>(Offered);
            faults.AddRange(offered.Where(one => IsFault(route, one)).Select(one => $"{route}: {one}").Distinct());
        }

        Assert.True(faults.Count == 0, string.Join(Environment.NewLine, faults));
        visit.WasQuiet();
    }

    [Fact]
    public async Task A_page_that_changes_something_says_to_a_reader_that_it_is_for_editors()
    {
        await people.ReadyAsync();
        var email = await people.PersonAsync("Peeker", people.Stored.Press.Id, PressRole.Reader);
        var book = await people.Stored.BookAsync(EveryPage.Title, EveryPage.Printing);
        var plan = (await people.Stored.ChosenPlanAsync(book.Edition.Id)).Plan;
        using var reader = await HttpPerson.SignedInAsync(people.App.Address, email);
        using var owner = await HttpPerson.SignedInAsync(people.App.Address, PeopleApp.Owner);
        var pages = EditingRoutes().ToList();
        Assert.True(pages.Count > 8, "They are found.");
        foreach (var route in pages)
        {
            Assert.True((await AskAsync(reader, route)).Contains("<h1>For editors</h1>", StringComparison.Ordinal), route);
            Assert.False((await AskAsync(owner, route)).Contains("<h1>For editors</h1>", StringComparison.Ordinal), route);
        }

        async Task<string> AskAsync(HttpPerson person, string route)
        {
            using var answer = await person.AskAsync("GET", EveryPage.Address(route, book.Slug, plan));
            return await answer.Content.ReadAsStringAsync();
        }
    }

    private static bool IsFault(string route, string offered) => offered.StartsWith("link ", StringComparison.Ordinal)
        ? EditingRoutes().Any(editing => Regex.IsMatch(offered, $"^link /?{Parameter().Replace(editing[1..], "[^/]+")}([?#].*)?$"))
        : !Looks.Any(look => Regex.IsMatch(route, $"^{look.Route}$") && Regex.IsMatch(offered, $"^{look.Called}$"));

    private static IEnumerable<string> EditingRoutes() => typeof(EditsAttribute).Assembly.GetTypes()
        .Where(type => type.IsDefined(typeof(EditsAttribute), false))
        .SelectMany(type => type.GetCustomAttributes<RouteAttribute>(false).Select(route => route.Template));

    [GeneratedRegex(@"\{\w+(:\w+)?\}")]
    private static partial Regex Parameter();
}
