using PressRun.Data;
using PressRun.Data.Copies;
using PressRun.Data.Import;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Engine.Copies;
using PressRun.Web.Libraries;
using PressRun.Web.Libraries.Files;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Copies;

/// <summary>Brings a list of sales into the copies ledger, all of it or nothing; what may be written already is left out unless it is said otherwise.</summary>
/// <param name="ledger">Where the lines go.</param>
/// <param name="shape">How rows become lines.</param>
/// <param name="names">Printings by name.</param>
/// <param name="press">The press.</param>
public sealed class SalesImport(ISalesLedger ledger, LedgerShape shape, IReadOnlyList<EditionName> names, PressView press) : IImportTarget, IFindsDuplicates
{
    private const int MostTold = 200;
    private const int MostDecided = 5;

    private readonly CellManners own = LibraryManners.Of(press);
    private readonly HashSet<int> otherwise = [];
    private HashSet<int> found = [];
    private IReadOnlyDictionary<Guid, long> seen = new Dictionary<Guid, long>();
    private bool bringAll;
    private Guid importId = Guid.NewGuid();
    private LedgerImport? written;

    /// <inheritdoc/>
    public string Name => Say($"sales");

    /// <inheritdoc/>
    public string Hint =>
        Say($"Take the list of a till, a web shop or your own table as it is. Its columns are guessed; you look at the guess, at what is in the ledger already, and then at what would come of it.");

    /// <inheritdoc/>
    public string BackTo => written is { Editions: [var only] } && names.FirstOrDefault(name => name.Id == only) is { } edition
        ? FormattableString.Invariant($"titles/{edition.Slug}/{edition.Printing}/copies")
        : "shelf";

    /// <inheritdoc/>
    public IReadOnlyList<(string Address, string Name)> Decides =>
    [
        .. names.Where(name => written?.Editions.Contains(name.Id) == true).Take(MostDecided)
            .Select(name => (FormattableString.Invariant($"titles/{name.Slug}/{name.Printing}/reprint"), $"{name.Title}, {Words.Printing(name.Printing)}")),
    ];

    /// <inheritdoc/>
    public IReadOnlyList<ImportTable> Tables { get; } = [new ImportTable("all", shape.Name, shape.Columns)];

    /// <inheritdoc/>
    public IReadOnlyList<FoundDuplicate> Duplicates { get; private set; } = [];

    /// <inheritdoc/>
    public int DuplicateCount => found.Count;

    /// <inheritdoc/>
    public int LeftOut => bringAll ? otherwise.Count : found.Count - otherwise.Count;

    /// <inheritdoc/>
    public bool BringsIn(int row) => !found.Contains(row) || bringAll != otherwise.Contains(row);

    /// <inheritdoc/>
    public void Bring(int row, bool bring)
    {
        if (BringsIn(row) != bring && !otherwise.Remove(row))
        {
            otherwise.Add(row);
        }
    }

    /// <inheritdoc/>
    public void BringAll(bool bring)
    {
        bringAll = bring;
        otherwise.Clear();
    }

    /// <inheritdoc/>
    public CsvPreview Preview(ImportTable table, CsvSource source, CsvMapping mapping, IProgress<int> progress, CancellationToken cancel)
    {
        (Duplicates, found) = ([], []);
        BringAll(bring: false);
        return CsvReading.Preview(source, mapping, shape, own, progress, cancel);
    }

    /// <inheritdoc/>
    public async Task FindAsync(CsvSource source, CsvMapping mapping, CancellationToken cancel)
    {
        // Before the lines are read: one that comes in while they are is looked at once more when these are written.
        var places = await ledger.PlacesAsync(press.Record.Id, cancel);
        var finder = new DuplicateFinder();
        await foreach (var line in ledger.StandingAsync(press.Record.Id, cancel))
        {
            finder.Add(line);
        }

        var rows = new HashSet<int>();
        var told = new List<FoundDuplicate>();
        foreach (var read in CsvReading.Things(source, mapping, shape, own, _ => { }, cancel))
        {
            if (finder.Look(read.Thing) is { } reason && rows.Add(read.Row) && told.Count < MostTold)
            {
                told.Add(new FoundDuplicate(
                    read.Row, Said(read.Thing), reason == DuplicateReason.Reference ? Say($"the reference {read.Thing.Note}") : Say($"the same day, way of selling and copies")));
            }
        }

        (Duplicates, found, seen) = (told, rows, places);
    }

