using PressRun.Data;
using PressRun.Data.Import;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Libraries.Files;

/// <summary>Brings a file into a library.</summary>
/// <param name="store">Where the things are kept.</param>
/// <param name="shape">How rows become things.</param>
/// <param name="press">The press.</param>
/// <param name="backTo">Address of the library's page.</param>
public sealed class LibraryImport<T>(LibraryStore<T> store, TableShape<LibraryItem<T>> shape, PressView press, string backTo) : IImportTarget
    where T : class
{
    private readonly CellManners own = LibraryManners.Of(press);
    private ImportReceipt<T>? receipt;

    /// <inheritdoc/>
    public string Name => RowWords.Of(shape.Name);

    /// <inheritdoc/>
    public string BackTo => backTo;

    /// <inheritdoc/>
    public IReadOnlyList<ImportTable> Tables { get; } = [new ImportTable("all", shape.Name, shape.Columns)];

    private PressId Press => press.Record.Id;

    /// <inheritdoc/>
    public CsvPreview Preview(ImportTable table, CsvSource source, CsvMapping mapping, IProgress<int> progress, CancellationToken cancel) =>
        CsvReading.Preview(source, mapping, shape, own, progress, cancel);

    /// <inheritdoc/>
    public async Task<ImportDone> RunAsync(ImportTable table, CsvSource source, CsvMapping mapping, IProgress<int> progress, CancellationToken cancel)
    {
        // What the file has no column for stays as it is in a thing that is there already.
        var said = mapping.Columns.Select(column => column.Column).OfType<int>().Concat(mapping.Everywhere.Keys).ToHashSet();
        try
        {
            receipt = await store.ImportAsync(
                Press,
                () => CsvReading.Things(source, mapping, shape, own, Refuse, cancel).Select(read => read.Thing),
                (thing, old) => shape.Completed(thing, old, said),
                progress,
                cancel);
        }
        catch (ImportRefusedException refusal)
        {
            return new ImportDone(null, Say($"Nothing was brought in. {Name}, number {refusal.Index + 1}: {SayWhole(refusal.Problem.Rule)}"));
        }

        return new ImportDone(Say($"Brought in: {string.Join(", ", Parts(receipt))}."), null);
    }

    /// <inheritdoc/>
    public async Task<string?> TakeBackAsync()
    {
        if (receipt is null)
        {
            return null;
        }

        var inTheWay = await store.TakeBackAsync(Press, receipt);
        receipt = inTheWay.Count == 0 ? null : receipt;
        const int most = 3;
        return inTheWay.Count == 0 ? null : Say($"Nothing was taken back. {string.Join(" ", inTheWay.Take(most).Select(SayWhole))}");
    }

    private IEnumerable<string> Parts(ImportReceipt<T> done)
    {
        if (done.Added.Count > 0)
        {
            yield return Say($"{press.Format.Count(done.Added.Count)} added");
        }

        if (done.Replaced.Count > 0)
        {
            yield return Say($"{press.Format.Count(done.Replaced.Count)} changed");
        }

        if (done.Unchanged > 0)
        {
            yield return Say(done.Unchanged, $"{press.Format.Count(done.Unchanged)} was the same", $"{press.Format.Count(done.Unchanged)} were the same");
        }
    }

    // The preview found none; a file that changed in between must not come in half.
    private static void Refuse(CellProblem problem) => throw new CsvRefusedException(Say($"Row {problem.Row} is not right any more: {SayWhole(problem.Rule)}"));
}
