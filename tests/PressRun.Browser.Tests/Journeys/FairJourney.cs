using System.Globalization;
using System.Net;
using Microsoft.Playwright;
using PressRun.Browser.Tests.Running;
using PressRun.Data.Copies;
using PressRun.Engine.Copies;
using static Microsoft.Playwright.Assertions;

namespace PressRun.Browser.Tests.Journeys;

/// <summary>Selling at a fair with a phone.</summary>
public sealed class FairJourney(Chromium chromium, OwnApp own) : IClassFixture<OwnApp>
{
    private readonly AppProcess app = own.App;

    [Fact]
    public async Task What_two_phones_sold_without_a_connection_arrives_once_whatever_happened_to_the_answers()
    {
        await using var stored = await Stored.OpenAsync(app);
        var gulls = await stored.BookAsync("Gulls v. the Harbour Board", 2);
        var lamp = await stored.BookAsync("The Lamp That Counted Boats", 3);
        var (gullsBefore, lampBefore) = (await SalesAsync(stored, gulls), await SalesAsync(stored, lamp));
        await using var first = await PhoneAsync();
        await using var second = await PhoneAsync();
        await first.Field("Sold through").SelectOptionAsync("Fair table");
        await first.EnterAsync("Which fair", "Quay fair");
        await first.Page.Context.SetOfflineAsync(true);
        await second.Page.Context.SetOfflineAsync(true);
        await TapAsync(first, gulls, 3);
        await TapAsync(first, lamp, 1);
        await first.Page.GetByRole(AriaRole.Button, new() { Name = "Undo The Lamp That Counted Boats" }).ClickAsync();
        await TapAsync(second, gulls, 2);
        await Expect(Sum(first)).ToContainTextAsync($"3 copies for {stored.Format.Money(3 * gulls.Edition.Price)}");
        await Expect(State(first)).ToHaveTextAsync("3 entries are kept here until there is a connection.");
        Assert.Equal(gullsBefore.Count, (await SalesAsync(stored, gulls)).Count);

        var lost = await Phones.LoseFirstAnswerAsync(first, "fair/entries");
        await first.Page.Context.SetOfflineAsync(false);
        await second.Page.Context.SetOfflineAsync(false);
        await Expect(State(second)).ToHaveTextAsync("All of it is in the ledger.");
        await Expect(State(first)).ToHaveTextAsync("All of it is in the ledger.");
        Assert.True(lost() > 1, "The phone sent again what it had no answer to.");

        var sold = (await SalesAsync(stored, gulls)).ExceptBy(gullsBefore.Select(line => line.Id), line => line.Id).ToList();
        Assert.Equal(5, sold.Count);
        Assert.All(sold, line => Assert.Equal((-1, gulls.Edition.Price, null), (line.Movement.Copies, line.Movement.Amount, line.TakesBack)));
        Assert.Equal(3, sold.Count(line => line is { ChannelId: "fair-table", Note: "Quay fair" }));
        Assert.Equal(lampBefore.Count, (await SalesAsync(stored, lamp)).Count);
        await Expect(Button(first, gulls).Locator("[data-fair-left]")).ToHaveTextAsync(stored.Format.Count((await stored.OnHandAsync(gulls.Edition.Id)).OnHand));
        second.WasQuiet();
    }

    [Fact]
    public async Task The_page_opens_again_while_the_server_is_gone_and_what_was_sold_arrives_when_it_is_back()
    {
        Book book;
        int before;
        await using (var stored = await Stored.OpenAsync(app))
        {
            book = await stored.BookAsync("Lantern Club Winter Broadside", 1);
            before = (await SalesAsync(stored, book)).Count;
        }

        await using var phone = await PhoneAsync();
        await Expect(phone.Page.GetByText("This page opens on this phone without a connection.")).ToBeVisibleAsync();
        await TapAsync(phone, book, 1);
        await Expect(State(phone)).ToHaveTextAsync("All of it is in the ledger.");
        await app.KillAsync();

        await TapAsync(phone, book, 2);
        await phone.Page.ReloadAsync();
        await phone.AnswersAsync();
        await Expect(Sum(phone)).ToContainTextAsync("3 copies");
        // The first one that has arrived is taken back, and one more is sold than the ledger knows of.
        await phone.Page.GetByText("What was written here", new() { Exact = true }).ClickAsync();
        await phone.Page.Locator("[data-fair-lines] li").Last.GetByRole(AriaRole.Button).ClickAsync();
        await TapAsync(phone, book, 1);
        var again = await phone.Page.Context.NewPageAsync();
        await phone.Page.CloseAsync();
        await again.GotoAsync("fair");
        await Expect(again.Locator("[data-fair-copies]")).ToHaveTextAsync("3");
        await Expect(again.Locator("[data-fair-state]")).ToContainTextAsync("4 entries are");

        await app.StartAsync();
        // Pressed where the phone has not sent by itself in the meantime; a message that is under way and fails is sent anew then.
        await again.Locator("[data-fair-send]").EvaluateAsync("button => button.click()");
        await Expect(again.Locator("[data-fair-state]")).ToHaveTextAsync("All of it is in the ledger.");
        await using var now = await Stored.OpenAsync(app);
        var sales = await SalesAsync(now, book);
        Assert.Equal(before + 5, sales.Count);
        Assert.Single(sales, line => line.TakesBack is not null);
        Assert.Equal(new CopiesOnHand(book.Edition.CopiesOnHand - 3, true), await now.OnHandAsync(book.Edition.Id));
    }

