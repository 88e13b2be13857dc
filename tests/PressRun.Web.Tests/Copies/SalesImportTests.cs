using PressRun.Data;
using PressRun.Data.Copies;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Presses;
using PressRun.Engine.Copies;
using PressRun.Web.Copies;
using PressRun.Web.Libraries;
using PressRun.Web.Libraries.Files;
using PressRun.Web.Shared;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Copies;

public sealed class SalesImportTests : IDisposable
{
    private static readonly DateOnly Day = new(2026, 11, 21);
    private static readonly EditionName Book = new(Guid.NewGuid(), Guid.NewGuid(), "Marsh Letters", "marsh-letters", 1, new DateOnly(2026, 1, 2));

    private readonly string path = Path.GetTempFileName();
    private readonly Ledger ledger = new();

    [Fact]
    public async Task Rows_that_may_be_written_already_are_left_out_until_they_are_ticked()
    {
        ledger.Stands.Add(new NewMovement(Guid.NewGuid(), Book.Id, Day, MovementKind.Sold, 1, 12m, null, "R-501", null));
        var (import, source, mapping) = await LookedAsync("Date,Title,Copies,Amount,Reference\n2026-11-21,Marsh Letters,1,12.00,R-501\n2026-11-22,Marsh Letters,2,24.00,R-502\n");

        var twice = Assert.Single(import.Duplicates);
        Assert.Equal((2, "the reference R-501", 1), (twice.Row, twice.Why, import.LeftOut));
        Assert.StartsWith("1 copy of Marsh Letters, first printing, sold on", twice.What, StringComparison.Ordinal);
        Assert.Equal((false, true), (import.BringsIn(2), import.BringsIn(3)));
        import.Bring(2, bring: true);
        Assert.Equal((0, true), (import.LeftOut, import.BringsIn(2)));
        import.BringAll(bring: true);
        import.Bring(2, bring: false);
        Assert.Equal((1, false), (import.LeftOut, import.BringsIn(2)));

        var done = await import.RunAsync(import.Tables[0], source, mapping, new Progress<int>(), CancellationToken.None);
        Assert.Equal("1 sale is in the ledger. 1 row was left out, being there already.", done.Said);
        Assert.Equal((2, 24m, "R-502"), (ledger.Written.Single().Copies, ledger.Written.Single().Amount, ledger.Written.Single().Note));
        Assert.Equal("titles/marsh-letters/1/copies", import.BackTo);
        Assert.Equal([("titles/marsh-letters/1/reprint", "Marsh Letters, first printing")], import.Decides);
    }

    [Fact]
    public async Task Rows_that_somebody_wrote_after_the_look_are_shown_and_decided_on_before_any_comes_in()
    {
        foreach (var reference in new[] { "R-501", "R-502" })
        {
            ledger.Stands.Add(new NewMovement(Guid.NewGuid(), Book.Id, Day, MovementKind.Sold, 1, 12m, null, reference, null));
        }

        var (import, source, mapping) = await LookedAsync(
            "Date,Title,Copies,Amount,Reference\n2026-11-21,Marsh Letters,1,12,R-501\n2026-11-21,Marsh Letters,1,12,R-502\n2026-11-22,Marsh Letters,2,24,R-503\n2026-11-23,Marsh Letters,3,36,R-504\n");
        import.BringAll(bring: true);
        ledger.Stands.Add(new NewMovement(Guid.NewGuid(), Book.Id, Day.AddDays(2), MovementKind.Sold, 3, 36m, null, "R-504", null));
        ledger.Meanwhile = line => line.Note is "R-502" or "R-504";

        var done = await import.RunAsync(import.Tables[0], source, mapping, new Progress<int>(), CancellationToken.None);

        Assert.Equal(
            (null, "Nothing was brought in yet: somebody wrote 2 of these sales in between. Look at them below, and tick those that are to come in all the same."), (done.Said, done.Problem));
        Assert.Equal([2, 3, 5], import.Duplicates.Select(twice => twice.Row));
        Assert.Equal([true, false, true, false], Enumerable.Range(2, 4).Select(import.BringsIn));
        Assert.Equal(2, ledger.Seen![Book.Id]);

        ledger.Meanwhile = _ => false;
        Assert.Equal("2 sales are in the ledger. 2 rows were left out, being there already.", (await import.RunAsync(import.Tables[0], source, mapping, new Progress<int>(), CancellationToken.None)).Said);
        Assert.Equal(3, ledger.Seen[Book.Id]);
        Assert.Equal(["R-501", "R-503"], ledger.Written.Select(line => line.Note));
    }

