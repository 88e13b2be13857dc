using Microsoft.EntityFrameworkCore;
using PressRun.Data.Fixes;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Engine.Costing;

namespace PressRun.Data.Titles;

/// <summary>Editions of one press, each read and saved whole.</summary>
public sealed class EditionStore
{
    private readonly PressDatabase database;

    internal EditionStore(PressDatabase database) => this.database = database;

    /// <summary>An edition by its id, or null.</summary>
    public Task<EditionRecord?> LoadAsync(PressId press, Guid id, CancellationToken cancel = default) =>
        database.ReadAsync(press, db => LoadAsync(db, id, cancel), cancel);

    /// <summary>An edition by its address: the title's slug and the printing.</summary>
    public async Task<EditionRecord?> FindAsync(PressId press, string slug, int printing, CancellationToken cancel = default) =>
        (await database.ReadAsync(
            press,
            db => db.Editions.AsNoTracking().Whole().SingleOrDefaultAsync(row => row.Title.Slug == slug && row.Printing == printing, cancel),
            cancel))?.ToRecord();

    /// <summary>All editions of a title, first printing first.</summary>
    public async Task<IReadOnlyList<EditionRecord>> OfTitleAsync(PressId press, Guid titleId, CancellationToken cancel = default) =>
        (await database.ReadAsync(
            press,
            db => db.Editions.AsNoTracking().Whole().Where(row => row.TitleId == titleId).OrderBy(row => row.Printing).ToListAsync(cancel),
            cancel)).ConvertAll(row => row.ToRecord());

    /// <summary>The latest printing of the title that was put on the shelf last; null where there is none.</summary>
    public async Task<EditionRecord?> LatestAsync(PressId press, CancellationToken cancel = default) =>
        (await database.ReadAsync(
            press,
            // Ids of titles begin with the time they were given (RFC 9562, version 7).
            db => db.Editions.AsNoTracking().Whole().OrderByDescending(row => row.TitleId).ThenByDescending(row => row.Printing).FirstOrDefaultAsync(cancel),
            cancel))?.ToRecord();

    /// <summary>Adds an edition to its title. Its id and its parts' ids are given here.</summary>
    public Task<SaveResult<EditionRecord>> AddAsync(PressId press, EditionRecord edition, CancellationToken cancel = default) =>
        database.WriteAsync<SaveResult<EditionRecord>>(
            press,
            async db =>
            {
                // The title must not be taken out before its edition stands in it.
                await db.Database.ExecuteSqlAsync(
                    $"SELECT 1 FROM titles WHERE press_id = {press.Value} AND id = {edition.TitleId} FOR KEY SHARE", cancel);
                if (!await db.Titles.AnyAsync(title => title.Id == edition.TitleId, cancel))
                {
                    return new SaveResult<EditionRecord>.Gone();
                }

                if (await ProblemsAsync(db, edition, cancel) is { Count: > 0 } problems)
                {
                    return new SaveResult<EditionRecord>.Refused(problems);
                }

                var row = AddRow(db, edition, database.Now);
                await db.SaveChangesAsync(cancel);
                return new SaveResult<EditionRecord>.Saved((await LoadAsync(db, row.Id, cancel))!);
            },
            cancel);

    /// <summary>Saves an edition with its parts and fixed costs. An earlier record saved with the present version undoes what came after it.</summary>
    public Task<SaveResult<EditionRecord>> SaveAsync(PressId press, EditionRecord edition, CancellationToken cancel = default) =>
        database.WriteAsync<SaveResult<EditionRecord>>(
            press,
            async db =>
            {
                await LockAsync(db, edition.Id, cancel);
                var row = await db.Editions.Whole().SingleOrDefaultAsync(candidate => candidate.Id == edition.Id, cancel);
                if (row is null)
                {
                    return new SaveResult<EditionRecord>.Gone();
                }

                if (row.Version != edition.Version)
                {
                    return new SaveResult<EditionRecord>.Conflict(row.ToRecord());
                }

                if (await ProblemsAsync(db, edition with { TitleId = row.TitleId }, cancel) is { Count: > 0 } problems)
                {
                    return new SaveResult<EditionRecord>.Refused(problems);
                }

                row.Take(edition);
                row.ChangedAt = database.Now;
                db.Entry(row).Property(changed => changed.ChangedAt).IsModified = true;
                await db.SaveChangesAsync(cancel);
                return new SaveResult<EditionRecord>.Saved(row.ToRecord());
            },
            cancel);

