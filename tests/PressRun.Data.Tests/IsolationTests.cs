using System.Reflection;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using PressRun.Data.Archive;
using PressRun.Data.Copies;
using PressRun.Data.Drafts;
using PressRun.Data.Fixes;
using PressRun.Data.Payouts;
using PressRun.Data.People;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Data.Shops;
using PressRun.Data.Tallies;
using PressRun.Data.Tests.Fixtures;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Copies;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Quoting;

namespace PressRun.Data.Tests;

public sealed class IsolationTests(PostgresFixture postgres)
{
    private static readonly Guid TheirImport = Guid.NewGuid();

    /// <summary>What each store answers to one press that asks with another's ids. Named as store and method, so that none is forgotten.</summary>
    private static readonly Dictionary<string, Func<Stores, SmallPress, PressId, Task<object?>>> Attempts = new()
    {
        ["ShelfQuery.PlannedOnAsync"] = async (stores, _, me) => await stores.Shelf.PlannedOnAsync(me, [SmallPress.Text.Id, SmallPress.Cover.Id]),
        ["TitleStore.LoadAsync"] = async (stores, theirs, me) => await stores.Titles.LoadAsync(me, theirs.Title.Id),
        ["TitleStore.FindAsync"] = async (stores, theirs, me) => await stores.Titles.FindAsync(me, theirs.Title.Slug),
        ["TitleStore.SaveAsync"] = async (stores, theirs, me) => await stores.Titles.SaveAsync(me, theirs.Title with { Title = "Mine" }),
        ["TitleStore.DeleteAsync"] = async (stores, theirs, me) => await stores.Titles.DeleteAsync(me, theirs.Title),
        ["EditionStore.LoadAsync"] = async (stores, theirs, me) => await stores.Editions.LoadAsync(me, theirs.Edition.Id),
        ["EditionStore.FindAsync"] = async (stores, theirs, me) => await stores.Editions.FindAsync(me, theirs.Title.Slug, 1),
        ["EditionStore.OfTitleAsync"] = async (stores, theirs, me) => await stores.Editions.OfTitleAsync(me, theirs.Title.Id),
        ["EditionStore.LatestAsync"] = async (stores, _, me) => await stores.Editions.LatestAsync(me),
        ["EditionStore.AddAsync"] = async (stores, theirs, me) => await stores.Editions.AddAsync(me, theirs.Edition with { Printing = 9 }),
        ["EditionStore.SaveAsync"] = async (stores, theirs, me) => await stores.Editions.SaveAsync(me, theirs.Edition with { Price = 1m }),
        ["EditionStore.CopyForwardAsync"] = async (stores, theirs, me) => await stores.Editions.CopyForwardAsync(me, theirs.Edition.Id),
        ["EditionStore.DeleteAsync"] = async (stores, theirs, me) => await stores.Editions.DeleteAsync(me, theirs.Edition),
        ["PlanStore.OfListAsync"] = async (stores, theirs, me) => await stores.Plans.OfListAsync(me, theirs.List.Id, 10),
        ["PlanStore.LoadAsync"] = async (stores, theirs, me) => await stores.Plans.LoadAsync(me, theirs.Plan.Id),
        ["PlanStore.OfEditionAsync"] = async (stores, theirs, me) => await stores.Plans.OfEditionAsync(me, theirs.Edition.Id),
        ["PlanStore.AddAsync"] = async (stores, theirs, me) => await stores.Plans.AddAsync(me, theirs.Plan),
        ["PlanStore.SaveAsync"] = async (stores, theirs, me) => await stores.Plans.SaveAsync(me, theirs.Plan with { Quantity = 1 }),
        ["PlanStore.DuplicateAsync"] = async (stores, theirs, me) => await stores.Plans.DuplicateAsync(me, theirs.Plan.Id, "Mine"),
        ["PlanStore.ChooseAsync"] = async (stores, theirs, me) => await stores.Plans.ChooseAsync(me, theirs.Plan.Id),
        ["PlanStore.DeleteAsync"] = async (stores, theirs, me) => await stores.Plans.DeleteAsync(me, theirs.Plan),
        ["JobFileStore.TakeInAsync"] = async (stores, theirs, me) =>
            await stores.JobFiles.TakeInAsync(me, (await stores.Plans.SourceAsync(theirs.Id, theirs.Plan.Id))!.Build() with { Currency = Currency.Find("EUR")! }, theirs.Edition.Id),
        ["JobFileStore.LookAsync"] = async (stores, theirs, me) =>
            await stores.JobFiles.LookAsync(me, (await stores.Plans.SourceAsync(theirs.Id, theirs.Plan.Id))!.Build() with { Currency = Currency.Find("EUR")! }, theirs.Edition.Id),
        ["PlanStore.PutBackAsync"] = async (stores, theirs, me) => await stores.Plans.PutBackAsync(me, theirs.Plan, null),
        ["PlanStore.SourceAsync"] = async (stores, theirs, me) => await stores.Plans.SourceAsync(me, theirs.Plan.Id),
        ["PlanStore.SourcesAsync"] = async (stores, theirs, me) => (await stores.Plans.SourcesAsync(me, [theirs.Plan.Id])).ToList(),
        ["CopiesLedgerStore.OnHandAsync"] = async (stores, theirs, me) => await stores.Ledger.OnHandAsync(me, theirs.Edition.Id),
        ["CopiesLedgerStore.ForSaleAsync"] = async (stores, _, me) => await stores.Ledger.ForSaleAsync(me, 100),
        ["CopiesLedgerStore.NamesAsync"] = async (stores, _, me) => await stores.Ledger.NamesAsync(me),
        ["CopiesLedgerStore.PrintingsAsync"] = async (stores, _, me) => (await stores.Ledger.PrintingsAsync(me)).ToList(),
        ["CopiesLedgerStore.StandingAsync"] = async (stores, _, me) => await stores.Ledger.StandingAsync(me).ToListAsync(),
        ["CopiesLedgerStore.PlacesAsync"] = async (stores, _, me) => (await stores.Ledger.PlacesAsync(me)).ToList(),
        ["CopiesLedgerStore.PrintedAsync"] = async (stores, theirs, me) => (await stores.Ledger.PrintedAsync(me, theirs.Edition.Id)) is { Copies: > 0 } found ? found : null,
        ["CopiesLedgerStore.OfEditionAsync"] = async (stores, theirs, me) => await stores.Ledger.OfEditionAsync(me, theirs.Edition.Id),
        ["CopiesLedgerStore.OfTitlesAsync"] = async (stores, theirs, me) => (await stores.Ledger.OfTitlesAsync(me, [theirs.Title.Id])).ToList(),
        ["CopiesLedgerStore.WriteAsync"] = async (stores, theirs, me) => await stores.Ledger.WriteAsync(me, Sale(theirs)),
        ["CopiesLedgerStore.ImportAsync"] = async (stores, theirs, me) => await stores.Ledger.ImportAsync(me, [theirs.Edition.Id], () => [Sale(theirs)], Guid.NewGuid()),
        ["CopiesLedgerStore.TakeBackAsync"] = async (stores, theirs, me) =>
            await stores.Ledger.TakeBackAsync(me, (await stores.Ledger.OfEditionAsync(theirs.Id, theirs.Edition.Id))[0].Id),
        ["CopiesLedgerStore.TakeBackImportAsync"] = async (stores, theirs, me) => await stores.Ledger.TakeBackImportAsync(me, TheirImport),
        ["QuoteStore.FreezeAsync"] = async (stores, theirs, me) => await stores.Quotes.FreezeAsync(me, await SmallQuote.NewAsync(stores, theirs)),
        ["QuoteStore.ListAsync"] = async (stores, theirs, me) => await stores.Quotes.ListAsync(me, theirs.Edition.Id),
        ["QuoteStore.FindAsync"] = async (stores, theirs, me) => await stores.Quotes.FindAsync(me, (await QuoteOf(stores, theirs)).Quote.Number),
        ["QuoteStore.ChangesAsync"] = async (stores, theirs, me) => await stores.Quotes.ChangesAsync(me, (await QuoteOf(stores, theirs)).Quote.Id),
        ["QuoteStore.LinkAsync"] = async (stores, theirs, me) => await stores.Quotes.LinkAsync(me, (await QuoteOf(stores, theirs)).Quote.Id, SmallQuote.ForAda, "Me"),
        ["QuoteStore.EndAsync"] = async (stores, theirs, me) =>
            await stores.Quotes.EndAsync(me, (await QuoteOf(stores, theirs)).Quote.Id, (await QuoteOf(stores, theirs)).Links[0].Id, "Me"),
        ["QuoteStore.RemarkAsync"] = async (stores, theirs, me) => await stores.Quotes.RemarkAsync(me, (await QuoteOf(stores, theirs)).Quote.Id, "Me", "Hello"),
        ["QuoteStore.PayAsync"] = async (stores, theirs, me) =>
            await stores.Quotes.PayAsync(me, (await QuoteOf(stores, theirs)).Quote.Id, 0, 5m, SmallQuote.Today, "Me"),
        ["PayoutStore.LoadAsync"] = async (stores, theirs, me) => (await stores.Payouts.LoadAsync(me, theirs.Edition.Id)) is { Claims.Claims: var claims, Payments: var paid }
            ? claims.Cast<object>().Concat(paid).ToList() : null,
        ["PayoutStore.SaveAsync"] = async (stores, theirs, me) => await stores.Payouts.SaveAsync(me, new EditionClaims(theirs.Edition.Id, [new Claim.PerCopy("Me", 1m)], 0)),
        ["PayoutStore.PayAsync"] = async (stores, theirs, me) =>
            await stores.Payouts.PayAsync(me, new NewPayment(Guid.NewGuid(), theirs.Edition.Id, new PaidOut("Me", SmallQuote.Today, 5m)), "Me"),
        ["OutlookStore.MovedAsync"] = async (stores, _, me) => await stores.Outlooks.MovedAsync(me, 100),
        ["OutlookStore.ByDayAsync"] = async (stores, theirs, me) => (await stores.Outlooks.ByDayAsync(me, [theirs.Title.Id], default(DateOnly).AddDays(1))).ToList(),
        ["OutlookStore.OfTitlesAsync"] = async (stores, theirs, me) => (await stores.Outlooks.OfTitlesAsync(me, [theirs.Title.Id])).ToList(),
        ["OutlookStore.EventsAsync"] = async (stores, theirs, me) => (await stores.Outlooks.EventsAsync(me, [theirs.Title.Id])).ToList(),
        ["FixNoteStore.OfTitleAsync"] = async (stores, theirs, me) => await stores.Fixes.OfTitleAsync(me, theirs.Title.Id),
        ["FixNoteStore.AddAsync"] = async (stores, theirs, me) => await stores.Fixes.AddAsync(me, FixNote.Noticed(theirs.Edition.Id, "mine", null)),
        ["FixNoteStore.SaveAsync"] = async (stores, theirs, me) => await stores.Fixes.SaveAsync(me, (await stores.Fixes.OfTitleAsync(theirs.Id, theirs.Title.Id))[0] with { Text = "mine" }),
        ["FixNoteStore.DeleteAsync"] = async (stores, theirs, me) => await stores.Fixes.DeleteAsync(me, (await stores.Fixes.OfTitleAsync(theirs.Id, theirs.Title.Id))[0]),
        ["TallyStore.BeginAsync"] = async (stores, theirs, me) => await stores.Tallies.BeginAsync(me, NewTally(theirs)),
        ["TallyStore.LatestAsync"] = async (stores, theirs, me) => await stores.Tallies.LatestAsync(me, theirs.Edition.Id),
        ["TallyStore.FindAsync"] = async (stores, theirs, me) => await stores.Tallies.FindAsync(me, (await TallyOf(stores, theirs)).Id),
        ["TallyStore.MarkAsync"] = async (stores, theirs, me) => await stores.Tallies.MarkAsync(me, (await TallyOf(stores, theirs)).Id),
        ["TallyStore.WriteAsync"] = async (stores, theirs, me) => await stores.Tallies.WriteAsync(
            me, (await TallyOf(stores, theirs)).Id, [new NewTallyEntry(Guid.NewGuid(), new TallyEntry(0, TallyKind.Done, 5, 0, "me"), TimeSpan.Zero, false)]),
        ["StockStore.ListAsync"] = async (stores, _, me) => await stores.Stocks.ListAsync(me, archived: true),
        ["StockStore.SaveAsync"] = async (stores, theirs, me) => await stores.Stocks.SaveAsync(me, (await stores.Stocks.ListAsync(theirs.Id))[0]),
        ["StockStore.SaveAllAsync"] = async (stores, theirs, me) => await stores.Stocks.SaveAllAsync(me, await stores.Stocks.ListAsync(theirs.Id)),
        ["StockStore.DeleteAsync"] = async (stores, theirs, me) => await stores.Stocks.DeleteAsync(me, await stores.Stocks.KeptAsync(theirs.Id, SmallPress.Cover)),
        ["MailerStore.ListAsync"] = async (stores, _, me) => await stores.Mailers.ListAsync(me, archived: true),
        ["MailerStore.SaveAsync"] = async (stores, theirs, me) => await stores.Mailers.SaveAsync(me, (await stores.Mailers.ListAsync(theirs.Id))[0]),
        ["MailerStore.SaveAllAsync"] = async (stores, theirs, me) => await stores.Mailers.SaveAllAsync(me, await stores.Mailers.ListAsync(theirs.Id)),
        ["MailerStore.DeleteAsync"] = async (stores, theirs, me) => await stores.Mailers.DeleteAsync(me, await stores.Mailers.KeptAsync(theirs.Id, SmallPress.BoardMailer)),
        ["PostageServiceStore.ListAsync"] = async (stores, _, me) => await stores.Services.ListAsync(me, archived: true),
        ["PostageServiceStore.SaveAsync"] = async (stores, theirs, me) =>
            await stores.Services.SaveAsync(me, (await stores.Services.ListAsync(theirs.Id))[0]),
        ["PostageServiceStore.SaveAllAsync"] = async (stores, theirs, me) => await stores.Services.SaveAllAsync(me, await stores.Services.ListAsync(theirs.Id)),
        ["PostageServiceStore.DeleteAsync"] = async (stores, theirs, me) => await stores.Services.DeleteAsync(me, await stores.Services.KeptAsync(theirs.Id, SmallPress.Letter)),
        ["ChannelStore.ListAsync"] = async (stores, _, me) => await stores.Channels.ListAsync(me, archived: true),
        ["ChannelStore.SaveAsync"] = async (stores, theirs, me) => await stores.Channels.SaveAsync(me, (await stores.Channels.ListAsync(theirs.Id))[0]),
        ["ChannelStore.SaveAllAsync"] = async (stores, theirs, me) => await stores.Channels.SaveAllAsync(me, await stores.Channels.ListAsync(theirs.Id)),
        ["ChannelStore.DeleteAsync"] = async (stores, theirs, me) => await stores.Channels.DeleteAsync(me, await stores.Channels.KeptAsync(theirs.Id, SmallPress.Post)),
        ["ShopStore.ListAsync"] = async (stores, _, me) => await stores.Shops.ListAsync(me, archived: true),
        ["ShopStore.SaveAsync"] = async (stores, theirs, me) => await stores.Shops.SaveAsync(me, (await stores.Shops.ListAsync(theirs.Id))[0]),
        ["ShopStore.DeleteAsync"] = async (stores, theirs, me) => await stores.Shops.DeleteAsync(me, theirs.List.ShopId),
        ["PriceListStore.LoadAsync"] = async (stores, theirs, me) => await stores.PriceLists.LoadAsync(me, theirs.List.Id),
        ["PriceListStore.InForceAsync"] = async (stores, theirs, me) => await stores.PriceLists.InForceAsync(me, theirs.List.ShopId, DateOnly.MaxValue),
        ["PriceListStore.UsesAsync"] = async (stores, theirs, me) => await stores.PriceLists.UsesAsync(me, theirs.List.Id),
        ["PriceListStore.SaveAsync"] = async (stores, theirs, me) => await stores.PriceLists.SaveAsync(me, theirs.List),
        ["PriceListStore.DeleteAsync"] = async (stores, theirs, me) => await stores.PriceLists.DeleteAsync(me, theirs.List.Id),
        ["DraftStore.OfSubjectAsync"] = async (stores, theirs, me) => await stores.Drafts.OfSubjectAsync(me, Subject(theirs)),
        ["ShelfQuery.ShowAsync"] = async (stores, _, me) => (await stores.Shelf.ShowAsync(me, new ShelfFilter("tidepool"))).Titles,
    };