    [Fact]
    public async Task A_row_keeps_its_id_when_it_is_sent_twice_and_gets_another_once_it_was_taken_back()
    {
        var (import, source, mapping) = await LookedAsync("Date,Title,Copies,Amount\n2026-11-21,Marsh Letters,1,12\n2026-11-21,Marsh Letters,3,36\n");
        Assert.Empty(import.Duplicates);
        var first = await IdsAsync();
        Assert.Equal(2, first.Distinct().Count());
        Assert.Equal(first, await IdsAsync());
        Assert.Null(await import.TakeBackAsync());
        Assert.Equal([.. ledger.Imports.Take(1)], ledger.TakenBack);
        Assert.Empty(first.Intersect(await IdsAsync()));

        async Task<List<Guid>> IdsAsync()
        {
            ledger.Written.Clear();
            await import.RunAsync(import.Tables[0], source, mapping, new Progress<int>(), CancellationToken.None);
            return [.. ledger.Written.Select(line => line.Id)];
        }
    }

    [Fact]
    public async Task Where_a_book_is_gone_nothing_comes_in_and_it_says_why()
    {
        var (import, source, mapping) = await LookedAsync("Date,Title,Copies,Amount\n2026-11-21,Marsh Letters,1,12\n");
        ledger.Gone = true;
        var done = await import.RunAsync(import.Tables[0], source, mapping, new Progress<int>(), CancellationToken.None);
        Assert.Equal((null, "Nothing was brought in: one of the books has been taken out in between."), (done.Said, done.Problem));
        Assert.Null(await import.TakeBackAsync());
        Assert.Empty(ledger.TakenBack);
    }

    public void Dispose() => File.Delete(path);

    private async Task<(SalesImport Import, CsvSource Source, CsvMapping Mapping)> LookedAsync(string text)
    {
        await File.WriteAllTextAsync(path, text);
        var import = new SalesImport(ledger, LedgerShape.Of([Book], Words.Printing, [("table", "Fair table")], Day.AddDays(30)), [Book], ALedger.Press);
        var source = CsvSource.Open(path);
        var mapping = MappingGuess.Of(source, import.Tables[0].Columns, LibraryManners.Of(ALedger.Press));
        Assert.Equal(0, import.Preview(import.Tables[0], source, mapping, new Progress<int>(), CancellationToken.None).ProblemCount);
        await import.FindAsync(source, mapping, CancellationToken.None);
        return (import, source, mapping);
    }

    private sealed class Ledger : ISalesLedger
    {
        public List<NewMovement> Stands { get; } = [];

        public List<NewMovement> Written { get; } = [];

        public List<Guid> Imports { get; } = [];

        public List<Guid> TakenBack { get; } = [];

        public bool Gone { get; set; }

        public Func<NewMovement, bool> Meanwhile { get; set; } = _ => false;

        public IReadOnlyDictionary<Guid, long>? Seen { get; private set; }

        public Task<IReadOnlyDictionary<Guid, long>> PlacesAsync(PressId press, CancellationToken cancel = default) =>
            Task.FromResult<IReadOnlyDictionary<Guid, long>>(new Dictionary<Guid, long> { [Book.Id] = Stands.Count });

        public IAsyncEnumerable<NewMovement> StandingAsync(PressId press, CancellationToken cancel = default) => Stands.ToAsyncEnumerable();

        public Task<LedgerImport?> ImportAsync(
            PressId press, IReadOnlyCollection<Guid> editionIds, Func<IEnumerable<NewMovement>> movements, Guid importId, IProgress<int>? progress = null,
            IReadOnlyDictionary<Guid, long>? seen = null, CancellationToken cancel = default)
        {
            Seen = seen;
            if (movements().Where(Meanwhile).Select(line => line.Id).ToHashSet() is { Count: > 0 } lines)
            {
                throw new WrittenMeanwhileException(lines);
            }

            Imports.Add(importId);
            Written.AddRange(Gone ? [] : movements());
            return Task.FromResult(Gone ? null : new LedgerImport(Written.Count, [.. editionIds], []));
        }

        public Task<SaveResult<IReadOnlyList<MovementRecord>>> TakeBackImportAsync(PressId press, Guid importId, CancellationToken cancel = default)
        {
            TakenBack.Add(importId);
            return Task.FromResult<SaveResult<IReadOnlyList<MovementRecord>>>(new SaveResult<IReadOnlyList<MovementRecord>>.Saved([]));
        }
    }
}
