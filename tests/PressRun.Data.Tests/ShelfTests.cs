using Microsoft.EntityFrameworkCore;
using Npgsql;
using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Data.Tests.Fixtures;
using PressRun.Data.Titles;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;

namespace PressRun.Data.Tests;

public sealed class ShelfTests(PostgresFixture postgres)
{
    [Theory]
    [InlineData("tide", 1)]
    [InlineData("TIDEPOOL alm", 1)]
    [InlineData("maker tide", 1)]
    [InlineData("pool", 0)]
    [InlineData("etude", 1)]
    [InlineData("Étude", 1)]
    [InlineData("strasse", 0)]
    [InlineData("straße", 1)]
    [InlineData("жук", 1)]
    [InlineData("it's", 1)]
    [InlineData("!& | :*", 3)]
    [InlineData("'; drop table titles --", 0)]
    [InlineData(" ", 3)]
    public async Task The_shelf_is_searched_by_beginnings_of_words_without_accents_or_capitals(string search, int found)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        SmallPress.Saved(await stores.Titles.AddAsync(small.Id, new NewTitle("Étude für die Straße", "Ödön", "#000000", "")));
        SmallPress.Saved(await stores.Titles.AddAsync(small.Id, new NewTitle("Жуки it's", "", "#000000", "")));

        var page = await stores.Shelf.ShowAsync(small.Id, new ShelfFilter(search));

