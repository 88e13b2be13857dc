using Microsoft.EntityFrameworkCore;
using Npgsql;
using PressRun.Data.Import;
using PressRun.Data.Presses;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;

namespace PressRun.Data;

/// <content>Many things at once: what a table saves, and what a file brings in.</content>
public abstract partial class LibraryStore<T>
{
    private const int BatchSize = 500;
    private const int Attempts = 3;

    /// <summary>What only one thing of the library has: its id, and which of several dated tables of one id it is.</summary>
    public (string Id, string Table) IdentityOf(T item) => Keys.RowOf(item);

    /// <summary>Saves several things in one transaction, each by itself: one that is refused or was changed in between does not hold up the others.
    /// A new thing (version 0) without an id gets one from its name.</summary>
    /// <returns>What became of each, in order.</returns>
    public async Task<IReadOnlyList<SaveResult<LibraryItem<T>>>> SaveAllAsync(
        PressId press, IReadOnlyList<LibraryItem<T>> items, CancellationToken cancel = default)
    {
        for (var attempt = 1; ; attempt++)
        {
            try
            {
                return await database.WriteAsync(press, db => SaveAllAsync(db, items, cancel), cancel);
            }
            catch (DbUpdateException exception) when (attempt < Attempts && Met(exception))
            {
                // Somebody saved one of them at the same moment: the next attempt finds theirs and tells it.
            }
        }
    }

    /// <summary>Brings in things from a file, all of them or none. A thing whose id, or without one whose name, the library has already replaces
    /// what is there; the others are added at the end.</summary>
    /// <param name="press">Whose library.</param>
    /// <param name="items">The things; enumerated again where the database was away for a moment.</param>
    /// <param name="completed">A thing that replaces another, with what the file does not say taken from the one that is there; null takes it as it is.</param>
    /// <param name="progress">Told how many are done.</param>
    /// <param name="cancel">Stops it; nothing is stored then.</param>
    /// <exception cref="ImportRefusedException">A thing breaks a rule of the library; nothing is stored.</exception>
    public async Task<ImportReceipt<T>> ImportAsync(
        PressId press,
        Func<IEnumerable<LibraryItem<T>>> items,
        Func<LibraryItem<T>, LibraryItem<T>, LibraryItem<T>>? completed = null,
        IProgress<int>? progress = null,
        CancellationToken cancel = default)
    {
        for (var attempt = 1; ; attempt++)
        {
            try
            {
                return await database.WriteAsync(press, db => ImportAsync(db, items(), completed ?? ((item, _) => item), progress, cancel), cancel);
            }
            catch (DbUpdateException exception) when (attempt < Attempts && Met(exception))
            {
                // Somebody brought in one of them at the same moment: the next attempt finds theirs and replaces it.
            }
        }
    }

    /// <summary>Takes back an import, all of it or nothing: what it added goes, what it replaced comes back. It is refused where something was
    /// changed since, or is in use by now.</summary>
    /// <returns>What stands in the way, in words; empty where it is taken back.</returns>
    public async Task<IReadOnlyList<string>> TakeBackAsync(PressId press, ImportReceipt<T> receipt, CancellationToken cancel = default)
    {
        try
        {
            await database.WriteAsync(press, db => TakeBackAsync(db, receipt, cancel), cancel);
            return [];
        }
        catch (TakeBackRefusedException refusal)
        {
            return refusal.InTheWay;
        }
        catch (PostgresException exception) when (exception.SqlState == PostgresErrorCodes.ForeignKeyViolation)
        {
            return ["Some of what was brought in is in use by now."];
        }
    }

    private static bool Met(DbUpdateException exception) =>
        exception is DbUpdateConcurrencyException || Collision.Is(exception);

