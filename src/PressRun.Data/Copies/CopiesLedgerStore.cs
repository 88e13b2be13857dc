using System.Runtime.CompilerServices;
using Microsoft.EntityFrameworkCore;
using PressRun.Data.Presses;
using PressRun.Data.Titles;
using PressRun.Engine.Copies;

namespace PressRun.Data.Copies;

/// <summary>
/// The copies ledger of one press. It is only added to: a mistake is taken back by a line with the opposite figures. What is on hand is always the sum
/// of the lines, because whoever adds one holds the edition's row while it is added to the sum.
/// </summary>
public sealed class CopiesLedgerStore : ISalesLedger
{
    private const int PageSize = 2000;

    private readonly PressDatabase database;

    internal CopiesLedgerStore(PressDatabase database) => this.database = database;

    /// <summary>What is on hand of an edition, or null where there is no such edition. One row is read, however long the ledger.</summary>
    public Task<CopiesOnHand?> OnHandAsync(PressId press, Guid editionId, CancellationToken cancel = default) =>
        database.ReadAsync(
            press,
            db => db.EditionCopies.Where(row => row.EditionId == editionId)
                .Select(row => (CopiesOnHand?)new CopiesOnHand(row.OnHand, row.CountNeeded)).SingleOrDefaultAsync(cancel),
            cancel);

    /// <summary>What the ledger of an edition says of what was printed; nothing where there is no such edition.</summary>
    public Task<PrintedCopies> PrintedAsync(PressId press, Guid editionId, CancellationToken cancel = default) =>
        database.ReadAsync(
            press,
            db => db.CopyMovements.Where(line => line.EditionId == editionId && line.Kind == MovementKind.Printed).GroupBy(line => line.EditionId)
                .Select(lines => new PrintedCopies(lines.Sum(line => (long)line.Copies), lines.Sum(line => line.Amount))).SingleOrDefaultAsync(cancel),
            cancel);

    /// <summary>All lines of an edition, the latest day first.</summary>
    public async Task<IReadOnlyList<MovementRecord>> OfEditionAsync(PressId press, Guid editionId, CancellationToken cancel = default) =>
        (await database.ReadAsync(
            press,
            db => db.CopyMovements.AsNoTracking().Where(row => row.EditionId == editionId)
                .OrderByDescending(row => row.Day).ThenByDescending(row => row.Sequence).ToListAsync(cancel),
            cancel)).ConvertAll(row => row.ToRecord());

    /// <summary>What moved of all printings of some titles, by title; titles of which nothing moved are left out, and so is a line that was taken back
    /// with the one that took it back: on no day do the two leave a copy more or less.</summary>
    public async Task<ILookup<Guid, CopyMovement>> OfTitlesAsync(PressId press, IReadOnlyCollection<Guid> titleIds, CancellationToken cancel = default)
    {
        var moved = await database.ReadAsync(
            press,
            db => WithoutPairs(db)
                .Join(
                    db.Editions.Where(edition => titleIds.Contains(edition.TitleId)),
                    row => row.EditionId,
                    edition => edition.Id,
                    (row, edition) => new { edition.TitleId, row.Day, row.Sequence, row.Kind, row.Copies, row.Amount })
                .OrderBy(row => row.Day).ThenBy(row => row.Sequence).ToListAsync(cancel),
            cancel);
        return moved.ToLookup(row => row.TitleId, row => new CopyMovement(row.Day, row.Sequence, row.Kind, row.Copies, row.Amount));
    }

    /// <summary>Printings that were printed, those with copies on hand first, by title; archived ones are left out.</summary>
    /// <param name="press">Whose.</param>
    /// <param name="most">At most so many.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public Task<List<CopiesForSale>> ForSaleAsync(PressId press, int most, CancellationToken cancel = default) =>
        database.ReadAsync(
            press,
            db => db.Editions.AsNoTracking()
                .Where(edition => edition.CopiesPrinted != null && !edition.Archived && !edition.Title.Archived)
                .OrderBy(edition => edition.Copies.OnHand > 0 ? 0 : 1).ThenBy(edition => edition.Title.SearchText).ThenByDescending(edition => edition.Printing)
                .Take(most)
                .Select(edition => new CopiesForSale(
                    edition.Id, edition.Title.Title, edition.Title.Slug, edition.Title.Colour, edition.Printing, edition.Price, edition.Copies.OnHand))
                .ToListAsync(cancel),
            cancel);

    /// <summary>
    /// Writes a line. Sent again with the same id it is answered and not written again. A line of a day before a later count changes the ledger of
    /// that day, and is set against that count, which had seen its copies already.
    /// </summary>
    /// <returns>Saved, Gone where there is no such edition, or Refused.</returns>
    public async Task<SaveResult<MovementRecord>> WriteAsync(PressId press, NewMovement movement, CancellationToken cancel = default) =>
        One(await database.WriteAsync(press, db => new LedgerWriting(db, database.Now, null).WriteAsync([movement], cancel), cancel));

