using Microsoft.EntityFrameworkCore;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;
using PressRun.JobFile;

namespace PressRun.Data;

/// <summary>One of a press's libraries.</summary>
/// <typeparam name="T">What it holds, as the engine knows it.</typeparam>
public abstract partial class LibraryStore<T>
    where T : class
{
    private readonly PressDatabase database;

    private protected LibraryStore(PressDatabase database) => this.database = database;

    /// <summary>The things of the library in its order.</summary>
    /// <param name="press">Whose library.</param>
    /// <param name="archived">True lists archived things too.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public async Task<IReadOnlyList<LibraryItem<T>>> ListAsync(PressId press, bool archived = false, CancellationToken cancel = default) =>
        (await database.ReadAsync(
            press,
            db => Rows(db).AsNoTracking().Where(row => archived || !row.Archived).OrderBy(row => row.Position).ThenBy(row => row.Id).ToListAsync(cancel),
            cancel)).ConvertAll(Item);

    /// <summary>Adds a thing (version 0) or saves a changed one; archiving is a save too.</summary>
    public async Task<SaveResult<LibraryItem<T>>> SaveAsync(PressId press, LibraryItem<T> item, CancellationToken cancel = default)
    {
        try
        {
            return await database.WriteAsync(press, db => item.Version == 0 ? AddAsync(db, item, cancel) : ChangeAsync(db, item, cancel), cancel);
        }
        catch (DbUpdateException exception) when (Collision.Is(exception))
        {
            return new SaveResult<LibraryItem<T>>.Refused([new Problem("$.id", Keys.Id(item.Item), "The library has this already.")]);
        }
        catch (DbUpdateConcurrencyException)
        {
            return await database.ReadAsync<SaveResult<LibraryItem<T>>>(
                press,
                async db => await Same(Rows(db), item.Item).AsNoTracking().SingleOrDefaultAsync(cancel) is { } theirs
                    ? new SaveResult<LibraryItem<T>>.Conflict(Item(theirs))
                    : new SaveResult<LibraryItem<T>>.Gone(),
                cancel);
        }
    }

    /// <summary>Takes a thing out of the library; one that is in use stays and tells where, and one that somebody else changed since stays as they left it.</summary>
    public Task<DeleteResult> DeleteAsync(PressId press, LibraryItem<T> item, CancellationToken cancel = default) =>
        database.WriteAsync<DeleteResult>(
            press,
            async db =>
            {
                if (await UsesAsync(db, item.Item, cancel) is { Count: > 0 } uses)
                {
                    return new DeleteResult.InUse(uses);
                }

                var kept = Same(Rows(db), item.Item);
                return await kept.Where(row => row.Version == item.Version).ExecuteDeleteAsync(cancel) > 0 ? new DeleteResult.Deleted()
                    : await kept.AnyAsync(cancel) ? new DeleteResult.Changed()
                    : new DeleteResult.Gone();
            },
            cancel);

    private protected abstract IQueryable<ILibraryRow<T>> Rows(PressRunDbContext db);

    private protected abstract ILibraryRow<T> NewRow();

    private protected abstract LibraryKeys<T> Keys { get; }

    private protected abstract string NameOf(T item);

    private protected virtual IQueryable<ILibraryRow<T>> Same(IQueryable<ILibraryRow<T>> rows, T item)
    {
        var id = Keys.Id(item);
        return rows.Where(row => row.Id == id);
    }

    private protected abstract Task<IReadOnlyList<string>> UsesAsync(PressRunDbContext db, T item, CancellationToken cancel);

    private protected abstract Task<List<Problem>> ProblemsAsync(PressRunDbContext db, T item, CancellationToken cancel);

    private async Task<List<Problem>> AllProblemsAsync(PressRunDbContext db, T item, CancellationToken cancel) =>
        [.. LibraryRules.Named(NameOf(item)), .. await ProblemsAsync(db, item, cancel)];

    private static LibraryItem<T> Item(ILibraryRow<T> row) => new(row.ToItem(), row.Archived, row.Version);

    private async Task<SaveResult<LibraryItem<T>>> AddAsync(PressRunDbContext db, LibraryItem<T> item, CancellationToken cancel)
    {
        var problems = await AllProblemsAsync(db, item.Item, cancel);
        if (Keys.Id(item.Item) is var id && !JobRules.Id.Holds(id))
        {
            problems.Add(new Problem("$.id", id, JobRules.Id.Sentence));
        }
        else
        {
            problems.AddRange(LibraryRules.Still("$.id", id));
        }

        if (problems.Count > 0)
        {
            return new SaveResult<LibraryItem<T>>.Refused(problems);
        }

        var row = NewRow();
        row.PressId = db.Press;
        row.Take(item.Item);
        row.Archived = item.Archived;
        row.Position = (await Rows(db).MaxAsync(other => (int?)other.Position, cancel) ?? -1) + 1;
        db.Add(row);
        await db.SaveChangesAsync(cancel);
        return new SaveResult<LibraryItem<T>>.Saved(Item(row));
    }

    private async Task<SaveResult<LibraryItem<T>>> ChangeAsync(PressRunDbContext db, LibraryItem<T> item, CancellationToken cancel)
    {
        var row = await Same(Rows(db), item.Item).SingleOrDefaultAsync(cancel);
        if (row is null)
        {
            return new SaveResult<LibraryItem<T>>.Gone();
        }

        if (row.Version != item.Version)
        {
            return new SaveResult<LibraryItem<T>>.Conflict(Item(row));
        }

        if (await AllProblemsAsync(db, item.Item, cancel) is { Count: > 0 } problems)
        {
            return new SaveResult<LibraryItem<T>>.Refused(problems);
        }

        row.Take(item.Item);
        row.Archived = item.Archived;
        await db.SaveChangesAsync(cancel);
        return new SaveResult<LibraryItem<T>>.Saved(Item(row));
    }
}