    private async Task<IReadOnlyList<SaveResult<LibraryItem<T>>>> SaveAllAsync(PressRunDbContext db, IReadOnlyList<LibraryItem<T>> items, CancellationToken cancel)
    {
        var rows = new Dictionary<(string Id, string Table), ILibraryRow<T>>();
        var taken = new HashSet<string>(StringComparer.Ordinal);
        var position = -1;
        foreach (var row in await Rows(db).ToListAsync(cancel))
        {
            rows.Add(Keys.RowOf(row.ToItem()), row);
            taken.Add(row.Id);
            position = Math.Max(position, row.Position);
        }

        var results = new SaveResult<LibraryItem<T>>?[items.Count];
        var changed = new ILibraryRow<T>?[items.Count];
        for (var index = 0; index < items.Count; index++)
        {
            var item = items[index];
            if (item.Version == 0 && Keys.Id(item.Item).Length == 0)
            {
                item = item with { Item = Keys.WithId(item.Item, SearchText.FreeSlug(Keys.Name(item.Item), taken)) };
            }

            var row = rows.GetValueOrDefault(Keys.RowOf(item.Item));
            results[index] = await RefusalAsync(db, item, row, cancel);
            if (results[index] is not null)
            {
                continue;
            }

            if (row is null)
            {
                row = Added(db, item, ++position);
                taken.Add(row.Id);
                rows.Add(Keys.RowOf(item.Item), row);
            }

            row.Take(item.Item);
            row.Archived = item.Archived;
            changed[index] = row;
        }

        await db.SaveChangesAsync(cancel);
        return [.. results.Select((result, index) => result ?? new SaveResult<LibraryItem<T>>.Saved(Item(changed[index]!)))];
    }

    private async Task<SaveResult<LibraryItem<T>>?> RefusalAsync(PressRunDbContext db, LibraryItem<T> item, ILibraryRow<T>? row, CancellationToken cancel)
    {
        if (await AllProblemsAsync(db, item.Item, cancel) is { Count: > 0 } problems)
        {
            return new SaveResult<LibraryItem<T>>.Refused(problems);
        }

        if (item.Version == 0)
        {
            return row is null ? null : new SaveResult<LibraryItem<T>>.Refused([new Problem("$.id", row.Id, "The library has this already.")]);
        }

        return row is null ? new SaveResult<LibraryItem<T>>.Gone()
            : row.Version != item.Version ? new SaveResult<LibraryItem<T>>.Conflict(Item(row))
            : null;
    }

    private ILibraryRow<T> Added(PressRunDbContext db, LibraryItem<T> item, int position)
    {
        var row = NewRow();
        row.PressId = db.Press;
        row.Take(item.Item);
        row.Position = position;
        db.Add(row);
        return row;
    }

    private async Task<ImportReceipt<T>> ImportAsync(
        PressRunDbContext db,
        IEnumerable<LibraryItem<T>> items,
        Func<LibraryItem<T>, LibraryItem<T>, LibraryItem<T>> completed,
        IProgress<int>? progress,
        CancellationToken cancel)
    {
        // Without savepoints all rows get the transaction's own number as their version, and one number tells later whether any was changed since.
        db.Database.AutoSavepointsEnabled = false;
        var known = new KnownThings(Keys);
        await foreach (var row in Rows(db).AsNoTracking().AsAsyncEnumerable().WithCancellation(cancel))
        {
            known.Add(row.ToItem(), row.Position);
        }

        var receipt = new ImportReceipt<T>();
        var done = 0;
        foreach (var batch in items.Chunk(BatchSize))
        {
            await ImportBatchAsync(db, batch, completed, known, receipt, done, cancel);
            db.ChangeTracker.Clear();
            done += batch.Length;
            progress?.Report(done);
        }

        return receipt;
    }

