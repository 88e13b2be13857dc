using Microsoft.EntityFrameworkCore;
using PressRun.Data.Conversions;
using PressRun.Data.Presses;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;

namespace PressRun.Data.Bench;

/// <summary>From where on a press wants to be warned before it prints.</summary>
public sealed class BenchLimitsStore
{
    private readonly PressDatabase database;

    internal BenchLimitsStore(PressDatabase database) => this.database = database;

    /// <summary>The press's limits; the usual ones, with version 0, where it has set none.</summary>
    public async Task<LibraryItem<BenchLimits>> LoadAsync(PressId press, CancellationToken cancel = default) =>
        Item(await database.ReadAsync(press, db => db.BenchLimits.AsNoTracking().SingleOrDefaultAsync(cancel), cancel));

    /// <summary>Saves the press's limits.</summary>
    public Task<SaveResult<LibraryItem<BenchLimits>>> SaveAsync(PressId press, LibraryItem<BenchLimits> limits, CancellationToken cancel = default) =>
        database.WriteAsync<SaveResult<LibraryItem<BenchLimits>>>(
            press,
            async db =>
            {
                // The press's row is there before its first limits are, and lets two first savers pass one after the other.
                await db.Database.ExecuteSqlAsync($"SELECT 1 FROM presses WHERE id = {press.Value} FOR UPDATE", cancel);
                var row = await db.BenchLimits.SingleOrDefaultAsync(cancel);
                if ((row?.Version ?? 0) != limits.Version)
                {
                    return new SaveResult<LibraryItem<BenchLimits>>.Conflict(Item(row));
                }

                if (Problems(limits.Item) is { Count: > 0 } problems)
                {
                    return new SaveResult<LibraryItem<BenchLimits>>.Refused(problems);
                }

                row ??= db.BenchLimits.Add(new BenchLimitsRow { PressId = press }).Entity;
                row.Limits = limits.Item;
                await db.SaveChangesAsync(cancel);
                return new SaveResult<LibraryItem<BenchLimits>>.Saved(Item(row));
            },
            cancel);

    private static LibraryItem<BenchLimits> Item(BenchLimitsRow? row) => new(row?.Limits ?? BenchLimits.Usual, false, row?.Version ?? 0);

    private static List<Problem> Problems(BenchLimits limits) =>
        Contract.Problems(json => BenchLimitsShape.WriteMembers(json, limits), (element, path, found) => BenchLimitsShape.Read(element, path, found));
}
