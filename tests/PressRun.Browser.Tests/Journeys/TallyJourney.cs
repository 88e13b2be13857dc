using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Bench;
using PressRun.Data.Copies;
using PressRun.Data.RunPlans;
using PressRun.Data.Tallies;
using PressRun.Engine.Bench;
using PressRun.Engine.Copies;
using PressRun.Web.Libraries;
using PressRun.Web.Tallies;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

/// <summary>Counting at the binding table with phones.</summary>
public sealed class TallyJourney(Chromium chromium, OwnApp own) : IClassFixture<OwnApp>
{
    private readonly AppProcess app = own.App;

    [Fact]
    public async Task Two_phones_count_in_one_tally_and_see_each_other()
    {
        await using var stored = await Stored.OpenAsync(app);
        var book = await BoundHereAsync(stored, 0);
        await using var ada = await BeganAsync(book, copies: 110, wanted: 100);
        await using var ben = await Phones.OpenAsync(chromium, app, Path(book));
        await NameAsync(ada, "Ada");
        await NameAsync(ben, "Ben");
        await TapAsync(ada, "done", 10, 5, 1);
        await TapAsync(ada, "spoiled", 1);
        await Expect(Left(ben)).ToHaveTextAsync("93");
        await TapAsync(ben, "done", 10);
        await Expect(Left(ada)).ToHaveTextAsync("83");
        await Expect(ada.Page.Locator("[data-tally-people]")).ToHaveTextAsync("\u2068Ada\u2069 16, \u2068Ben\u2069 10");
        await Expect(ada.Page.Locator("[data-tally-enough]")).ToContainTextAsync("9 more copies may go wrong");

        // What went wrong at the first step never comes to the second.
        await ben.Page.Locator("[data-tally-go]").Nth(1).ClickAsync();
        await Expect(Left(ben)).ToHaveTextAsync("109");
        await ada.Page.GetByRole(AriaRole.Button, new() { Name = "Undo 1 spoiled" }).ClickAsync();
        await Expect(Left(ben)).ToHaveTextAsync("110");
        await Expect(Left(ada)).ToHaveTextAsync("84");
        // The last handful is no more than is left.
        await TapAsync(ada, "done", 10, 10, 10, 10, 10, 10, 10, 10, 10);
        await Expect(Left(ada)).ToHaveTextAsync("0");
        await Expect(ada.Page.Locator("[data-tally-done]")).ToContainTextAsync("110 done");
        await Expect(ada.Page.GetByRole(AriaRole.Button, new() { Name = "+5 copies done" })).ToBeDisabledAsync();
        await Expect(State(ada)).ToHaveTextAsync("All of it is in the tally.");
        var sums = (await TallyAsync(stored, book)).Sums();
        Assert.Equal((110, 0, 0), (sums.Steps[0].Done, sums.Steps[0].Spoiled, sums.Steps[0].Left));
        ada.WasQuiet();
        ben.WasQuiet();
    }

    [Fact]
    public async Task What_was_counted_without_a_connection_without_an_answer_and_without_a_server_arrives_once()
    {
        Book book;
        await using (var stored = await Stored.OpenAsync(app))
        {
            book = await BoundHereAsync(stored, 1);
        }

        await using var phone = await BeganAsync(book, copies: 60, wanted: 50);
        await Expect(phone.Page.GetByText("This page opens on this phone without a connection.")).ToBeVisibleAsync();
        await phone.Page.Context.SetOfflineAsync(true);
        await TapAsync(phone, "done", 10, 5);
        await TapAsync(phone, "spoiled", 1, 1);
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Undo 1 spoiled" }).ClickAsync();
        await Expect(State(phone)).ToHaveTextAsync("3 entries are kept here until there is a connection.");
        await Expect(Left(phone)).ToHaveTextAsync("44");
        var sent = await Phones.LoseFirstAnswerAsync(phone, "tally/entries");
        await phone.Page.Context.SetOfflineAsync(false);
        await Expect(State(phone)).ToHaveTextAsync("All of it is in the tally.");
        Assert.True(sent() > 1, "The phone sent again what it had no answer to.");
        await phone.Page.UnrouteAllAsync();

        await app.KillAsync();
        await TapAsync(phone, "done", 1, 1);
        await phone.Page.ReloadAsync();
        await phone.AnswersAsync();
        await Expect(Left(phone)).ToHaveTextAsync("42");
        // Taken back after it may have arrived: 10, then the page is closed and opened from what the phone keeps.
        await phone.Page.GetByText("What was written here", new() { Exact = true }).ClickAsync();
        await phone.Page.Locator("[data-tally-lines] li").Last.GetByRole(AriaRole.Button).ClickAsync();
        await Expect(Left(phone)).ToHaveTextAsync("52");
        var again = await phone.Page.Context.NewPageAsync();
        await phone.Page.CloseAsync();
        await again.GotoAsync(Path(book));
        await Expect(again.Locator("[data-tally-state]")).ToContainTextAsync("3 entries are");

        await app.StartAsync();
        await Expect(again.Locator("[data-tally-state]")).ToHaveTextAsync("All of it is in the tally.");
        await Expect(again.Locator("[data-tally-left]")).ToHaveTextAsync("52");
        await using var now = await Stored.OpenAsync(app);
        var whole = await TallyAsync(now, book);
        Assert.Equal([10, 5, 1, -10, 1, 1], whole.Entries.Select(entry => entry.Copies));
        Assert.Equal((7, 1), (whole.Sums().Steps[0].Done, whole.Sums().Steps[0].Spoiled));
    }

