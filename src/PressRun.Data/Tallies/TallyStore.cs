using Microsoft.EntityFrameworkCore;
using PressRun.Data.Presses;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.JobFile;

namespace PressRun.Data.Tallies;

/// <summary>
/// Tallies of the table. They are only added to: what was written down by mistake is taken back by an entry with the opposite figures. Every sum is the
/// sum of the entries, because whoever adds one holds the tally's row.
/// </summary>
public sealed class TallyStore
{
    /// <summary>Most characters of the name of whoever counts.</summary>
    public const int MostName = 60;

    /// <summary>Most copies of one entry.</summary>
    public const int MostCopies = 10_000;

    /// <summary>Longest stretch of work in one entry, in seconds: a day.</summary>
    public const int MostSeconds = 86_400;

    private readonly PressDatabase database;

    internal TallyStore(PressDatabase database) => this.database = database;

    /// <summary>Begins a tally. While another of the same printing goes on, that one is answered: two people who begin at once count in one.</summary>
    /// <returns>Saved, Gone where there is no such printing, or Refused.</returns>
    public Task<SaveResult<TallyRecord>> BeginAsync(PressId press, NewTally tally, CancellationToken cancel = default) =>
        database.WriteAsync<SaveResult<TallyRecord>>(
            press,
            async db =>
            {
                await db.Database.ExecuteSqlAsync($"SELECT 1 FROM editions WHERE press_id = {press.Value} AND id = {tally.EditionId} FOR UPDATE", cancel);
                if (!await db.Editions.AnyAsync(edition => edition.Id == tally.EditionId, cancel))
                {
                    return new SaveResult<TallyRecord>.Gone();
                }

                if (await LatestAsync(db, tally.EditionId, cancel) is { } latest && (latest.Id == tally.Id || latest.Written is null))
                {
                    return new SaveResult<TallyRecord>.Saved(latest);
                }

                if (Problems(tally) is { Count: > 0 } problems)
                {
                    return new SaveResult<TallyRecord>.Refused(problems);
                }

                var row = new TallyRow
                {
                    PressId = press, Id = tally.Id, EditionId = tally.EditionId, Plan = tally.Plan, BegunAt = database.Now, Copies = tally.Copies, Wanted = tally.Wanted,
                    Steps = tally.Steps,
                };
                db.Tallies.Add(row);
                await db.SaveChangesAsync(cancel);
                return new SaveResult<TallyRecord>.Saved(row.ToRecord(null));
            },
            cancel);

    /// <summary>The tally of a printing that was begun last, or null.</summary>
    public Task<TallyWhole?> LatestAsync(PressId press, Guid editionId, CancellationToken cancel = default) =>
        database.ReadMomentAsync(press, async db => await WholeAsync(db, await LatestAsync(db, editionId, cancel), cancel), cancel);

    /// <summary>A tally by its id, or null.</summary>
    public Task<TallyWhole?> FindAsync(PressId press, Guid id, CancellationToken cancel = default) =>
        database.ReadMomentAsync(press, async db => await WholeAsync(db, await RecordAsync(db, db.Tallies.Where(row => row.Id == id), cancel), cancel), cancel);

    /// <summary>How far a tally has come, or null where there is none. One row is read, however long the tally.</summary>
    public Task<TallyMark?> MarkAsync(PressId press, Guid id, CancellationToken cancel = default) =>
        database.ReadAsync(
            press,
            db => db.Tallies.AsNoTracking().Where(row => row.Id == id)
                .Select(row => new TallyMark(row.Lines, db.CopyMovements.Any(back => back.TakesBack == row.WrittenInto) ? null : row.WrittenInto))
                .SingleOrDefaultAsync(cancel),
            cancel);