    /// <summary>The next printing from this one: the same book and its chosen plan, on the price list in force today, with nothing printed yet.</summary>
    public Task<SaveResult<EditionRecord>> CopyForwardAsync(PressId press, Guid id, CancellationToken cancel = default) =>
        database.WriteAsync<SaveResult<EditionRecord>>(press, db => EditionCopy.ForwardAsync(db, id, database.Now, cancel), cancel);

    /// <summary>Takes an edition with its plans out for good. One whose copies ledger has lines is in use; it is better archived.</summary>
    /// <param name="press">Whose edition.</param>
    /// <param name="edition">As it was read; saved in between, it stays.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public Task<DeleteResult> DeleteAsync(PressId press, EditionRecord edition, CancellationToken cancel = default) =>
        database.WriteAsync<DeleteResult>(
            press,
            async db =>
            {
                // Whoever writes a line holds the copies first and the edition after them.
                await db.Database.ExecuteSqlAsync(
                    $"SELECT 1 FROM edition_copies WHERE press_id = {press.Value} AND edition_id = {edition.Id} FOR UPDATE", cancel);
                await LockAsync(db, edition.Id, cancel);
                var row = await db.Editions.AsNoTracking().SingleOrDefaultAsync(candidate => candidate.Id == edition.Id, cancel);
                if (row is null)
                {
                    return new DeleteResult.Gone();
                }

                if (row.Version != edition.Version)
                {
                    return new DeleteResult.Changed();
                }

                if (await EditionRules.UsesAsync(db, new Dictionary<Guid, int> { [edition.Id] = row.Printing }, cancel) is { Count: > 0 } uses)
                {
                    return new DeleteResult.InUse(uses);
                }

                await FixNoteStore.LetGoAsync(db, row.TitleId, row.Printing, cancel);
                await db.Editions.Where(candidate => candidate.Id == edition.Id).ExecuteDeleteAsync(cancel);
                return new DeleteResult.Deleted();
            },
            cancel);

    /// <summary>Adds the row of an edition whose rules were checked; saving is the caller's.</summary>
    internal static EditionRow AddRow(PressRunDbContext db, EditionRecord edition, DateTimeOffset now)
    {
        var row = EditionRow.New(db.Press, edition.TitleId, now);
        row.Take(edition with { Parts = [.. edition.Parts.Select(part => part with { Id = Guid.Empty })] });
        db.Editions.Add(row);
        return row;
    }

    internal static async Task<EditionRecord?> LoadAsync(PressRunDbContext db, Guid id, CancellationToken cancel) =>
        (await db.Editions.AsNoTracking().Whole().SingleOrDefaultAsync(row => row.Id == id, cancel))?.ToRecord();

    // The root's lock puts savers in a row: whoever comes second sees the first one's version, and not half of its parts.
    private static async Task LockAsync(PressRunDbContext db, Guid id, CancellationToken cancel) =>
        await db.Database.ExecuteSqlAsync($"SELECT 1 FROM editions WHERE press_id = {db.Press.Value} AND id = {id} FOR UPDATE", cancel);

    private static async Task<List<Problem>> ProblemsAsync(PressRunDbContext db, EditionRecord edition, CancellationToken cancel)
    {
        var problems = await EditionRules.CheckAsync(db, edition, cancel);
        if (await db.Editions.AnyAsync(
            other => other.TitleId == edition.TitleId && other.Printing == edition.Printing && other.Id != edition.Id, cancel))
        {
            problems.Add(new Problem("$.printing", $"{edition.Printing}", "The title has this printing already."));
        }

        return problems;
    }
}