        Assert.Equal(found, page.Total);
        Assert.Equal(found, page.Titles.Count);
    }

    [Theory]
    [InlineData(0xFFFE)]
    [InlineData(0xD800)]
    public async Task What_is_no_sign_of_any_script_is_passed_over_in_a_search(int typed)
    {
        // By number: half a surrogate pair does not survive as a constant of an attribute.
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        Assert.Equal(1, (await stores.Shelf.ShowAsync(small.Id, new ShelfFilter($"tide {(char)typed}"))).Total);
    }

    [Fact]
    public async Task The_shelf_shows_editions_latest_first_with_the_plan_they_go_by()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var next = SmallPress.Saved(await stores.Editions.CopyForwardAsync(small.Id, small.Edition.Id));
        SmallPress.Saved(await stores.Editions.SaveAsync(small.Id, SmallPress.Saved(
            await stores.Editions.AddAsync(small.Id, SmallPress.NewEdition(small.Title.Id, 3))) with
        { Archived = true }));

        var title = Assert.Single((await stores.Shelf.ShowAsync(small.Id, new ShelfFilter())).Titles);

        Assert.Equal([next.Id, small.Edition.Id], title.Editions.Select(edition => edition.Id));
        var plan = new ShelfPlan(small.Plan.Id, small.Plan.Version, small.Plan.Quantity);
        Assert.Equal(new ShelfEdition(small.Edition.Id, 1, null, null, 0, false, small.Edition.Price, small.Edition.Version, plan, default), title.Editions[1]);
        Assert.Equal((small.Title.Slug, "Tidepool Almanac", "A. Maker", "#8a3b2e", null), (title.Slug, title.Title, title.By, title.Colour, title.Outlook));
    }

    [Fact]
    public async Task The_shelf_knows_of_a_printing_what_its_copies_really_cost()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var printed = new NewMovement(Guid.NewGuid(), small.Edition.Id, new DateOnly(2026, 3, 2), MovementKind.Printed, 121, 121.5m, null, "", null);
        SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, printed));
        var mistake = SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, printed with { Id = Guid.NewGuid() }));
        SmallPress.Saved(await stores.Ledger.TakeBackAsync(small.Id, mistake.Id));

        var shown = Assert.Single((await stores.Shelf.ShowAsync(small.Id, new ShelfFilter())).Titles).Editions[0];

        Assert.Equal(new PrintedCopies(121, 121.5m), shown.Printed);
        Assert.Equal(shown.Printed, await stores.Ledger.PrintedAsync(small.Id, small.Edition.Id));
    }

    [Fact]
    public async Task The_shelf_shows_of_a_printing_what_its_ledger_says_of_it_and_of_a_title_how_long_its_copies_last()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await WriteAsync(stores, small.Id, small.Edition, MovementKind.Printed, 50);
        await WriteAsync(stores, small.Id, small.Edition, MovementKind.Sold, 60);
        var outlook = new TitleOutlook(SmallPress.ListDate, 50, 9.5, 20, 30.5, 2);
        await stores.Outlooks.KeepAsync(small.Id, [(new MovedTitle(small.Title.Id, 2), outlook)]);
        var bare = SmallPress.Saved(await stores.Titles.AddAsync(small.Id, new NewTitle("Bare", "", "#000000", "")));

        var titles = (await stores.Shelf.ShowAsync(small.Id, new ShelfFilter())).Titles;

        Assert.Equal([bare.Id, small.Title.Id], titles.Select(title => title.Id));
        Assert.Empty(titles[0].Editions);
        Assert.Equal(outlook, titles[1].Outlook);
        var edition = Assert.Single(titles[1].Editions);
        Assert.Equal((SmallPress.ListDate, 50, -10L, true), (edition.PrintedOn, edition.CopiesPrinted, edition.CopiesOnHand, edition.CountNeeded));
    }

    [Fact]
    public async Task The_first_planned_printing_on_some_papers_is_found_by_what_its_plan_really_prints_on()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        // The plan has the cover on the text paper, and the edition's own paper for the inside.
        Assert.Equal(new PrintingName("Tidepool Almanac", "tidepool-almanac", 1), await stores.Shelf.PlannedOnAsync(small.Id, [SmallPress.Text.Id]));
        Assert.Null(await stores.Shelf.PlannedOnAsync(small.Id, [SmallPress.Cover.Id]));
        Assert.Null(await stores.Shelf.PlannedOnAsync(small.Id, []));

        SmallPress.Saved(await stores.Editions.SaveAsync(small.Id, small.Edition with { Archived = true }));
        Assert.Null(await stores.Shelf.PlannedOnAsync(small.Id, [SmallPress.Text.Id]));
    }

    [Fact]
    public async Task What_printings_are_costed_by_has_another_mark_after_each_change_and_the_same_without_one()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await SmallPress.CreateAsync(stores, "Another Press");
        var marks = new List<string> { await LibrariesAsync() };
        Assert.Equal(marks[0], await LibrariesAsync());

        await MarkAsync(stores.Presses.SaveAsync(small.Press with { ReclaimsTax = true }));
        await MarkAsync(stores.PriceLists.SaveAsync(small.Id, small.List with { Prices = small.List.Prices with { SetUp = new SetUp(50m, 0m, 0m) } }));
        var paper = (await stores.Stocks.ListAsync(small.Id)).Single(stock => stock.Item.Id == SmallPress.Text.Id);
        await MarkAsync(stores.Stocks.SaveAsync(small.Id, paper with { Item = paper.Item with { Bulk = 1.9m } }));
        var bench = (await stores.Bench.LoadAsync(small.Id))!;
        await MarkAsync(stores.Bench.SaveAsync(small.Id, bench with { Item = bench.Item with { HourlyRate = 22m } }));
        var mailer = (await stores.Mailers.ListAsync(small.Id))[0];
        await MarkAsync(stores.Mailers.SaveAsync(small.Id, mailer with { Item = mailer.Item with { Price = 0.5m } }));
        var letter = (await stores.Services.ListAsync(small.Id))[0];
        await MarkAsync(stores.Services.SaveAsync(small.Id, letter with { Archived = true }));
        var post = (await stores.Channels.ListAsync(small.Id))[0];
        await MarkAsync(stores.Channels.SaveAsync(small.Id, post with { Item = post.Item with { TradeDiscount = 0.4m } }));

        Assert.Equal(8, marks.Distinct().Count());

        async Task MarkAsync<T>(Task<SaveResult<T>> save)
            where T : class
        {
            SmallPress.Saved(await save);
            marks.Add(await LibrariesAsync());
        }

        async Task<string> LibrariesAsync() => (await stores.Shelf.MarksAsync(small.Id, SmallPress.ListDate)).Libraries;
    }

    [Fact]
    public async Task What_titles_are_judged_by_has_other_marks_after_each_change_and_the_same_without_one()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var other = await SmallPress.CreateAsync(stores, "Another Press");
        await WriteAsync(stores, small.Id, SmallPress.Saved(await stores.Editions.AddAsync(small.Id, SmallPress.NewEdition(small.Title.Id, 2))), MovementKind.Printed, 50);
        var day = SmallPress.ListDate.AddDays(9);
        var marks = await stores.Shelf.MarksAsync(small.Id, day);
        Assert.True(marks.Moved);

        await MovedAsync(stores.Outlooks.KeepAsync(small.Id, [(new MovedTitle(small.Title.Id, 1), new TitleOutlook(SmallPress.ListDate, 50, 9.5, 20, 30.5, 1))]), planned: false, runningOut: true);
        Assert.False(marks.Moved);
        await MovedAsync(stores.Titles.SaveAsync(small.Id, small.Title with { Title = "Almanac of Pools" }), planned: true, runningOut: false);
        await MovedAsync(stores.Plans.SaveAsync(small.Id, small.Plan with { Quantity = 160 }), planned: true, runningOut: true);
        var beside = SmallPress.Saved(await stores.Plans.DuplicateAsync(small.Id, small.Plan.Id, "beside"));
        await MovedAsync(Task.CompletedTask, planned: false, runningOut: false);
        await MovedAsync(stores.Plans.ChooseAsync(small.Id, beside.Id), planned: true, runningOut: true);
        await MovedAsync(stores.Plans.DeleteAsync(small.Id, (await stores.Plans.LoadAsync(small.Id, beside.Id))!), planned: true, runningOut: true);
        var edition = (await stores.Editions.LoadAsync(small.Id, small.Edition.Id))!;
        var parts = edition.Parts.Select(part => part with { Part = part.Part with { Pages = part.Part.Pages + 4 } });
        await MovedAsync(stores.Editions.SaveAsync(small.Id, edition with { Parts = [.. parts] }), planned: true, runningOut: true);
        var printed = (await stores.Editions.FindAsync(small.Id, small.Title.Slug, 2))!;
        await MovedAsync(stores.Editions.SaveAsync(small.Id, printed with { Archived = true }), planned: false, runningOut: true);
        await MovedAsync(WriteAsync(stores, small.Id, edition, MovementKind.Printed, 50), planned: true, runningOut: true);
        Assert.True(marks.Moved);
        await MovedAsync(stores.Plans.SaveAsync(other.Id, other.Plan with { Quantity = 160 }), planned: false, runningOut: false);

        async Task MovedAsync(Task change, bool planned, bool runningOut)
        {
            await change;
            var now = await stores.Shelf.MarksAsync(small.Id, day);
            Assert.Equal((true, planned, runningOut), (now.Libraries == marks.Libraries, now.Planned != marks.Planned, now.RunningOut != marks.RunningOut));
            marks = now;
        }
    }

    [Fact]
    public async Task Only_what_needs_a_decision_is_asked_of_the_database_and_summed_over_all_pages()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await AddAsync("Ample", (100, 11));
        await AddAsync("Going", (100, 10));
        await AddAsync("None left", (100, 0));
        await AddAsync("Gone but printed again", (100, 0), (100, 50));
        await AddAsync("Gone and archived after", (100, 0), (100, -50));
        await AddAsync("Planned without a plan", (100, 90), (null, 0));
        await AddAsync("Never printed but counted", (null, 7));
        var plan = SmallPress.Saved(await stores.Plans.ChooseAsync(small.Id, small.Plan.Id));

        var all = await stores.Shelf.ShowAsync(small.Id, new ShelfFilter());
        var asking = await stores.Shelf.ShowAsync(small.Id, new ShelfFilter(Take: 2, OnlyAsking: true), [small.Title.Id]);
        var rest = await stores.Shelf.ShowAsync(small.Id, new ShelfFilter(Skip: 2, OnlyAsking: true), [small.Title.Id]);

        Assert.Equal(new ShelfTotals(8, 5, 3, 4, 11 + 10 + 50 + 90), all.Totals);
        Assert.Equal((8, 6), (all.Total, asking.Total));
        Assert.Equal(
            ["Going", "Gone and archived after", "Never printed but counted", "None left", "Planned without a plan", "Tidepool Almanac"],
            asking.Titles.Concat(rest.Titles).Select(title => title.Title));
        Assert.Equal([new PlannedPrinting(small.Title.Id, plan.Id, plan.Version, small.Edition.Version)], (await stores.Shelf.StandingAsync(small.Id, SmallPress.ListDate)).Planned);

        async Task AddAsync(string words, params (int? Printed, int OnHand)[] printings)
        {
            var title = SmallPress.Saved(await stores.Titles.AddAsync(small.Id, new NewTitle(words, "", "#000000", "")));
            for (var index = 0; index < printings.Length; index++)
            {
                var (printed, onHand) = printings[index];
                var edition = SmallPress.Saved(await stores.Editions.AddAsync(
                    small.Id, SmallPress.NewEdition(title.Id, index + 1) with { Archived = onHand < 0 }));
                await WriteAsync(edition, MovementKind.Printed, printed);
                await WriteAsync(edition, MovementKind.Counted, Math.Abs(onHand));
            }
        }

        async Task WriteAsync(EditionRecord edition, MovementKind kind, int? copies)
        {
            if (copies is { } some)
            {
                SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, new NewMovement(Guid.NewGuid(), edition.Id, SmallPress.ListDate, kind, some)));
            }
        }
    }

    [Fact]
    public async Task Sums_of_a_title_are_those_of_its_printings_however_their_changes_cross()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var title = SmallPress.Saved(await stores.Titles.AddAsync(small.Id, new NewTitle("Crossing", "", "#000000", "")));
        var editions = new List<EditionRecord>();
        for (var printing = 1; printing <= 4; printing++)
        {
            editions.Add(SmallPress.Saved(await stores.Editions.AddAsync(small.Id, SmallPress.NewEdition(title.Id, printing))));
        }

        await Task.WhenAll(editions.Select(async edition =>
        {
            await WriteAsync(edition, MovementKind.Printed, 100);
            for (var sold = 0; sold < 10; sold++)
            {
                await WriteAsync(edition, MovementKind.Sold, edition.Printing);
            }
        }));
        var crossed = (await stores.Shelf.ShowAsync(small.Id, new ShelfFilter("crossing"))).Totals;
        await WriteAsync(editions[0], MovementKind.Sold, 100);
        var beyond = (await stores.Shelf.ShowAsync(small.Id, new ShelfFilter("crossing"))).Totals;
        var last = (await stores.Editions.LoadAsync(small.Id, editions[3].Id))!;
        SmallPress.Saved(await stores.Editions.SaveAsync(small.Id, last with { Archived = true }));
        var without = (await stores.Shelf.ShowAsync(small.Id, new ShelfFilter("crossing"))).Totals;

        Assert.Equal(new ShelfTotals(1, 0, 0, 4, 400 - 10 - 20 - 30 - 40), crossed);
        // Ten copies of the first went that nobody knew of; they are no copies fewer of the others.
        Assert.Equal(new ShelfTotals(1, 0, 0, 3, 300 - 20 - 30 - 40), beyond);
        Assert.Equal(new ShelfTotals(1, 0, 0, 2, 200 - 20 - 30), without);

        async Task WriteAsync(EditionRecord edition, MovementKind kind, int copies) => SmallPress.Saved(
            await stores.Ledger.WriteAsync(small.Id, new NewMovement(Guid.NewGuid(), edition.Id, SmallPress.ListDate, kind, copies)));
    }

    [Fact]
    public async Task Pages_of_the_shelf_show_every_title_once_in_order()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var press = await TenThousandTitlesAsync(stores);

        var seen = new List<string>();
        for (var skip = 0; skip < 1000; skip += 200)
        {
            seen.AddRange((await stores.Shelf.ShowAsync(press, new ShelfFilter(Skip: skip, Take: 200))).Titles.Select(title => title.Title));
        }

        Assert.Equal(1000, seen.Distinct().Count());
        Assert.Equal(seen.Order(StringComparer.Ordinal), seen);
    }

    [Fact]
    public async Task Among_ten_thousand_titles_search_and_order_go_by_an_index()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var press = await TenThousandTitlesAsync(stores);
        await using var db = stores.Context(press);

        var search = await PlanAsync(db, db.Titles.Where(title => !title.Archived && title.SearchWords.Matches(EF.Functions.ToTsQuery("simple", "t09999:*"))));
        var shelf = await PlanAsync(db, db.Titles.Where(title => !title.Archived).OrderBy(title => title.SearchText).ThenBy(title => title.Id).Take(50));

        Assert.Contains("ix_titles_search_words", search, StringComparison.Ordinal);
        Assert.Contains("ix_titles_press_id_archived_search_text_id", shelf, StringComparison.Ordinal);
        Assert.Equal(1, (await stores.Shelf.ShowAsync(press, new ShelfFilter("t09999"))).Total);
    }

    private static async Task WriteAsync(Stores stores, PressId press, EditionRecord edition, MovementKind kind, int copies) =>
        SmallPress.Saved(await stores.Ledger.WriteAsync(press, new NewMovement(Guid.NewGuid(), edition.Id, SmallPress.ListDate, kind, copies)));

    private static async Task<PressId> TenThousandTitlesAsync(Stores stores)
    {
        var press = SmallPress.Saved(await stores.Presses.CreateAsync(new NewPress("Large", "EUR", UnitSystem.Metric, Engine.Paper.PaperRegion.Iso))).Id;
        await using var db = stores.Context(press);
        await db.Database.ExecuteSqlAsync(
            $"""
            INSERT INTO titles (press_id, id, slug, title, by, colour, about, archived, search_text)
            SELECT {press.Value}, gen_random_uuid(), 't' || number, 'T' || number, 'Somebody', '#000000', '', false, 't' || number || ' somebody'
            FROM (SELECT lpad(value::text, 5, '0') AS number FROM generate_series(1, 10000) AS value) AS numbers
            """);
        await db.Database.ExecuteSqlAsync($"ANALYZE titles");
        return press;
    }

    private static async Task<string> PlanAsync(PressRunDbContext db, IQueryable<TitleRow> query)
    {
        await db.Database.OpenConnectionAsync();
        await using var command = (NpgsqlCommand)query.CreateDbCommand();
        command.CommandText = "EXPLAIN " + command.CommandText;
        await using var reader = await command.ExecuteReaderAsync();
        var lines = new List<string>();
        while (await reader.ReadAsync())
        {
            lines.Add(reader.GetString(0));
        }

        return string.Join('\n', lines);
    }
}