    private async Task ImportBatchAsync(
        PressRunDbContext db,
        LibraryItem<T>[] batch,
        Func<LibraryItem<T>, LibraryItem<T>, LibraryItem<T>> completed,
        KnownThings known,
        ImportReceipt<T> receipt,
        int before,
        CancellationToken cancel)
    {
        var named = Array.ConvertAll(batch, item => item with { Item = known.Identified(item.Item) });
        var ids = named.Select(item => Keys.Id(item.Item)).Distinct().ToList();
        var rows = (await Rows(db).Where(row => ids.Contains(row.Id)).ToListAsync(cancel)).ToDictionary(row => Keys.RowOf(row.ToItem()));
        var touched = new List<ILibraryRow<T>>();
        for (var index = 0; index < named.Length; index++)
        {
            var item = named[index];
            var row = rows.GetValueOrDefault(Keys.RowOf(item.Item));
            item = row is null ? item : completed(item, Item(row));
            if (await AllProblemsAsync(db, item.Item, cancel) is [var problem, ..])
            {
                throw new ImportRefusedException(before + index, problem);
            }

            if (row is null)
            {
                row = Added(db, item, known.NextPosition());
                rows.Add(Keys.RowOf(item.Item), row);
                receipt.Add(item.Item);
            }
            else if (Keys.Same(row.ToItem(), item.Item) && row.Archived == item.Archived)
            {
                receipt.Unchanged++;
                continue;
            }
            else
            {
                receipt.Replace(Item(row));
            }

            row.Take(item.Item);
            row.Archived = item.Archived;
            touched.Add(row);
        }

        await db.SaveChangesAsync(cancel);
        receipt.Version = touched.Count > 0 ? touched[0].Version : receipt.Version;
    }

    private async Task<bool> TakeBackAsync(PressRunDbContext db, ImportReceipt<T> receipt, CancellationToken cancel)
    {
        var before = receipt.Replaced.ToDictionary(item => Keys.RowOf(item.Item));
        foreach (var batch in receipt.Added.Concat(receipt.Replaced.Select(item => item.Item)).Chunk(BatchSize))
        {
            var ids = batch.Select(Keys.Id).Distinct().ToList();
            var wanted = batch.Select(Keys.RowOf).ToHashSet();
            var rows = (await Rows(db).Where(row => ids.Contains(row.Id)).ToListAsync(cancel)).Where(row => wanted.Contains(Keys.RowOf(row.ToItem()))).ToList();
            var changed = rows.Where(row => row.Version != receipt.Version).Select(row => Keys.Name(row.ToItem())).ToList();
            if (changed.Count > 0 || rows.Count < wanted.Count)
            {
                throw new TakeBackRefusedException([.. changed.Select(name => $"{name} was changed since."), .. rows.Count < wanted.Count ? ["Some of it was taken out since."] : Array.Empty<string>()]);
            }

            foreach (var row in rows)
            {
                if (before.TryGetValue(Keys.RowOf(row.ToItem()), out var old))
                {
                    row.Take(old.Item);
                    row.Archived = old.Archived;
                }
                else if (await UsesAsync(db, row.ToItem(), cancel) is { Count: > 0 } uses)
                {
                    throw new TakeBackRefusedException([$"{Keys.Name(row.ToItem())} is in use by now: {string.Join("; ", uses.Take(3))}."]);
                }
                else
                {
                    db.Remove(row);
                }
            }

            await db.SaveChangesAsync(cancel);
            db.ChangeTracker.Clear();
        }

        return true;
    }

    private sealed class KnownThings(LibraryKeys<T> keys)
    {
        private readonly Dictionary<string, string> idByName = new(StringComparer.Ordinal);
        private readonly HashSet<string> ids = new(StringComparer.Ordinal);
        private int position = -1;

        public void Add(T item, int at)
        {
            ids.Add(keys.Id(item));
            idByName.TryAdd(SearchText.Fold(keys.Name(item)), keys.Id(item));
            position = Math.Max(position, at);
        }

        public int NextPosition() => ++position;

        /// <summary>The thing with the id it has, or the id of what has its name, or a new one.</summary>
        public T Identified(T item)
        {
            var name = SearchText.Fold(keys.Name(item));
            if (keys.Id(item).Length == 0)
            {
                item = keys.WithId(item, idByName.TryGetValue(name, out var id) ? id : SearchText.FreeSlug(keys.Name(item), ids));
            }

            ids.Add(keys.Id(item));
            idByName.TryAdd(name, keys.Id(item));
            return item;
        }
    }

    private sealed class TakeBackRefusedException(IReadOnlyList<string> inTheWay) : Exception
    {
        public IReadOnlyList<string> InTheWay { get; } = inTheWay;
    }
}