    /// <summary>What belongs to the server and to no press: people with their sign-ins, keys for cookies, counted tries, the list of presses.</summary>
    private static readonly string[] ServersOwn =
        ["AttemptRow", "DataProtectionKey", "HomeRow", "IdentityPasskeyData", "IdentityUserLogin`1", "IdentityUserPasskey`1", "PasswordCodeRow", "PressRow", "SessionRow", "User"];

    /// <summary>Methods that name no row of a press by its id, with the reason why there is nothing to try.</summary>
    private static readonly string[] NothingToTry =
    [
        "PressStore.LoadAsync", "PressStore.RoleAsync", // the press is all that it is asked for
        "PeopleStore.ListAsync", "PeopleStore.LeaveAsync", "PeopleStore.OwnLinksAsync", "PeopleStore.IsWithoutMailAsync", "PeopleStore.SetMailAsync", "InvitationStore.ListAsync", "ApiKeyStore.ListAsync", // the press is all that they are asked for
        "PeopleStore.ChangeAsync", "PeopleStore.RemoveAsync", "InvitationStore.WithdrawAsync", "ApiKeyStore.RevokeAsync", // see PeopleTests
        "PasswordCodeStore.MakeAsync", // see PasswordCodeTests
        "InvitationStore.InviteAsync", "ApiKeyStore.MakeAsync", // make rows of their own
        "TitleStore.AddAsync", "TitleStore.AddWithEditionAsync", // make rows of their own
        "BenchStore.LoadAsync", "BenchStore.SaveAsync", "BenchLimitsStore.LoadAsync", "BenchLimitsStore.SaveAsync", // one row a press
        "StockStore.ImportAsync", "MailerStore.ImportAsync", "PostageServiceStore.ImportAsync", "ChannelStore.ImportAsync", // make rows of their own
        "StockStore.TakeBackAsync", "MailerStore.TakeBackAsync", "PostageServiceStore.TakeBackAsync", "ChannelStore.TakeBackAsync", // see the test below
        "DraftStore.KeepAsync", "DraftStore.DropAsync", // by the person's own key; see the test on drafts below
        "QuoteStore.UnseenAsync", "QuoteStore.OrphansAsync", // the press is all that they are asked for
        "QuoteStore.SeeAsync", // see the test on quotes below
        "OutlookStore.KeepAsync", // see the tests of the outlooks
        "ShelfQuery.MarksAsync", "ShelfQuery.StandingAsync", // the press and a day are all that they are asked for; see the tests of the shelf
        "PressArchiveStore.ExportAsync", // the press is all that it is asked for
    ];