    [Fact]
    public async Task Minutes_are_counted_by_a_clock_that_no_date_alters_and_a_forgotten_one_is_asked_about()
    {
        await using var stored = await Stored.OpenAsync(app);
        var book = await BoundHereAsync(stored, 2);
        await using var first = await BeganAsync(book, copies: 60, wanted: 50);
        await using var phone = await Visit.BeginAsync(chromium.Browser, app.Address);
        var clock = phone.Page.Clock;
        var morning = new DateTime(2026, 11, 28, 9, 0, 0, DateTimeKind.Utc);
        await clock.InstallAsync(new() { TimeDate = morning });
        await phone.OpenAsync(Path(book));
        await clock.PauseAtAsync(morning.AddHours(1));
        var start = phone.Page.Locator("[data-tally-start]");
        await start.ClickAsync();
        await clock.FastForwardAsync("05:00");
        await Expect(phone.Page.Locator("[data-tally-time]")).ToHaveTextAsync("5:00");
        // Somebody sets the phone's date, and sets it again.
        await clock.SetSystemTimeAsync(morning.AddYears(1));
        await TapAsync(phone, "done", 10);
        await clock.SetSystemTimeAsync(morning.AddDays(-3));
        await clock.FastForwardAsync("05:00");
        await start.ClickAsync();
        await Expect(phone.Page.Locator("[data-tally-done]")).ToHaveTextAsync("10 done, 10 min of work");

        await start.ClickAsync();
        await clock.FastForwardAsync("03:00:00");
        var asked = phone.Page.GetByRole(AriaRole.Group, new() { Name = "Time without a tap" });
        await Expect(asked).ToContainTextAsync("3 h 0 min at");
        await TapAsync(phone, "done", 5);
        await asked.GetByLabel("Only minutes").FillAsync("25");
        await asked.GetByRole(AriaRole.Button, new() { Name = "Count them" }).ClickAsync();
        await Expect(asked).ToBeHiddenAsync();
        await start.ClickAsync();
        await Eventually.HoldsAsync(
            async () =>
            {
                await clock.FastForwardAsync(1000);
                return (await TallyAsync(stored, book)).Sums() is { Good: 15, Seconds: 2100 };
            },
            "10 and 25 minutes are in the tally");
        first.WasQuiet();
    }

