using Microsoft.EntityFrameworkCore;
using Npgsql;
using PressRun.Data.Copies;
using PressRun.Data.Import;
using PressRun.Data.Tests.Fixtures;
using PressRun.Data.Titles;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;

namespace PressRun.Data.Tests.Copies;

public sealed class CopiesLedgerTests(PostgresFixture postgres)
{
    private static readonly DateOnly First = new(2026, 2, 1);

    [Fact]
    public async Task What_is_on_hand_is_the_sum_of_what_was_written_and_the_edition_says_what_was_printed()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var actual = new PrintingActual(150, 240.50m, 0m, 3m, 20m, 15m, [new("stitch", 95m, 156, 6)]);

        var printed = await WriteAsync(stores, small, 0, MovementKind.Printed, 150, 280m, printing: actual);
        await WriteAsync(stores, small, 3, MovementKind.Sold, 20, 150m, SmallPress.Post.Id);
        await WriteAsync(stores, small, 4, MovementKind.GivenAway, 5);
        await WriteAsync(stores, small, 5, MovementKind.Returned, 2, 15m, SmallPress.Post.Id);
        await WriteAsync(stores, small, 6, MovementKind.Counted, 125);

        Assert.Equal(new CopiesOnHand(125, false), await stores.Ledger.OnHandAsync(small.Id, small.Edition.Id));
        var lines = await stores.Ledger.OfEditionAsync(small.Id, small.Edition.Id);
        Assert.Equal([-2, 2, -5, -20, 150], lines.Select(line => line.Movement.Copies));
        Assert.Equal(-15m, lines[1].Movement.Amount);
        Assert.Equal(actual.Steps, printed.Printing!.Steps);
        Assert.Equal(actual.LandedCost(2), printed.Printing.LandedCost(2));
        var edition = (await stores.Editions.LoadAsync(small.Id, small.Edition.Id))!;
        Assert.Equal((150, First, 125L), (edition.CopiesPrinted, edition.PrintedOn, edition.CopiesOnHand));
        var position = CopiesAccount.At((await stores.Ledger.OfTitlesAsync(small.Id, [small.Title.Id]))[small.Title.Id]);
        Assert.Equal(125L, position.OnHand);
    }

    [Fact]
    public async Task A_printing_that_is_taken_back_leaves_no_day_with_copies_to_sell()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await WriteAsync(stores, small, 0, MovementKind.Printed, 10, 50m);
        await WriteAsync(stores, small, 1, MovementKind.Sold, 10, 90m);
        var before = (await stores.Ledger.OfTitlesAsync(small.Id, [small.Title.Id]))[small.Title.Id].ToList();

        SmallPress.Saved(await stores.Ledger.TakeBackAsync(small.Id, (await WriteAsync(stores, small, 30, MovementKind.Printed, 113, 130m)).Id));

        Assert.Equal(before, (await stores.Ledger.OfTitlesAsync(small.Id, [small.Title.Id]))[small.Title.Id]);
        Assert.Equal(2, (await stores.Outlooks.ByDayAsync(small.Id, [small.Title.Id], First))[small.Title.Id].Count());
    }

    [Fact]
    public async Task A_line_sent_twice_is_written_once()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var sale = new NewMovement(Guid.NewGuid(), small.Edition.Id, First, MovementKind.Sold, 3, 27m);

        var answers = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => stores.Ledger.WriteAsync(small.Id, sale)));

        Assert.All(answers, answer => Assert.Equal(sale.Id, SmallPress.Saved(answer).Id));
        Assert.Single(await stores.Ledger.OfEditionAsync(small.Id, small.Edition.Id));
        Assert.Equal(new CopiesOnHand(-3, true), await stores.Ledger.OnHandAsync(small.Id, small.Edition.Id));
    }

    [Fact]
    public async Task For_sale_are_printings_that_were_printed_with_those_on_hand_first_and_archived_ones_left_out()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var second = SmallPress.Saved(await stores.Editions.CopyForwardAsync(small.Id, small.Edition.Id));
        SmallPress.Saved(await stores.Editions.CopyForwardAsync(small.Id, small.Edition.Id));
        await WriteAsync(stores, small, 0, MovementKind.Printed, 2, 10m);
        SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, new NewMovement(Guid.NewGuid(), second.Id, First, MovementKind.Printed, 1)));
        SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, new NewMovement(Guid.NewGuid(), second.Id, First, MovementKind.Sold, 1)));

        var all = await stores.Ledger.ForSaleAsync(small.Id, 10);

        Assert.Equal([(1, 2L), (2, 0L)], all.Select(book => (book.Printing, book.OnHand)));
        Assert.Equal((small.Edition.Id, "Tidepool Almanac", 9m), (all[0].EditionId, all[0].Title, all[0].Price));
        Assert.Single(await stores.Ledger.ForSaleAsync(small.Id, 1));
        SmallPress.Saved(await stores.Titles.SaveAsync(small.Id, small.Title with { Archived = true }));
        Assert.Empty(await stores.Ledger.ForSaleAsync(small.Id, 10));
    }

    [Fact]
    public async Task A_line_is_taken_back_once_by_its_opposite_and_the_printing_with_it()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var printed = await WriteAsync(stores, small, 0, MovementKind.Printed, 80, 100m);

        var back = SmallPress.Saved(await stores.Ledger.TakeBackAsync(small.Id, printed.Id));
        var again = SmallPress.Saved(await stores.Ledger.TakeBackAsync(small.Id, printed.Id));

        Assert.Equal(back.Id, again.Id);
        Assert.Equal((printed.Movement.Day, -80, -100m), (back.Movement.Day, back.Movement.Copies, back.Movement.Amount));
        Assert.IsType<SaveResult<MovementRecord>.Refused>(await stores.Ledger.TakeBackAsync(small.Id, back.Id));
        var edition = (await stores.Editions.LoadAsync(small.Id, small.Edition.Id))!;
        Assert.Equal((null, null, 0L), (edition.CopiesPrinted, edition.PrintedOn, edition.CopiesOnHand));
    }

    [Fact]
    public async Task A_sale_of_a_day_before_a_count_lands_in_its_day_and_leaves_what_was_counted()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await WriteAsync(stores, small, 0, MovementKind.Printed, 100, 200m);
        var count = await WriteAsync(stores, small, 10, MovementKind.Counted, 90);

        var late = await WriteAsync(stores, small, 5, MovementKind.Sold, 7, 63m);

        var moved = (await stores.Ledger.OfTitlesAsync(small.Id, [small.Title.Id]))[small.Title.Id].ToList();
        Assert.Equal(93L, CopiesAccount.At(moved, First.AddDays(9)).OnHand);
        Assert.Equal(90L, CopiesAccount.At(moved).OnHand);
        Assert.Equal(-3L, CopiesAccount.At(moved).CountDifference);

        SmallPress.Saved(await stores.Ledger.TakeBackAsync(small.Id, late.Id));
        Assert.Equal(90L, (await stores.Ledger.OnHandAsync(small.Id, small.Edition.Id))!.Value.OnHand);
        SmallPress.Saved(await stores.Ledger.TakeBackAsync(small.Id, count.Id));
        Assert.Equal(100L, (await stores.Ledger.OnHandAsync(small.Id, small.Edition.Id))!.Value.OnHand);
    }

    [Fact]
    public async Task A_count_taken_back_leaves_a_later_count_as_it_was_found()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await WriteAsync(stores, small, 0, MovementKind.Printed, 100, 200m);
        var first = await WriteAsync(stores, small, 10, MovementKind.Counted, 90);
        await WriteAsync(stores, small, 5, MovementKind.Sold, 4, 36m);
        await WriteAsync(stores, small, 20, MovementKind.Counted, 85);

        SmallPress.Saved(await stores.Ledger.TakeBackAsync(small.Id, first.Id));

        var moved = (await stores.Ledger.OfTitlesAsync(small.Id, [small.Title.Id]))[small.Title.Id].ToList();
        Assert.Equal(96L, CopiesAccount.At(moved, First.AddDays(15)).OnHand);
        Assert.Equal(85L, CopiesAccount.At(moved).OnHand);
    }

    [Fact]
    public async Task A_sale_beyond_the_count_asks_for_one_until_it_comes_or_a_late_line_explains_it()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await WriteAsync(stores, small, 3, MovementKind.Sold, 2, 18m);
        Assert.Equal(new CopiesOnHand(-2, true), await stores.Ledger.OnHandAsync(small.Id, small.Edition.Id));

        await WriteAsync(stores, small, 1, MovementKind.Printed, 50, 80m);
        Assert.Equal(new CopiesOnHand(48, false), await stores.Ledger.OnHandAsync(small.Id, small.Edition.Id));

        await WriteAsync(stores, small, 4, MovementKind.Sold, 49, 400m);
        await WriteAsync(stores, small, 5, MovementKind.Printed, 30, 60m);
        Assert.Equal(new CopiesOnHand(29, true), await stores.Ledger.OnHandAsync(small.Id, small.Edition.Id));

        await WriteAsync(stores, small, 6, MovementKind.Counted, 29);
        Assert.Equal(new CopiesOnHand(29, false), await stores.Ledger.OnHandAsync(small.Id, small.Edition.Id));
    }

    [Fact]
    public async Task A_sale_beyond_the_count_that_is_taken_back_asks_for_no_count_any_more()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await WriteAsync(stores, small, 0, MovementKind.Printed, 50, 80m);
        await WriteAsync(stores, small, 1, MovementKind.Sold, 11, 90m);
        var mistyped = await WriteAsync(stores, small, 2, MovementKind.Sold, 400, 90m);
        Assert.Equal(new CopiesOnHand(-361, true), await stores.Ledger.OnHandAsync(small.Id, small.Edition.Id));

        SmallPress.Saved(await stores.Ledger.TakeBackAsync(small.Id, mistyped.Id));

        Assert.Equal(new CopiesOnHand(39, false), await stores.Ledger.OnHandAsync(small.Id, small.Edition.Id));
    }

    [Fact]
    public async Task An_import_is_written_whole_or_not_at_all_and_is_taken_back_whole()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await WriteAsync(stores, small, 0, MovementKind.Printed, 100, 200m);
        var import = Guid.NewGuid();
        var sales = Enumerable.Range(1, 5).Select(day => New(small, day, MovementKind.Sold, day, 9m * day)).ToList();

        var refused = await Assert.ThrowsAsync<ImportRefusedException>(
            () => stores.Ledger.ImportAsync(small.Id, [small.Edition.Id], () => [.. sales, New(small, 2, MovementKind.Sold, 0, 1m)], import));
        Assert.Equal((5, "$[5].copies"), (refused.Index, refused.Problem.Path));
        Assert.Single(await stores.Ledger.OfEditionAsync(small.Id, small.Edition.Id));

        Assert.Equal(5, (await stores.Ledger.ImportAsync(small.Id, [small.Edition.Id], () => sales, import))!.Lines);
        Assert.Equal(0, (await stores.Ledger.ImportAsync(small.Id, [small.Edition.Id], () => sales, import))!.Lines);
        Assert.Equal(85L, (await stores.Ledger.OnHandAsync(small.Id, small.Edition.Id))!.Value.OnHand);
        SmallPress.Saved(await stores.Ledger.TakeBackImportAsync(small.Id, import));
        Assert.Equal(100L, (await stores.Ledger.OnHandAsync(small.Id, small.Edition.Id))!.Value.OnHand);
    }

    [Theory]
    [InlineData(MovementKind.Sold, 0, 0, "$.copies")]
    [InlineData(MovementKind.GivenAway, 2, 3, "$.amount")]
    [InlineData(MovementKind.Sold, 2, -3, "$.amount")]
    [InlineData(MovementKind.Counted, -1, 0, "$.copies")]
    public async Task What_cannot_be_is_refused_with_what_would_be_right(MovementKind kind, int copies, int amount, string path)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        var refused = Assert.IsType<SaveResult<MovementRecord>.Refused>(
            await stores.Ledger.WriteAsync(small.Id, New(small, 0, kind, copies, amount)));

        Assert.Equal(path, Assert.Single(refused.Problems).Path);
    }

    [Fact]
    public async Task A_day_to_come_and_a_channel_that_is_not_there_are_refused()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        var refused = Assert.IsType<SaveResult<MovementRecord>.Refused>(await stores.Ledger.WriteAsync(
            small.Id, New(small, 0, MovementKind.Sold, 1, 1m, "nowhere") with { Day = new DateOnly(2999, 1, 1) }));

        Assert.Equal(["$.day", "$.channel"], refused.Problems.Select(problem => problem.Path));
    }

    [Fact]
    public async Task The_database_itself_refuses_to_change_or_remove_a_line()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await WriteAsync(stores, small, 0, MovementKind.Printed, 100, 200m);
        await using var db = stores.Context(small.Id);

        foreach (var change in new[] { "UPDATE copy_movements SET copies = 1", "DELETE FROM copy_movements", "TRUNCATE copy_movements CASCADE" })
        {
            var refused = await Assert.ThrowsAsync<PostgresException>(() => db.Database.ExecuteSqlRawAsync(change));
            Assert.Equal(PostgresErrorCodes.RestrictViolation, refused.SqlState);
        }
    }

    [Fact]
    public async Task A_way_of_selling_that_the_ledger_names_is_in_use_and_a_printing_with_lines_stays()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        await WriteAsync(stores, small, 0, MovementKind.Sold, 1, 9m, SmallPress.Post.Id);

        var channel = Assert.IsType<DeleteResult.InUse>(await stores.Channels.DeleteAsync(small.Id, await stores.Channels.KeptAsync(small.Id, SmallPress.Post)));
        var edition = Assert.IsType<DeleteResult.InUse>(await stores.Editions.DeleteAsync(small.Id, small.Edition));

        Assert.Equal("Tidepool Almanac, printing 1: sales", Assert.Single(channel.Where));
        Assert.Equal("printing 1: lines in its copies ledger", Assert.Single(edition.Where));
    }

    [Fact]
    public async Task Writers_at_once_lose_and_double_nothing()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var second = SmallPress.Saved(await stores.Editions.CopyForwardAsync(small.Id, small.Edition.Id));
        var editions = new[] { small.Edition.Id, second.Id };
        var each = LongRuns.Count(usual: 40, atLength: 1250);

        await Task.WhenAll(Enumerable.Range(0, 8).Select(async writer =>
        {
            for (var number = 0; number < each; number++)
            {
                var line = New(small, number % 28, (MovementKind)(number % 5), 1 + (number % 3)) with { EditionId = editions[(writer + number) % 2] };
                SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, line));
                if (number % 7 == writer % 7)
                {
                    await Task.WhenAll(stores.Ledger.TakeBackAsync(small.Id, line.Id), stores.Ledger.TakeBackAsync(small.Id, line.Id), stores.Ledger.WriteAsync(small.Id, line));
                }
            }
        }));

        foreach (var edition in editions)
        {
            var lines = await stores.Ledger.OfEditionAsync(small.Id, edition);
            Assert.Equal(lines.Sum(line => (long)line.Movement.Copies), (await stores.Ledger.OnHandAsync(small.Id, edition))!.Value.OnHand);
            Assert.Equal(lines.Count, lines.Select(line => line.Movement.Sequence).Distinct().Count());
            Assert.Equal(lines.Count, lines.Max(line => line.Movement.Sequence));
        }

        var all = await Task.WhenAll(editions.Select(edition => stores.Ledger.OfEditionAsync(small.Id, edition)));
        Assert.Equal(8 * each, all.SelectMany(lines => lines).Count(line => line.TakesBack is null));
    }

    [Fact]
    public async Task More_copies_than_a_ledger_holds_are_refused_in_a_sentence_and_all_that_is_there_is_read_and_taken_in_elsewhere()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        List<NewMovement> printed = [.. Enumerable.Range(0, 1_000).Select(_ => New(small, 1, MovementKind.Printed, Job.MostCopies))];
        var tooMany = await Assert.ThrowsAsync<ImportRefusedException>(
            () => stores.Ledger.ImportAsync(small.Id, [small.Edition.Id], () => [.. printed, .. printed.Select(line => line with { Id = Guid.NewGuid() }), .. printed.Select(line => line with { Id = Guid.NewGuid() })], Guid.NewGuid()));
        Assert.StartsWith("The ledger of one printing takes at most", tooMany.Problem.Rule, StringComparison.Ordinal);

        Assert.Equal(1_000, (await stores.Ledger.ImportAsync(small.Id, [small.Edition.Id], () => printed, Guid.NewGuid()))!.Lines);

        foreach (var kind in new[] { MovementKind.Printed, MovementKind.Sold, MovementKind.Returned })
        {
            var refused = Assert.IsType<SaveResult<MovementRecord>.Refused>(await stores.Ledger.WriteAsync(small.Id, New(small, 2, kind, 1)));
            Assert.StartsWith("The ledger of one printing takes at most", Assert.Single(refused.Problems).Rule, StringComparison.Ordinal);
        }

        SmallPress.Saved(await stores.Ledger.TakeBackAsync(small.Id, printed[0].Id));
        var sales = await stores.Outlooks.ByDayAsync(small.Id, [small.Title.Id], First);
        Assert.Equal(999_000_000L, SalesHistory.Of(sales[small.Title.Id], First, First.AddDays(9), 5).Periods.Count is > 0 ? CopiesAccount.At(sales[small.Title.Id]).OnHand : 0L);
        Assert.Equal(999_000_000L, (await stores.Shelf.ShowAsync(small.Id, new ShelfFilter())).Totals.CopiesOnHand);
        Assert.True((await stores.Archives.ImportAsync((await stores.Archives.ExportAsync(small.Id))!)).Succeeded);
    }

    private static async Task<MovementRecord> WriteAsync(
        Stores stores, SmallPress small, int day, MovementKind kind, int copies, decimal amount = 0m, string? channel = null, PrintingActual? printing = null) =>
        SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, New(small, day, kind, copies, amount, channel) with { Printing = printing }));

    private static NewMovement New(SmallPress small, int day, MovementKind kind, int copies, decimal amount = 0m, string? channel = null) =>
        new(Guid.NewGuid(), small.Edition.Id, First.AddDays(day), kind, copies, amount, channel);
}