    [Fact]
    public async Task Whoever_asks_to_send_while_a_message_is_under_way_that_is_lost_waits_for_no_pause()
    {
        await using var stored = await Stored.OpenAsync(app);
        var book = await stored.BookAsync("Gulls v. the Harbour Board", 2);
        var before = (await SalesAsync(stored, book)).Count;
        await using var phone = await PhoneAsync();
        // Pauses never end by themselves: the phone's time stands still.
        var now = TimeProvider.System.GetUtcNow().UtcDateTime;
        await phone.Page.Clock.InstallAsync(new() { TimeDate = now.AddMinutes(-2) });
        await phone.Page.Clock.PauseAtAsync(now.AddMinutes(-1));
        var (asked, sent) = (new TaskCompletionSource(), 0);
        await phone.Page.RouteAsync("**/fair/entries", async route =>
        {
            if (Interlocked.Increment(ref sent) == 1)
            {
                await asked.Task;
                await route.AbortAsync();
            }
            else
            {
                await route.ContinueAsync();
            }
        });
        await TapAsync(phone, book, 1);
        await Expect(State(phone)).ToHaveTextAsync("1 entry is under way to the ledger.");
        await phone.Page.EvaluateAsync("() => dispatchEvent(new Event('online'))");
        asked.SetResult();
        await Expect(State(phone)).ToHaveTextAsync("1 entry is kept here, tried again by itself.");
        await phone.Page.Clock.RunForAsync(1);
        await Expect(State(phone)).ToHaveTextAsync("All of it is in the ledger.");
        Assert.Equal(before + 1, (await SalesAsync(stored, book)).Count);
    }