    [Fact]
    public async Task What_was_counted_is_looked_over_goes_into_the_ledger_and_into_the_learned_rates()
    {
        await using var stored = await Stored.OpenAsync(app);
        var book = await BoundHereAsync(stored, 3);
        await using var phone = await BeganAsync(book, copies: 30, wanted: 25);
        var tally = (await TallyAsync(stored, book)).Tally;
        var press = stored.Press.Id;
        var bench = (await stored.Services.GetRequiredService<BenchStore>().LoadAsync(press))!.Item;
        var (rated, place) = tally.Steps.Select((step, at) => (step, at)).First(step => bench.Steps.Any(known => known.Name == step.step.Name && known.SecondsPerCopy > 0));
        var (before, learned) = (await PrintedAsync(stored, book), await LearnedAsync());
        // At one step two people worked for a quarter of an hour each and spoiled two copies; at the others one.
        var counted = tally.Steps.SelectMany((_, step) => new[] { Entry(step, TallyKind.Done, step == place ? 28 : 27, 0, "Ada"), Entry(step, TallyKind.Worked, 0, 900, "Ada") })
            .Append(Entry(place, TallyKind.Worked, 0, 900, "Ben")).Append(Entry(place, TallyKind.Spoiled, 2, 0, "Ben"));
        Assert.All((await stored.Services.GetRequiredService<TallyStore>().WriteAsync(press, tally.Id, [.. counted]))!, outcome => Assert.Null(outcome.Problem));

        await Expect(phone.Page.Locator("[data-tally-sum]")).ToContainTextAsync("2 copies were spoiled");
        await phone.Page.GetByRole(AriaRole.Link, new() { Name = "Look the figures over for the ledger" }).ClickAsync();
        await phone.Page.WaitForURLAsync("**/copies?tally=*");
        await phone.AnswersAsync();
        await Expect(phone.Page.Locator(".tally-summary")).ToContainTextAsync($"{TallyWords.Time((tally.Steps.Count + 1) * 900)} of work");
        await Expect(phone.Field($"Minutes, {rated.Name}")).ToHaveValueAsync("30");
        await Expect(phone.Field($"Copies that went in, {rated.Name}")).ToHaveValueAsync("30");
        await Expect(phone.Field($"Went wrong, {rated.Name}")).ToHaveValueAsync("2");
        Assert.Equal(before.Count, (await PrintedAsync(stored, book)).Count);
        await phone.TypeAsync("Copies", "27");
        await phone.TypeAsync("The shop's invoice, with delivery and tax", "80");
        await phone.EnterAsync($"Minutes, {rated.Name}", "28");
        await Expect(phone.Page.Locator(".over-sheet > [role=status]")).ToContainTextAsync("Written down: ");

        var printed = Assert.Single((await PrintedAsync(stored, book)).ExceptBy(before.Select(line => line.Id), line => line.Id));
        Assert.Equal(27, printed.Movement.Copies);
        Assert.Equal(new StepActual(rated.Name, 28m, 30, 2), printed.Printing!.Steps[place]);
        Assert.All(printed.Printing.Steps.Where((_, step) => step != place), step => Assert.Equal((15m, 27, 0), (step.Minutes, step.Started, step.Spoiled)));
        var now = await LearnedAsync();
        Assert.Equal((learned.Copies + 30, learned.Spoiled + 2), (now.Copies, now.Spoiled));
        await phone.OpenAsync(Path(book));
        await Expect(phone.Page.Locator(".sentence").First).ToContainTextAsync("This tally stands in the ledger: 27 good copies");

        // Its line is taken back in the ledger, on screen: the tally goes on from where it stood.
        await phone.OpenAsync(book.Path + "/copies");
        await phone.Page.Locator("table.ledger").GetByRole(AriaRole.Button, new() { Name = "Take back 27 copies printed on" }).First.ClickAsync();
        await Expect(phone.Page.Locator(".over-sheet > [role=status]")).ToContainTextAsync("Taken back: ");
        await phone.OpenAsync(Path(book));
        await Expect(phone.Page.Locator("[data-tally-sum]")).ToContainTextAsync("2 copies were spoiled");
        await TapAsync(phone, "done", 1);
        await Expect(State(phone)).ToHaveTextAsync("All of it is in the tally.");
        Assert.Equal(tally.Id, (await TallyAsync(stored, book)).Tally.Id);
        Assert.Null((await TallyAsync(stored, book)).Tally.Written);

        static NewTallyEntry Entry(int step, TallyKind kind, int copies, int seconds, string by) => new(Guid.NewGuid(), new TallyEntry(step, kind, copies, seconds, by), TimeSpan.Zero, false);

        async Task<(long Copies, long Spoiled)> LearnedAsync()
        {
            var service = new LearnedRatesService(stored.Services.GetRequiredService<CopiesLedgerStore>(), stored.Services.GetRequiredService<PlanStore>());
            return (await service.LearnAsync(press, bench)).Where(rate => rate.Now.Name == rated.Name).Select(rate => (rate.Copies, rate.Spoiled)).SingleOrDefault();
        }
    }

    [Fact]
    public async Task Everything_to_tap_is_large_enough_for_a_finger()
    {
        await using var stored = await Stored.OpenAsync(app);
        await using var phone = await BeganAsync(await BoundHereAsync(stored, 4), copies: 60, wanted: 50);
        await TapAsync(phone, "done", 10);
        await phone.Page.Locator("[data-tally-asked]").EvaluateAsync("asked => { asked.hidden = false; }");
        Assert.Empty(await Phones.SmallAsync(phone));
    }

