using Microsoft.EntityFrameworkCore;
using Npgsql;
using PressRun.Data.Access;
using PressRun.Data.Copies;
using PressRun.Data.Tallies;
using PressRun.Data.Tests.Fixtures;
using PressRun.Data.Tests.People;
using PressRun.Engine.Bench;
using PressRun.Engine.Copies;

namespace PressRun.Data.Tests;

public sealed class TallyStoreTests(PostgresFixture postgres)
{
    private const int People = 8;

    [Fact]
    public async Task An_entry_is_written_once_however_often_it_is_sent_and_what_was_taken_back_comes_to_nothing()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var tally = await BegunAsync(stores, small);
        var (kept, undone) = (Done(5), Done(3) with { TakenBack = true });

        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => stores.Tallies.WriteAsync(small.Id, tally.Id, [kept, undone, kept])));

        Assert.All(answers, answer => Assert.Equal([null, null, null], answer!.Select(outcome => outcome.Problem)));
        var whole = (await stores.Tallies.FindAsync(small.Id, tally.Id))!;
        Assert.Equal([5, 3, -3], whole.Entries.Select(entry => entry.Copies));
        Assert.Equal((5, 3), (whole.Sums().Steps[0].Done, whole.Tally.Lines));
        Assert.Equal(new TallyMark(3, null), await stores.Tallies.MarkAsync(small.Id, tally.Id));
    }

    [Fact]
    public async Task What_was_sent_first_and_taken_back_later_is_taken_back_once()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var tally = await BegunAsync(stores, small);
        var entry = Done(10);
        await stores.Tallies.WriteAsync(small.Id, tally.Id, [entry]);

        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => stores.Tallies.WriteAsync(small.Id, tally.Id, [entry with { TakenBack = true }])));

        Assert.Equal([10, -10], (await stores.Tallies.FindAsync(small.Id, tally.Id))!.Entries.Select(written => written.Copies));
    }

    [Fact]
    public async Task Sums_are_those_of_the_entries_when_many_count_at_once_and_half_the_messages_come_twice()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var tally = await BegunAsync(stores, small);
        var messages = LongRuns.Count(usual: 40, atLength: 1250);

        // Each person counts a copy, a spoiled one or a minute at a step of their choice, and now and then takes the last one back.
        async Task<List<NewTallyEntry>> CountAsync(int person)
        {
            var chance = new Random(person);
            var sent = new List<NewTallyEntry>();
            for (var message = 0; message < messages; message++)
            {
                var kind = (TallyKind)chance.Next(3);
                var number = chance.Next(1, 11);
                var entry = new NewTallyEntry(
                    Guid.NewGuid(), new TallyEntry(chance.Next(2), kind, kind == TallyKind.Worked ? 0 : number, kind == TallyKind.Worked ? number : 0, $"person {person}"),
                    TimeSpan.FromSeconds(chance.Next(100)), chance.Next(10) == 0);
                sent.Add(entry);
                for (var time = chance.Next(2); time >= 0; time--)
                {
                    Assert.Null(Assert.Single((await stores.Tallies.WriteAsync(small.Id, tally.Id, [entry]))!).Problem);
                }
            }

            return sent;
        }

        var all = (await Task.WhenAll(Enumerable.Range(0, People).Select(CountAsync))).SelectMany(sent => sent).ToList();

        var whole = (await stores.Tallies.FindAsync(small.Id, tally.Id))!;
        var wanted = Tally.Of(tally.Copies, tally.Wanted, tally.Steps, all.Where(entry => !entry.TakenBack).Select(entry => entry.Entry));
        foreach (var (sum, step) in wanted.Steps.Zip(whole.Sums().Steps))
        {
            Assert.Equal((sum.Done, sum.Spoiled, sum.Left, sum.Seconds), (step.Done, step.Spoiled, step.Left, step.Seconds));
            Assert.Equal(sum.People.OrderBy(person => person.By), step.People.OrderBy(person => person.By));
        }

        Assert.Equal(all.Count + all.Count(entry => entry.TakenBack), whole.Tally.Lines);
        Assert.Equal(whole.Tally.Lines, whole.Entries.Count);
    }

    [Fact]
    public async Task People_who_begin_at_once_count_in_one_tally()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        var begun = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => stores.Tallies.BeginAsync(small.Id, Begin(small))));

        var tally = Assert.Single(begun.Select(SmallPress.Saved).DistinctBy(saved => saved.Id));
        Assert.Equal(tally.Id, (await stores.Tallies.LatestAsync(small.Id, small.Edition.Id))!.Tally.Id);
    }

    [Fact]
    public async Task A_phones_clock_alters_nothing_but_how_long_ago_it_was_and_never_before_the_tally_began()
    {
        var clock = new SetClock();
        await using var stores = await Stores.NewAsync(postgres, time: clock);
        var small = await SmallPress.CreateAsync(stores);
        var tally = await BegunAsync(stores, small);
        clock.Pass(TimeSpan.FromMinutes(30));
        var now = clock.GetUtcNow();

        await stores.Tallies.WriteAsync(
            small.Id, tally.Id, [Done(1) with { Ago = TimeSpan.FromMinutes(10) }, Done(1) with { Ago = TimeSpan.FromDays(900) }, Done(1) with { Ago = TimeSpan.FromHours(-5) }]);

        await using var db = stores.Context(small.Id);
        Assert.Equal([now.AddMinutes(-10), tally.BegunAt, now], await db.TallyEntries.OrderBy(row => row.Sequence).Select(row => row.At).ToListAsync());
    }

    [Theory]
    [InlineData(2, TallyKind.Done, 1, 0, "")]
    [InlineData(-1, TallyKind.Done, 1, 0, "")]
    [InlineData(0, TallyKind.Done, 0, 0, "")]
    [InlineData(0, TallyKind.Done, -5, 0, "")]
    [InlineData(0, TallyKind.Spoiled, 10_001, 0, "")]
    [InlineData(0, TallyKind.Spoiled, 1, 5, "")]
    [InlineData(0, TallyKind.Worked, 0, 0, "")]
    [InlineData(0, TallyKind.Worked, 0, 86_401, "")]
    [InlineData(0, TallyKind.Worked, 1, 60, "")]
    [InlineData(0, TallyKind.Done, 1, 0, "Ada\nBen")]
    public async Task What_cannot_be_is_told_and_keeps_nothing_else_out(int step, TallyKind kind, int copies, int seconds, string by)
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var tally = await BegunAsync(stores, small);

        var outcomes = await stores.Tallies.WriteAsync(
            small.Id, tally.Id, [new NewTallyEntry(Guid.NewGuid(), new TallyEntry(step, kind, copies, seconds, by), TimeSpan.Zero, false), Done(4)]);

        Assert.Equal([false, true], outcomes!.Select(outcome => outcome.Problem is null));
        Assert.Equal(4, (await stores.Tallies.FindAsync(small.Id, tally.Id))!.Sums().Steps[0].Done);
    }

    [Fact]
    public async Task A_tally_that_cannot_be_is_refused_with_what_would_be_right()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);

        foreach (var (wrong, path) in new[]
        {
            (Begin(small) with { Copies = 0 }, "$.copies"), (Begin(small) with { Wanted = 111 }, "$.wanted"), (Begin(small) with { Steps = [] }, "$.steps"),
            (Begin(small) with { Steps = [new TallyStep("", WorkKind.Fold, 0m, null)] }, "$.steps[0].name"), (Begin(small) with { Plan = "two\nlines" }, "$.plan"),
        })
        {
            Assert.Contains(path, Assert.IsType<SaveResult<TallyRecord>.Refused>(await stores.Tallies.BeginAsync(small.Id, wrong)).Problems.Select(problem => problem.Path));
        }

        Assert.IsType<SaveResult<TallyRecord>.Gone>(await stores.Tallies.BeginAsync(small.Id, Begin(small) with { EditionId = Guid.NewGuid() }));
    }

    [Fact]
    public async Task The_database_itself_refuses_to_change_what_was_counted()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var tally = await BegunAsync(stores, small);
        await stores.Tallies.WriteAsync(small.Id, tally.Id, [Done(5)]);
        await using var db = stores.Context(small.Id);

        foreach (var sql in new[] { "UPDATE tally_entries SET copies = 50", "DELETE FROM tally_entries", "TRUNCATE tally_entries", "UPDATE tallies SET copies = 1", "UPDATE tallies SET steps = '[]'" })
        {
            var refused = await Assert.ThrowsAsync<PostgresException>(() => db.Database.ExecuteSqlRawAsync(sql));
            Assert.Equal(PostgresErrorCodes.RestrictViolation, refused.SqlState);
        }

        Assert.IsType<DeleteResult.InUse>(await stores.Editions.DeleteAsync(small.Id, (await stores.Editions.LoadAsync(small.Id, small.Edition.Id))!));
    }

    [Fact]
    public async Task A_tally_goes_into_one_line_of_the_ledger_and_goes_on_when_that_line_is_taken_back()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var tally = await BegunAsync(stores, small);
        await stores.Tallies.WriteAsync(small.Id, tally.Id, [Done(100)]);
        var line = Printed(small, tally, 1);

        SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, line));
        SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, line));

        await stores.Tallies.WriteAsync(small.Id, tally.Id, [Done(3)]);
        var written = (await stores.Tallies.LatestAsync(small.Id, small.Edition.Id))!.Tally;
        Assert.Equal((new WrittenTally(line.Id, SmallPress.ListDate, 100, 1), 2), (written.Written, written.Lines));
        var again = Assert.IsType<SaveResult<MovementRecord>.Refused>(await stores.Ledger.WriteAsync(small.Id, Printed(small, tally, 2)));
        Assert.Contains("stands in the ledger already", Assert.Single(again.Problems).Rule, StringComparison.Ordinal);

        SmallPress.Saved(await stores.Ledger.TakeBackAsync(small.Id, line.Id));

        Assert.Null((await stores.Tallies.FindAsync(small.Id, tally.Id))!.Tally.Written);
        Assert.Null((await stores.Tallies.MarkAsync(small.Id, tally.Id))!.Written);
        var second = Printed(small, tally, 2);
        SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, second));
        Assert.Equal(second.Id, (await stores.Tallies.MarkAsync(small.Id, tally.Id))!.Written);
        Assert.NotEqual(tally.Id, SmallPress.Saved(await stores.Tallies.BeginAsync(small.Id, Begin(small))).Id);
    }

    [Fact]
    public async Task A_line_names_only_a_tally_of_its_own_printing()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var tally = await BegunAsync(stores, small);
        var second = SmallPress.Saved(await stores.Editions.CopyForwardAsync(small.Id, small.Edition.Id));

        Assert.IsType<SaveResult<MovementRecord>.Refused>(await stores.Ledger.WriteAsync(small.Id, Printed(small, tally, 0) with { EditionId = second.Id }));
        Assert.Null((await stores.Tallies.MarkAsync(small.Id, tally.Id))!.Written);
    }

    [Fact]
    public async Task A_reader_sees_the_tally_and_counts_nothing()
    {
        await using var stores = await Stores.NewAsync(postgres, signIn: true);
        var press = await Household.PressAsync(stores);
        var tally = await Household.AsAsync(new Visitor.Program(), () => BegunAsync(stores, press));
        using var visiting = Visiting.As(await Household.MemberAsync(stores, press.Id, "Rea", PressRole.Reader));

        Assert.NotNull(await stores.Tallies.LatestAsync(press.Id, press.Edition.Id));
        Assert.NotNull(await stores.Tallies.MarkAsync(press.Id, tally.Id));
        await Assert.ThrowsAsync<AccessRefusedException>(() => stores.Tallies.BeginAsync(press.Id, Begin(press)));
        await Assert.ThrowsAsync<AccessRefusedException>(() => stores.Tallies.WriteAsync(press.Id, tally.Id, [Done(1)]));
        using var editing = Visiting.As(await Household.MemberAsync(stores, press.Id, "Edi", PressRole.Editor));
        Assert.Null(Assert.Single((await stores.Tallies.WriteAsync(press.Id, tally.Id, [Done(1)]))!).Problem);
    }

    [Fact]
    public async Task Tallies_go_out_and_come_in_with_their_press()
    {
        await using var stores = await Stores.NewAsync(postgres);
        var small = await SmallPress.CreateAsync(stores);
        var tally = await BegunAsync(stores, small);
        await stores.Tallies.WriteAsync(small.Id, tally.Id, [Done(100), Done(3) with { TakenBack = true }, Worked(90)]);
        SmallPress.Saved(await stores.Ledger.WriteAsync(small.Id, Printed(small, tally, 4)));

        var copy = (await stores.Archives.ImportAsync((await stores.Archives.ExportAsync(small.Id))!)).Value;

        var edition = (await stores.Editions.FindAsync(copy.Id, small.Title.Slug, 1))!;
        var whole = (await stores.Tallies.LatestAsync(copy.Id, edition.Id))!;
        Assert.Equal((await stores.Tallies.FindAsync(small.Id, tally.Id))!.Entries, whole.Entries);
        Assert.Equal((tally.BegunAt, tally.Copies, tally.Wanted, "Millrace"), (whole.Tally.BegunAt, whole.Tally.Copies, whole.Tally.Wanted, whole.Tally.Plan));
        Assert.Equal(tally.Steps, whole.Tally.Steps);
        Assert.Equal((100, 4), (whole.Tally.Written!.Copies, whole.Tally.Written.Lines));
        Assert.Equal(await stores.Archives.ExportAsync(small.Id), await stores.Archives.ExportAsync(copy.Id));
    }

    private static NewTally Begin(SmallPress small) => new(
        Guid.NewGuid(), small.Edition.Id, "Millrace", 110, 100, [new TallyStep("stitch", WorkKind.Staple, 0.03m, 25.5m), new TallyStep("fold", WorkKind.Fold, 0m, null)]);

    private static async Task<TallyRecord> BegunAsync(Stores stores, SmallPress small) => SmallPress.Saved(await stores.Tallies.BeginAsync(small.Id, Begin(small)));

    private static NewTallyEntry Done(int copies) => new(Guid.NewGuid(), new TallyEntry(0, TallyKind.Done, copies, 0, "Ada"), TimeSpan.Zero, false);

    private static NewTallyEntry Worked(int seconds) => new(Guid.NewGuid(), new TallyEntry(1, TallyKind.Worked, 0, seconds, "Ben"), TimeSpan.Zero, false);

    private static NewMovement Printed(SmallPress small, TallyRecord tally, int lines) => new(
        Guid.NewGuid(), small.Edition.Id, SmallPress.ListDate, MovementKind.Printed, 100, 240m,
        Printing: new PrintingActual(100, 240m, 0m, 0m, 0m, 0m, [new StepActual("stitch", 30m, 104, 4)]), Tally: new TallySeen(tally.Id, lines));
}
