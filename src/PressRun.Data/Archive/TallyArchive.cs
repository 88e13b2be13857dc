using Microsoft.EntityFrameworkCore;
using PressRun.Data.Copies;
using PressRun.Data.Tallies;

namespace PressRun.Data.Archive;

/// <summary>A tally's row with those of its entries.</summary>
internal sealed record TallyWithEntries(TallyRow Tally, IReadOnlyList<TallyEntryRow> Entries)
{
    /// <param name="movements">The ledger of its printing in the order of writing.</param>
    public ArchivedTally ToArchived(List<CopyMovementRow> movements)
    {
        var places = Entries.Index().ToDictionary(entry => entry.Item.Id, entry => entry.Index);
        var into = movements.FindIndex(line => line.Id == Tally.WrittenInto);
        return new ArchivedTally(
            Tally.Plan, Tally.BegunAt, Tally.Copies, Tally.Wanted, Tally.Steps,
            [.. Entries.Select(row => new ArchivedTallyEntry(row.ToEntry(), row.At, row.TakesBack is { } taken ? places[taken] : null))],
            into < 0 ? null : into, Tally.WrittenLines);
    }
}

/// <summary>Tallies out of the rows of a press, and into those of a new one.</summary>
internal static class TallyArchive
{
    public static async Task<ILookup<Guid, TallyWithEntries>> LoadAsync(PressRunDbContext db, CancellationToken cancel)
    {
        var entries = (await db.TallyEntries.AsNoTracking().OrderBy(row => row.Sequence).ToListAsync(cancel)).ToLookup(row => row.TallyId);
        return (await db.Tallies.AsNoTracking().OrderBy(row => row.BegunAt).ThenBy(row => row.Id).ToListAsync(cancel))
            .ToLookup(row => row.EditionId, row => new TallyWithEntries(row, [.. entries[row.Id]]));
    }

    /// <summary>Adds the rows; saving is the caller's.</summary>
    /// <param name="db">The new press's.</param>
    /// <param name="editionId">The printing.</param>
    /// <param name="tallies">Its tallies.</param>
    /// <param name="lines">Ids of the lines of its ledger, in the order of writing.</param>
    public static void Add(PressRunDbContext db, Guid editionId, IReadOnlyList<ArchivedTally> tallies, List<Guid> lines)
    {
        foreach (var tally in tallies)
        {
            var row = new TallyRow
            {
                PressId = db.Press, Id = Guid.CreateVersion7(tally.BegunAt), EditionId = editionId, Plan = tally.Plan, BegunAt = tally.BegunAt, Copies = tally.Copies,
                Wanted = tally.Wanted, Steps = tally.Steps, Lines = tally.Entries.Count, WrittenInto = tally.WrittenInto is { } line ? lines[line] : null,
                WrittenLines = tally.WrittenLines,
            };
            db.Tallies.Add(row);
            AddEntries(db, row.Id, tally.Entries);
        }
    }

    private static void AddEntries(PressRunDbContext db, Guid tallyId, IReadOnlyList<ArchivedTallyEntry> entries)
    {
        var ids = entries.Select(entry => Guid.CreateVersion7(entry.At)).ToList();
        foreach (var (place, archived) in entries.Index())
        {
            var entry = archived.Entry;
            db.TallyEntries.Add(new TallyEntryRow
            {
                PressId = db.Press, Id = ids[place], TallyId = tallyId, Sequence = place + 1, Step = entry.Step, Kind = entry.Kind, Copies = entry.Copies, Seconds = entry.Seconds,
                By = entry.By, At = archived.At, TakesBack = archived.TakesBack is { } taken ? ids[taken] : null,
            });
        }
    }
}