    /// <inheritdoc/>
    public Task<LedgerImport?> ImportAsync(
        PressId press, IReadOnlyCollection<Guid> editionIds, Func<IEnumerable<NewMovement>> movements, Guid importId, IProgress<int>? progress = null,
        IReadOnlyDictionary<Guid, long>? seen = null, CancellationToken cancel = default) =>
        database.WriteAsync(press, db => new LedgerWriting(db, database.Now, importId).WriteManyAsync(editionIds, movements, seen, progress, cancel), cancel);

    /// <inheritdoc/>
    public async Task<IReadOnlyDictionary<Guid, long>> PlacesAsync(PressId press, CancellationToken cancel = default) =>
        await database.ReadAsync(press, db => db.EditionCopies.AsNoTracking().ToDictionaryAsync(row => row.EditionId, row => row.Lines, cancel), cancel);

    /// <inheritdoc/>
    public async IAsyncEnumerable<NewMovement> StandingAsync(PressId press, [EnumeratorCancellation] CancellationToken cancel = default)
    {
        for (Guid? from = null; ;)
        {
            var after = from;
            var page = await database.ReadAsync(press, db => PageAsync(db, after, cancel), cancel);
            foreach (var row in page)
            {
                yield return row.Anew();
            }

            if (page.Count < PageSize)
            {
                yield break;
            }

            from = page[^1].Id;
        }
    }

    /// <summary>Every printing of the press by what a list of sales may call it, archived ones too.</summary>
    public Task<List<EditionName>> NamesAsync(PressId press, CancellationToken cancel = default) =>
        database.ReadAsync(
            press,
            db => db.Editions.AsNoTracking().OrderBy(edition => edition.Title.SearchText).ThenBy(edition => edition.Printing)
                .Select(edition => new EditionName(edition.Id, edition.TitleId, edition.Title.Title, edition.Title.Slug, edition.Printing, edition.PrintedOn))
                .ToListAsync(cancel),
            cancel);

    /// <summary>Printings that stand and of which it was written down what they really were, with their editions.</summary>
    public async Task<IReadOnlyList<(Guid EditionId, PrintingActual Printing)>> PrintingsAsync(PressId press, CancellationToken cancel = default) =>
        (await database.ReadAsync(
            press,
            db => Standing(db).Where(row => row.Kind == MovementKind.Printed && row.Printing != null)
                .OrderBy(row => row.Day).ThenBy(row => row.Sequence).Select(row => new { row.EditionId, row.Printing }).ToListAsync(cancel),
            cancel)).ConvertAll(row => (row.EditionId, row.Printing!));

    /// <summary>Takes a line back by one of the same day and kind with the opposite figures. Taken back again it is only answered.</summary>
    /// <returns>Saved with the line that takes back; Gone; or Refused where the line itself takes back another, or belongs to a count.</returns>
    public async Task<SaveResult<MovementRecord>> TakeBackAsync(PressId press, Guid movementId, CancellationToken cancel = default) =>
        One(await database.WriteAsync(press, db => new LedgerWriting(db, database.Now, null).TakeBackAsync(row => row.Id == movementId, cancel), cancel));

    /// <inheritdoc/>
    public Task<SaveResult<IReadOnlyList<MovementRecord>>> TakeBackImportAsync(PressId press, Guid importId, CancellationToken cancel = default) =>
        database.WriteAsync(
            press, db => new LedgerWriting(db, database.Now, null).TakeBackAsync(row => row.ImportId == importId && row.SettledBy == null, cancel), cancel);

    internal static IQueryable<CopyMovementRow> WithoutPairs(PressRunDbContext db) =>
        db.CopyMovements.AsNoTracking().Where(row => row.TakesBack == null && !db.CopyMovements.Any(back => back.TakesBack == row.Id));

    private static IQueryable<CopyMovementRow> Standing(PressRunDbContext db) => WithoutPairs(db).Where(row => row.SettledBy == null);

    private static async Task<List<CopyMovementRow>> PageAsync(PressRunDbContext db, Guid? after, CancellationToken cancel)
    {
        var last = await db.CopyMovements.AsNoTracking().Where(row => row.Id == after).Select(row => new { row.Day, row.Id }).SingleOrDefaultAsync(cancel);
        var rows = Standing(db).Where(row => row.Kind != MovementKind.Counted);
        return await (last is null ? rows : rows.Where(row => row.Day > last.Day || (row.Day == last.Day && row.Id > last.Id)))
            .OrderBy(row => row.Day).ThenBy(row => row.Id).Take(PageSize).ToListAsync(cancel);
    }

    private static SaveResult<MovementRecord> One(SaveResult<IReadOnlyList<MovementRecord>> all) => all switch
    {
        SaveResult<IReadOnlyList<MovementRecord>>.Saved saved => new SaveResult<MovementRecord>.Saved(saved.Now[0]),
        SaveResult<IReadOnlyList<MovementRecord>>.Refused refused => new SaveResult<MovementRecord>.Refused(
            [.. refused.Problems.Select(problem => problem with { Path = problem.Path.Replace("$[0]", "$", StringComparison.Ordinal) })]),
        _ => new SaveResult<MovementRecord>.Gone(),
    };
}