    public static TheoryData<string> AttemptNames => [.. Attempts.Keys];

    [Theory]
    [MemberData(nameof(AttemptNames))]
    public async Task A_press_reaches_nothing_by_the_id_of_another_presss_row(string attempt)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var theirs = await SmallPress.CreateAsync(stores);
        await stores.Drafts.KeepAsync(theirs.Id, Subject(theirs), new Draft("price", "9.5", DateTimeOffset.UnixEpoch));
        Assert.NotNull(await stores.Ledger.ImportAsync(theirs.Id, [theirs.Edition.Id], () => [Sale(theirs)], TheirImport));
        SmallPress.Saved(await stores.Fixes.AddAsync(theirs.Id, FixNote.Noticed(theirs.Edition.Id, "a smudge", 3)));
        SmallPress.Saved(await stores.Payouts.SaveAsync(theirs.Id, new EditionClaims(theirs.Edition.Id, [new Claim.PerCopy("Ada", 1m)], 0)));
        SmallPress.Saved(await stores.Payouts.PayAsync(theirs.Id, new NewPayment(Guid.NewGuid(), theirs.Edition.Id, new PaidOut("Ada", SmallQuote.Today, 5m)), "Theirs"));
        SmallPress.Saved(await stores.Tallies.BeginAsync(theirs.Id, NewTally(theirs)));
        await SmallQuote.SharedAsync(stores, theirs);
        var quoted = await QuoteOf(stores, theirs);
        var mine = await EmptyPressAsync(stores);
        var before = await stores.Archives.ExportAsync(theirs.Id);