    [Fact]
    public async Task Only_messages_of_this_hosts_own_pages_in_the_right_shape_and_for_this_press_are_taken()
    {
        await using var stored = await Stored.OpenAsync(app);
        var book = await BoundHereAsync(stored, 5);
        await using var phone = await BeganAsync(book, copies: 60, wanted: 50);
        var (press, tally) = (stored.Press.Id.Value, (await TallyAsync(stored, book)).Tally.Id);
        var entry = $$"""{"id":"{{Guid.NewGuid()}}","step":0,"kind":"done","copies":5,"seconds":0,"by":"Ada","ago":3,"takenBack":false}""";
        Assert.Equal(HttpStatusCode.Forbidden, await SendAsync(Message(press, tally, entry), origin: "https://elsewhere.example"));
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, await SendAsync(Message(press, tally, entry), type: "text/plain"));
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, await SendAsync(Message(press, tally, entry) + new string(' ', 70_000)));
        Assert.Equal(HttpStatusCode.BadRequest, await SendAsync(Message(press, tally, string.Join(",", Enumerable.Repeat(entry, 101)))));
        Assert.Equal(HttpStatusCode.BadRequest, await SendAsync(Message(press, tally, "null")));
        Assert.Equal(HttpStatusCode.BadRequest, await SendAsync(Message(press, tally, entry.Replace("done", "eaten", StringComparison.Ordinal))));
        Assert.Equal(HttpStatusCode.BadRequest, await SendAsync("{"));
        Assert.Equal(HttpStatusCode.NotFound, await SendAsync(Message(Guid.NewGuid(), tally, entry)));
        Assert.Equal(HttpStatusCode.NotFound, await SendAsync(Message(press, Guid.NewGuid(), entry)));
        Assert.Equal(HttpStatusCode.BadRequest, await Phones.SendAsync(app, "tally/begin", $$"""{"press":"{{press}}"}"""));
        Assert.Equal(0, (await TallyAsync(stored, book)).Tally.Lines);
        Assert.Equal(HttpStatusCode.OK, await SendAsync(Message(press, tally, string.Join(",", Enumerable.Repeat(entry, 100)))));
        Assert.Equal(5, (await TallyAsync(stored, book)).Sums().Steps[0].Done);

        Task<HttpStatusCode> SendAsync(string body, string type = "application/json", string? origin = null) => Phones.SendAsync(app, "tally/entries", body, type, origin);

        static string Message(Guid press, Guid tally, string entries) => $$"""{"press":"{{press}}","tally":"{{tally}}","entries":[{{entries}}]}""";
    }

    // The sample's printings with work at the table of more than one step, so that each journey has one of its own.
    private static async Task<Book> BoundHereAsync(Stored stored, int place)
    {
        var found = new List<Book>();
        foreach (var title in (await stored.FindAsync("")).Titles)
        {
            foreach (var edition in title.Editions.Where(edition => edition.Plan is not null))
            {
                if (TallyService.WorkOf(await stored.ChosenPlanAsync(edition.Id), BenchLimits.Usual) is { Steps.Count: > 1 })
                {
                    found.Add(new Book(title.Slug, (await stored.EditionAsync(title.Slug, edition.Printing))!));
                }
            }
        }

        return found[place];
    }

    private async Task<Visit> BeganAsync(Book book, int copies, int wanted)
    {
        var phone = await Phones.OpenAsync(chromium, app, Path(book));
        await phone.TypeAsync("Copies on the table", copies.ToString(System.Globalization.CultureInfo.InvariantCulture));
        await phone.TypeAsync("Good copies wanted", wanted.ToString(System.Globalization.CultureInfo.InvariantCulture));
        await phone.Page.GetByRole(AriaRole.Button, new() { Name = "Begin the tally" }).ClickAsync();
        await phone.Page.Locator("[data-tally]").WaitForAsync();
        await phone.AnswersAsync();
        return phone;
    }

    private static string Path(Book book) => book.Path + "/tally";

    private static ILocator Left(Visit phone) => phone.Page.Locator("[data-tally-left]");

    private static ILocator State(Visit phone) => phone.Page.Locator("[data-tally-state]");

    private static async Task NameAsync(Visit phone, string name)
    {
        await phone.Field("Who counts on this phone").FillAsync(name);
        await phone.Field("Who counts on this phone").PressAsync("Tab");
    }

    private static async Task TapAsync(Visit phone, string kind, params int[] copies)
    {
        foreach (var number in copies)
        {
            await phone.Page.Locator($"[data-tally-count={kind}][data-copies='{number}']").ClickAsync();
        }
    }

    private static async Task<TallyWhole> TallyAsync(Stored stored, Book book) =>
        (await stored.Services.GetRequiredService<TallyStore>().LatestAsync(stored.Press.Id, book.Edition.Id))!;

    private static async Task<IReadOnlyList<MovementRecord>> PrintedAsync(Stored stored, Book book) =>
        [.. (await stored.LedgerAsync(book.Edition.Id)).Where(line => line.Movement.Kind == MovementKind.Printed)];
}