    /// <inheritdoc/>
    public async Task<ImportDone> RunAsync(ImportTable table, CsvSource source, CsvMapping mapping, IProgress<int> progress, CancellationToken cancel)
    {
        try
        {
            written = await ledger.ImportAsync(press.Record.Id, [.. Lines().Select(line => line.EditionId).Distinct()], Lines, importId, progress, seen, cancel);
        }
        catch (WrittenMeanwhileException meanwhile)
        {
            await FindAgainAsync(source, mapping, meanwhile.Lines, cancel);
            return new ImportDone(null, Say(meanwhile.Lines.Count,
                $"Nothing was brought in yet: somebody wrote {press.Format.Count(meanwhile.Lines.Count)} of these sales in between. Look at it below, and tick it if it is to come in all the same.",
                $"Nothing was brought in yet: somebody wrote {press.Format.Count(meanwhile.Lines.Count)} of these sales in between. Look at them below, and tick those that are to come in all the same."));
        }
        catch (ImportRefusedException refusal)
        {
            return new ImportDone(null, Say($"Nothing was brought in. Sale number {refusal.Index + 1}: {SayWhole(refusal.Problem.Rule)}"));
        }

        if (written is null)
        {
            return new ImportDone(null, Say($"Nothing was brought in: one of the books has been taken out in between."));
        }

        return new ImportDone(string.Join(' ', Came(written)), null);

        // The same row has the same id, so that what is sent twice is written once.
        IEnumerable<NewMovement> Lines() => CsvReading.Things(source, mapping, shape, own, Refuse, cancel)
            .Where(read => BringsIn(read.Row)).Select(read => read.Thing with { Id = IdOf(read.Row) });
    }

    /// <inheritdoc/>
    public async Task<string?> TakeBackAsync()
    {
        if (written is null)
        {
            return null;
        }

        if (written.Lines > 0 && await ledger.TakeBackImportAsync(press.Record.Id, importId) is SaveResult<IReadOnlyList<MovementRecord>>.Refused refused)
        {
            return Words.Standing(refused.Problems);
        }

        // Brought in once more it is an import of its own: what was taken back stays taken back.
        (importId, written) = (Guid.NewGuid(), null);
        return null;
    }

    // What was decided holds on, but for rows that were written meanwhile.
    private async Task FindAgainAsync(CsvSource source, CsvMapping mapping, IReadOnlySet<Guid> meanwhile, CancellationToken cancel)
    {
        var ticked = found.Where(row => BringsIn(row) && !meanwhile.Contains(IdOf(row))).ToHashSet();
        await FindAsync(source, mapping, cancel);
        BringAll(bring: false);
        foreach (var row in ticked.Where(found.Contains))
        {
            Bring(row, bring: true);
        }
    }

    // In sentences that each stand by themselves.
    private IEnumerable<string> Came(LedgerImport import)
    {
        const int most = 3;
        yield return Say(import.Lines, $"{press.Format.Count(import.Lines)} sale is in the ledger.", $"{press.Format.Count(import.Lines)} sales are in the ledger.");
        if (LeftOut > 0)
        {
            yield return Say(LeftOut, $"{press.Format.Count(LeftOut)} row was left out, being there already.", $"{press.Format.Count(LeftOut)} rows were left out, being there already.");
        }

        var named = import.CountNeeded.Select(id => names.First(name => name.Id == id)).Select(name => $"{name.Title}, {Words.Printing(name.Printing)}").ToList();
        if (named.Count > 0)
        {
            var first = string.Join("; ", named.Take(most));
            yield return Say($"More went than was on hand; count needed: {(named.Count > most ? Say($"{first} and {named.Count - most} more") : first)}.");
        }
    }

    private string Said(NewMovement line)
    {
        var name = names.First(name => name.Id == line.EditionId);
        return Say($"{Words.Copies(line.Copies, press.Format.Count)} of {name.Title}, {Words.Printing(name.Printing)}, {LedgerWords.Of(line.Kind)} on {press.Format.Day(line.Day)}");
    }

    private Guid IdOf(int row)
    {
        Span<byte> bytes = stackalloc byte[16];
        importId.TryWriteBytes(bytes);
        BitConverter.TryWriteBytes(bytes[12..], BitConverter.ToInt32(bytes[12..]) ^ row);
        return new Guid(bytes);
    }

    // The preview found none; a file that changed in between must not come in half.
    private static void Refuse(CellProblem problem) => throw new CsvRefusedException(Say($"Row {problem.Row} is not right any more: {SayWhole(problem.Rule)}"));
}