        var answer = await Attempts[attempt](stores, theirs, mine);

        AssertNothing(answer);
        Assert.Equal(before, await stores.Archives.ExportAsync(theirs.Id));
        Assert.Equivalent(quoted, await QuoteOf(stores, theirs), strict: true);
        Assert.Single(await stores.Drafts.OfSubjectAsync(theirs.Id, Subject(theirs)));
    }

    [Fact]
    public void Every_method_of_a_store_that_takes_a_press_is_tried()
    {
        var methods = typeof(PressArchiveStore).Assembly.GetExportedTypes()
            .Where(type => type is { IsAbstract: false, IsClass: true } && (type.Name.EndsWith("Store", StringComparison.Ordinal) || type.Name.EndsWith("Query", StringComparison.Ordinal)))
            .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Instance)
                .Where(method => method.GetParameters().FirstOrDefault()?.ParameterType == typeof(PressId))
                .Select(method => $"{type.Name}.{method.Name}"));

        Assert.Equal(methods.Distinct().Order(), Attempts.Keys.Concat(NothingToTry).Order());
    }

    [Fact]
    public async Task An_import_is_not_taken_back_from_another_press()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var theirs = await SmallPress.CreateAsync(stores);
        var mine = await EmptyPressAsync(stores);
        var receipt = await stores.Stocks.ImportAsync(theirs.Id, () => [new LibraryItem<Stock>(SmallPress.Text with { Id = "new" }, false, 0)]);

        Assert.NotEmpty(await stores.Stocks.TakeBackAsync(mine, receipt));

        Assert.Equal(3, (await stores.Stocks.ListAsync(theirs.Id)).Count);
    }

    [Fact]
    public async Task Drafts_of_one_press_are_not_touched_from_another()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var theirs = await SmallPress.CreateAsync(stores);
        var mine = await EmptyPressAsync(stores);
        await stores.Drafts.KeepAsync(theirs.Id, Subject(theirs), new Draft("price", "9.5", DateTimeOffset.UnixEpoch));

        await stores.Drafts.KeepAsync(mine, Subject(theirs), new Draft("price", "1", DateTimeOffset.UnixEpoch.AddDays(1)));
        await stores.Drafts.DropAsync(mine, Subject(theirs));

        Assert.Equal("9.5", Assert.Single(await stores.Drafts.OfSubjectAsync(theirs.Id, Subject(theirs))).Text);
    }

    [Fact]
    public async Task What_happened_to_a_quote_is_not_marked_as_seen_from_another_press()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var theirs = await SmallPress.CreateAsync(stores);
        var (quote, _, look) = await SmallQuote.SharedAsync(stores, theirs);
        SmallPress.Saved(await stores.Shared.ReplyAsync(look, SmallQuote.AgreeTo(quote)));

        await stores.Quotes.SeeAsync(await EmptyPressAsync(stores), quote.Id, 2);

        Assert.Equal(1, await stores.Quotes.UnseenAsync(theirs.Id));
    }

    [Fact]
    public async Task The_database_itself_refuses_a_row_that_points_to_another_press()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var theirs = await SmallPress.CreateAsync(stores);
        var mine = await EmptyPressAsync(stores);
        await using var db = stores.Context(mine);

        var refused = await Assert.ThrowsAsync<PostgresException>(() => db.Database.ExecuteSqlAsync(
            $"UPDATE editions SET press_id = {mine.Value} WHERE id = {theirs.Edition.Id}"));

        Assert.Equal(PostgresErrorCodes.ForeignKeyViolation, refused.SqlState);
    }

    [Fact]
    public async Task Every_row_of_a_presss_own_data_starts_its_key_with_the_press_and_refers_within_it()
    {
        await using var stores = await Stores.NewAsync(postgres);
        await using var db = stores.Context(default);
        var all = db.Model.GetEntityTypes().ToList();
        var owned = all.Where(entity => typeof(IOfPress).IsAssignableFrom(entity.ClrType)).ToList();

        Assert.Equal(ServersOwn, all.Except(owned).Select(entity => entity.ClrType.Name).Order());
        Assert.All(owned, entity =>
        {
            Assert.Equal(nameof(IOfPress.PressId), entity.FindPrimaryKey()!.Properties[0].Name);
            Assert.NotEmpty(entity.GetDeclaredQueryFilters());
            Assert.All(
                entity.GetForeignKeys().Where(key => key.PrincipalEntityType.ClrType != typeof(User)),
                key => Assert.Equal(nameof(IOfPress.PressId), key.Properties[0].Name));
        });
    }

    [Fact]
    public async Task A_context_opened_for_no_press_finds_nothing_and_one_for_another_writes_nothing()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var theirs = await SmallPress.CreateAsync(stores);
        await using var none = stores.Context(default);
        await using var other = stores.Context(PressId.New());

        Assert.Empty(none.Editions);
        other.Titles.Add(new TitleRow { PressId = theirs.Id, Id = Guid.CreateVersion7(), Slug = "x" });
        await Assert.ThrowsAsync<InvalidOperationException>(() => other.SaveChangesAsync());
    }

    private static NewMovement Sale(SmallPress press) => new(Guid.NewGuid(), press.Edition.Id, SmallPress.ListDate, MovementKind.Sold, 2, 18m);

    private static NewTally NewTally(SmallPress press) => new(Guid.NewGuid(), press.Edition.Id, "", 10, 10, [new TallyStep("fold", WorkKind.Fold, 0m, null)]);

    private static async Task<TallyRecord> TallyOf(Stores stores, SmallPress press) => (await stores.Tallies.LatestAsync(press.Id, press.Edition.Id))!.Tally;

    private static async Task<QuoteWhole> QuoteOf(Stores stores, SmallPress press) => (await stores.Quotes.FindAsync(press.Id, 1))!;

    private static DraftSubject Subject(SmallPress press) => new("maker", "edition", press.Edition.Id.ToString());

    private static async Task<PressId> EmptyPressAsync(Stores stores) =>
        SmallPress.Saved(await stores.Presses.CreateAsync(new NewPress("Other", "EUR", UnitSystem.Metric, PaperRegion.Iso))).Id;

    private static void AssertNothing(object? answer)
    {
        switch (answer)
        {
            case null:
                break;
            case System.Collections.ICollection list:
                Assert.All(list.Cast<object>(), item => Assert.Contains(item.GetType().Name, new[] { "Gone", "Refused" }));
                break;
            default:
                Assert.Contains(answer.GetType().Name, new[] { "Gone", "Refused" });
                break;
        }
    }
}