    [Theory]
    [InlineData(30)]
    [InlineData(-3)]
    public async Task What_a_phone_sells_whose_clock_is_days_off_stands_under_the_day_of_the_server(int days)
    {
        await using var stored = await Stored.OpenAsync(app);
        var book = await stored.BookAsync("Gulls v. the Harbour Board", 2);
        var before = await SalesAsync(stored, book);
        await using var phone = await PhoneAsync();
        await phone.Page.Clock.SetFixedTimeAsync(TimeProvider.System.GetUtcNow().UtcDateTime.AddDays(days));
        await TapAsync(phone, book, 2);
        await Expect(State(phone)).ToHaveTextAsync("All of it is in the ledger.");
        await Expect(phone.Page.Locator("[data-fair-clock]")).ToHaveTextAsync("The clock of this phone is wrong, so the day is the server's.");
        await TapAsync(phone, book, 1);
        await Expect(Sum(phone)).ToContainTextAsync("3 copies for");
        await Eventually.HoldsAsync(async () => (await SalesAsync(stored, book)).Count == before.Count + 3, "all three are in the ledger");
        var sold = (await SalesAsync(stored, book)).ExceptBy(before.Select(line => line.Id), line => line.Id);
        var now = DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime);
        Assert.All(sold, line => Assert.InRange(line.Movement.Day, now.AddDays(-1), now));
    }

    [Fact]
    public async Task What_the_ledger_does_not_take_says_why_and_keeps_nothing_else_out()
    {
        await using var stored = await Stored.OpenAsync(app);
        var book = await stored.BookAsync("Tarpaulin Weather", 2);
        var before = (await SalesAsync(stored, book)).Count;
        await using var phone = await PhoneAsync();
        // A name that the field cannot hold, as something else than the page might write it.
        var field = phone.Field("Which fair");
        await field.EvaluateAsync("field => { field.value = 'n'.repeat(501); }");
        await TapAsync(phone, book, 1);
        await Expect(State(phone)).ToContainTextAsync("1 was not taken");
        await field.FillAsync("Quay fair");
        await TapAsync(phone, book, 1);
        await Expect(Sum(phone)).ToContainTextAsync("1 copy for");
        await Eventually.HoldsAsync(async () => (await SalesAsync(stored, book)).Count == before + 1, "the second sale is in the ledger");
        await phone.Page.GetByText("What was written here", new() { Exact = true }).ClickAsync();
        var refused = phone.Page.Locator("[data-fair-lines] li").Filter(new() { HasText = "not taken: " });
        await refused.GetByRole(AriaRole.Button, new() { Name = "Take off the list" }).ClickAsync();
        await Expect(phone.Page.Locator("[data-fair-lines] li")).ToHaveCountAsync(1);
        phone.WasQuiet();
    }

    [Fact]
    public async Task Everything_to_tap_is_large_enough_for_a_finger()
    {
        await using var phone = await PhoneAsync();
        Assert.Empty(await Phones.SmallAsync(phone));
    }

    [Fact]
    public async Task Only_messages_of_this_hosts_own_pages_in_the_right_shape_and_for_this_press_are_taken()
    {
        await using var stored = await Stored.OpenAsync(app);
        var book = await stored.BookAsync("Fog Manners", 1);
        var before = (await SalesAsync(stored, book)).Count;
        var (press, id, day) = (stored.Press.Id.Value, Guid.NewGuid(), TimeProvider.System.GetUtcNow().UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        var entry = $$"""{"id":"{{id}}","edition":"{{book.Edition.Id}}","day":"{{day}}","channel":null,"fair":"","amount":"3.00","takenBack":false}""";
        Assert.Equal(HttpStatusCode.Forbidden, await Phones.SendAsync(app, "fair/entries", Message(press, entry), origin: "https://elsewhere.example"));
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, await Phones.SendAsync(app, "fair/entries", Message(press, entry), type: "text/plain"));
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, await Phones.SendAsync(app, "fair/entries", Message(press, entry) + new string(' ', 70_000)));
        Assert.Equal(HttpStatusCode.BadRequest, await Phones.SendAsync(app, "fair/entries", Message(press, string.Join(",", Enumerable.Repeat(entry, 101)))));
        Assert.Equal(HttpStatusCode.BadRequest, await Phones.SendAsync(app, "fair/entries", Message(press, "null")));
        Assert.Equal(HttpStatusCode.BadRequest, await Phones.SendAsync(app, "fair/entries", """{"press":1}"""));
        Assert.Equal(HttpStatusCode.BadRequest, await Phones.SendAsync(app, "fair/entries", "{"));
        Assert.Equal(HttpStatusCode.NotFound, await Phones.SendAsync(app, "fair/entries", Message(Guid.NewGuid(), entry)));
        Assert.Equal(before, (await SalesAsync(stored, book)).Count);
        Assert.Equal(HttpStatusCode.OK, await Phones.SendAsync(app, "fair/entries", Message(press, string.Join(",", Enumerable.Repeat(entry, 100)))));
        Assert.Equal(before + 1, (await SalesAsync(stored, book)).Count);

        static string Message(Guid press, string entries) => $$"""{"press":"{{press}}","entries":[{{entries}}]}""";
    }

    private Task<Visit> PhoneAsync() => Phones.OpenAsync(chromium, app, "fair");

    private static ILocator Button(Visit phone, Book book) => phone.Page.Locator($".fair-book[data-edition='{book.Edition.Id}']");

    private static ILocator Sum(Visit phone) => phone.Page.Locator(".fair-sum");

    private static ILocator State(Visit phone) => phone.Page.Locator("[data-fair-state]");

    private static async Task TapAsync(Visit phone, Book book, int times)
    {
        for (var time = 0; time < times; time++)
        {
            await Button(phone, book).ClickAsync();
        }
    }

    private static async Task<IReadOnlyList<MovementRecord>> SalesAsync(Stored stored, Book book) =>
        [.. (await stored.LedgerAsync(book.Edition.Id)).Where(line => line.Movement.Kind == MovementKind.Sold)];
}