    /// <summary>Writes entries down, each by itself: one that cannot be keeps none of the others out. Sent again they are answered and not written again.</summary>
    /// <param name="press">Whose tally.</param>
    /// <param name="id">The tally.</param>
    /// <param name="entries">In the order in which they happened.</param>
    /// <param name="cancel">Gives up waiting.</param>
    /// <returns>What became of each; null where there is no such tally.</returns>
    public Task<IReadOnlyList<TallyOutcome>?> WriteAsync(PressId press, Guid id, IReadOnlyList<NewTallyEntry> entries, CancellationToken cancel = default) =>
        database.WriteAsync<IReadOnlyList<TallyOutcome>?>(
            press,
            async db =>
            {
                await db.Database.ExecuteSqlAsync($"SELECT 1 FROM tallies WHERE press_id = {press.Value} AND id = {id} FOR UPDATE", cancel);
                if (await db.Tallies.SingleOrDefaultAsync(row => row.Id == id, cancel) is not { } tally)
                {
                    return null;
                }

                var ids = entries.Select(entry => entry.Id).ToList();
                var writing = new TallyWriting(
                    db,
                    tally,
                    database.Now,
                    await db.TallyEntries.Where(row => ids.Contains(row.Id)).ToDictionaryAsync(row => row.Id, cancel),
                    await db.TallyEntries.Where(row => row.TakesBack != null && ids.Contains(row.TakesBack.Value)).Select(row => row.TakesBack!.Value).ToHashSetAsync(cancel));
                var outcomes = entries.Select(entry => new TallyOutcome(entry.Id, writing.Take(entry))).ToList();
                await db.SaveChangesAsync(cancel);
                return outcomes;
            },
            cancel);

    private static Task<TallyRecord?> LatestAsync(PressRunDbContext db, Guid editionId, CancellationToken cancel) =>
        RecordAsync(db, db.Tallies.Where(row => row.EditionId == editionId).OrderByDescending(row => row.BegunAt).ThenByDescending(row => row.Id).Take(1), cancel);

    private static async Task<TallyRecord?> RecordAsync(PressRunDbContext db, IQueryable<TallyRow> which, CancellationToken cancel) =>
        await which.AsNoTracking().SingleOrDefaultAsync(cancel) is { } row ? row.ToRecord(await WrittenAsync(db, row, cancel)) : null;

    private static async Task<WrittenTally?> WrittenAsync(PressRunDbContext db, TallyRow row, CancellationToken cancel)
    {
        var line = await db.CopyMovements.Where(line => line.Id == row.WrittenInto && !db.CopyMovements.Any(back => back.TakesBack == line.Id))
            .Select(line => new { line.Id, line.Day, line.Copies }).SingleOrDefaultAsync(cancel);
        return line is null ? null : new WrittenTally(line.Id, line.Day, line.Copies, row.WrittenLines);
    }

    private static async Task<TallyWhole?> WholeAsync(PressRunDbContext db, TallyRecord? tally, CancellationToken cancel) => tally is null
        ? null
        : new TallyWhole(tally, (await db.TallyEntries.AsNoTracking().Where(row => row.TallyId == tally.Id).OrderBy(row => row.Sequence).ToListAsync(cancel)).ConvertAll(row => row.ToEntry()));

    /// <summary>What is wrong with a tally that begins; empty where nothing is.</summary>
    internal static List<Problem> Problems(NewTally tally)
    {
        var problems = new List<Problem>();
        Require(tally.Id != Guid.Empty, "id", "A tally has an id of its own.");
        Require(JobRules.Copies.Holds(tally.Copies), "copies", JobRules.Copies.Sentence);
        Require(JobRules.Copies.Holds(tally.Wanted), "wanted", JobRules.Copies.Sentence);
        Require(tally.Wanted <= tally.Copies, "wanted", "No more good copies can come out than lie on the table.");
        Require(tally.Steps.Count > 0, "steps", "A tally has a step or more.");
        problems.AddRange(LibraryRules.Still("$.plan", tally.Plan));
        problems.AddRange(LibraryRules.Names("steps", tally.Steps.Select(step => step.Name)));
        problems.AddRange(TallyShape.Problems(tally.Steps));
        return problems;

        void Require(bool holds, string member, string rule)
        {
            if (!holds)
            {
                problems.Add(new Problem($"$.{member}", null, rule));
            }
        }
    }
}
