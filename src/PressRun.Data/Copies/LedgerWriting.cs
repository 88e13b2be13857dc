using System.Globalization;
using System.Linq.Expressions;
using Microsoft.EntityFrameworkCore;
using PressRun.Data.Import;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;

namespace PressRun.Data.Copies;

/// <summary>Adds lines to the ledger within one transaction, holding the rows of what is on hand.</summary>
internal sealed class LedgerWriting(PressRunDbContext db, DateTimeOffset now, Guid? importId)
{
    /// <summary>Most copies that come and go in the ledger of one printing, all lines together: sums of them stay what the columns hold.</summary>
    public const long MostMoved = 1_000_000_000;

    private const int BatchSize = 1000;

    // So few lines come to half of what may move at most, since none has more than a run.
    private const int FewLines = 500;

    private const string FullRule = "The ledger of one printing takes at most 1,000,000,000 copies, coming and going.";
    private const string DifferenceRule = "The ledger and the count are more than 1,000,000,000 copies apart. Take back the lines that are wrong first.";

    private readonly Dictionary<Guid, long> moved = [];
    private Dictionary<Guid, EditionCopiesRow> onHand = [];
    private ILookup<Guid, (Guid Id, DateOnly Day)> counts = Array.Empty<(Guid, DateOnly)>().ToLookup(_ => Guid.Empty);

    public async Task<SaveResult<IReadOnlyList<MovementRecord>>> WriteAsync(IReadOnlyList<NewMovement> movements, CancellationToken cancel)
    {
        if (!await HoldAsync([.. movements.Select(movement => movement.EditionId).Distinct()], movements.Min(movement => movement.Day), cancel))
        {
            return new SaveResult<IReadOnlyList<MovementRecord>>.Gone();
        }

        if (await new MovementRules(db, now).CheckAsync(movements, cancel) is { Count: > 0 } problems)
        {
            return new SaveResult<IReadOnlyList<MovementRecord>>.Refused(problems);
        }

        var ids = movements.Select(movement => movement.Id).ToList();
        var written = await db.CopyMovements.Where(row => ids.Contains(row.Id)).ToDictionaryAsync(row => row.Id, cancel);
        var added = movements.Where(movement => !written.ContainsKey(movement.Id)).ToList();
        foreach (var movement in added)
        {
            if (await RowAsync(movement, cancel) is not { } row)
            {
                return new SaveResult<IReadOnlyList<MovementRecord>>.Refused([new Problem("$.copies", null, DifferenceRule)]);
            }

            written[row.Id] = row;
            Add(row);
        }

        if (added.Count > 0 && IsFull())
        {
            return new SaveResult<IReadOnlyList<MovementRecord>>.Refused([new Problem("$.copies", null, FullRule)]);
        }

        await EndTalliesAsync(added, cancel);
        await CloseAsync(movements.Where(movement => movement.Kind == MovementKind.Printed).Select(movement => movement.EditionId).ToHashSet(), cancel);
        return Saved(ids.Distinct().Select(id => written[id]));
    }

    /// <summary>Writes many lines, no more of them held at a time than a batch.</summary>
    /// <param name="editionIds">Editions of all the lines.</param>
    /// <param name="movements">No counts.</param>
    /// <param name="seen">Up to which place of each edition they were held against the ledger; null where they were not.</param>
    /// <param name="progress">Told how many are done.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="ImportRefusedException">A line breaks a rule.</exception>
    /// <exception cref="WrittenMeanwhileException">What was written after <paramref name="seen"/> may be some of the lines.</exception>
    public async Task<LedgerImport?> WriteManyAsync(
        IReadOnlyCollection<Guid> editionIds, Func<IEnumerable<NewMovement>> movements, IReadOnlyDictionary<Guid, long>? seen, IProgress<int>? progress, CancellationToken cancel)
    {
        if (!await HoldAsync([.. editionIds], null, cancel))
        {
            return null;
        }

        if (seen is not null && await MeanwhileAsync(movements, seen, cancel) is { Count: > 0 } meanwhile)
        {
            throw new WrittenMeanwhileException(meanwhile);
        }

        var rules = new MovementRules(db, now);
        var (done, added) = (0, 0);
        var printed = new HashSet<Guid>();
        foreach (var batch in movements().Chunk(BatchSize))
        {
            if ((await rules.CheckAsync(batch, cancel, importing: true)).FirstOrDefault() is { } problem)
            {
                throw new ImportRefusedException(done + int.Parse(problem.Path.AsSpan(2, problem.Path.IndexOf(']', StringComparison.Ordinal) - 2), CultureInfo.InvariantCulture), problem);
            }

            var ids = batch.Select(movement => movement.Id).ToList();
            var written = await db.CopyMovements.Where(row => ids.Contains(row.Id)).Select(row => row.Id).ToHashSetAsync(cancel);
            foreach (var movement in batch.Where(movement => written.Add(movement.Id)))
            {
                // No count is among them, so that each has a row.
                Add((await RowAsync(movement, cancel))!);
                added++;
                _ = movement.Kind == MovementKind.Printed && printed.Add(movement.EditionId);
            }

            if (IsFull())
            {
                throw new ImportRefusedException(done, new Problem("$.copies", null, FullRule));
            }

            await db.SaveChangesAsync(cancel);
            foreach (var line in db.ChangeTracker.Entries<CopyMovementRow>().ToList())
            {
                line.State = EntityState.Detached;
            }

            progress?.Report(done += batch.Length);
        }

        await CloseAsync(printed, cancel);
        return new LedgerImport(added, [.. onHand.Keys], [.. onHand.Values.Where(here => here.CountNeeded).Select(here => here.EditionId)]);
    }

    public async Task<SaveResult<IReadOnlyList<MovementRecord>>> TakeBackAsync(Expression<Func<CopyMovementRow, bool>> which, CancellationToken cancel)
    {
        var editions = await db.CopyMovements.Where(which).Select(row => row.EditionId).Distinct().ToListAsync(cancel);
        if (editions.Count == 0 || !await HoldAsync(editions, await db.CopyMovements.Where(which).MinAsync(row => row.Day, cancel), cancel))
        {
            return new SaveResult<IReadOnlyList<MovementRecord>>.Gone();
        }

        var lines = await db.CopyMovements.Where(which).ToListAsync(cancel);
        if (lines.Exists(line => line.TakesBack is not null || line.SettledBy is not null))
        {
            return new SaveResult<IReadOnlyList<MovementRecord>>.Refused(
                [new Problem("$", null, "This line takes back another or belongs to a count: write down what happened instead.")]);
        }

        var lineIds = lines.ConvertAll(line => line.Id);
        lines.AddRange(await db.CopyMovements.Where(row => row.SettledBy != null && lineIds.Contains(row.SettledBy.Value)).ToListAsync(cancel));
        var allIds = lines.ConvertAll(line => line.Id);
        var before = await db.CopyMovements.Where(row => row.TakesBack != null && allIds.Contains(row.TakesBack.Value))
            .ToDictionaryAsync(row => row.TakesBack!.Value, cancel);
        counts = counts.SelectMany(group => group.Select(count => (group.Key, count))).Where(pair => !lineIds.Contains(pair.count.Id))
            .ToLookup(pair => pair.Key, pair => pair.count);
        foreach (var line in lines.Where(line => !before.ContainsKey(line.Id)))
        {
            var opposite = Opposite(line);
            before[line.Id] = opposite;
            Add(opposite);
        }

        await CloseAsync(lines.Where(line => line.Kind == MovementKind.Printed).Select(line => line.EditionId).ToHashSet(), cancel);
        return Saved(lineIds.Select(id => before[id]));
    }

    // Which lines may be some that others wrote after that place. While the editions are held nobody else writes, so that what is not there now does not come before these.
    private async Task<HashSet<Guid>> MeanwhileAsync(Func<IEnumerable<NewMovement>> movements, IReadOnlyDictionary<Guid, long> seen, CancellationToken cancel)
    {
        var finder = new DuplicateFinder();
        var any = false;
        foreach (var here in onHand.Values.Where(here => here.Lines > seen.GetValueOrDefault(here.EditionId)))
        {
            var place = seen.GetValueOrDefault(here.EditionId);
            var since = db.CopyMovements.AsNoTracking().Where(row => row.EditionId == here.EditionId && row.Sequence > place);

            // What takes a line back comes after it.
            var takenBack = await since.Where(row => row.TakesBack != null).Select(row => row.TakesBack!.Value).ToHashSetAsync(cancel);
            await foreach (var row in since
                .Where(row => row.TakesBack == null && row.SettledBy == null && row.Kind != MovementKind.Counted && row.ImportId != importId).AsAsyncEnumerable().WithCancellation(cancel))
            {
                if (!takenBack.Contains(row.Id))
                {
                    finder.Add(row.Anew());
                    any = true;
                }
            }
        }

        return any ? movements().Where(finder.Meets).Select(movement => movement.Id).ToHashSet() : [];
    }

    // A tally whose line is taken back goes on, and may be written into another one.
    private async Task EndTalliesAsync(IReadOnlyList<NewMovement> added, CancellationToken cancel)
    {
        foreach (var movement in added.Where(movement => movement.Tally is not null))
        {
            await db.SaveChangesAsync(cancel);
            await db.Tallies.Where(tally => tally.Id == movement.Tally!.Id && tally.EditionId == movement.EditionId).ExecuteUpdateAsync(
                tally => tally.SetProperty(row => row.WrittenInto, movement.Id).SetProperty(row => row.WrittenLines, movement.Tally!.Lines), cancel);
        }
    }

    // Locked in one order, so that two who write to the same editions wait and do not meet. A line is set against a count of a later day, so that of a long
    // ledger only what lies after the first day written to is looked through.
    private async Task<bool> HoldAsync(List<Guid> editionIds, DateOnly? first, CancellationToken cancel)
    {
        await db.Database.ExecuteSqlAsync(
            $"SELECT 1 FROM edition_copies WHERE press_id = {db.Press.Value} AND edition_id = ANY({editionIds}) ORDER BY edition_id FOR UPDATE", cancel);
        onHand = await db.EditionCopies.Where(row => editionIds.Contains(row.EditionId)).ToDictionaryAsync(row => row.EditionId, cancel);
        await WeighAsync([.. onHand.Values.Where(here => here.Lines > FewLines).Select(here => here.EditionId)], cancel);
        var standing = db.CopyMovements.Where(row => editionIds.Contains(row.EditionId) && row.Kind == MovementKind.Counted && row.TakesBack == null && row.SettledBy == null);
        counts = (await (first is { } day ? standing.Where(row => row.Day > day) : standing)
            .Where(row => !db.CopyMovements.Any(back => back.TakesBack == row.Id))
            .OrderBy(row => row.Day).ThenBy(row => row.Sequence).Select(row => new { row.EditionId, row.Id, row.Day }).ToListAsync(cancel))
            .ToLookup(row => row.EditionId, row => (row.Id, row.Day));
        return onHand.Count == editionIds.Count;
    }

    private async Task WeighAsync(List<Guid> longLedgers, CancellationToken cancel)
    {
        var sums = longLedgers.Count == 0
            ? []
            : await db.CopyMovements.Where(row => longLedgers.Contains(row.EditionId)).GroupBy(row => row.EditionId)
                .Select(lines => new { lines.Key, Copies = lines.Sum(row => (long)Math.Abs(row.Copies)) }).ToListAsync(cancel);
        foreach (var sum in sums)
        {
            moved[sum.Key] = sum.Copies;
        }
    }

    private bool IsFull() => moved.Values.Any(copies => copies > MostMoved);

    // Null where it is a count that lies too far from the ledger.
    private async Task<CopyMovementRow?> RowAsync(NewMovement movement, CancellationToken cancel)
    {
        var change = movement.Kind switch
        {
            MovementKind.Printed or MovementKind.Returned => movement.Copies,
            MovementKind.Counted => movement.Copies - await StoodAsync(movement.EditionId, movement.Day, cancel),
            _ => -movement.Copies,
        };
        return Math.Abs(change) <= MovementRules.MostDifference ? Row(movement, (int)change) : null;
    }

    private CopyMovementRow Row(NewMovement movement, int change) => new()
    {
        PressId = db.Press,
        Id = movement.Id,
        EditionId = movement.EditionId,
        Day = movement.Day,
        Kind = movement.Kind,
        Copies = change,
        Amount = movement.Kind == MovementKind.Returned ? -movement.Amount : movement.Amount,
        ChannelId = movement.ChannelId,
        Note = movement.Note.Trim(),
        WrittenAt = now,
        ImportId = importId,
        Printing = movement.Printing,
    };

    private async Task<long> StoodAsync(Guid editionId, DateOnly day, CancellationToken cancel) =>
        await db.CopyMovements.Where(row => row.EditionId == editionId && row.Day <= day).SumAsync(row => (long?)row.Copies, cancel) ?? 0L;

    private CopyMovementRow Opposite(CopyMovementRow line) => new()
    {
        PressId = db.Press,
        Id = Guid.CreateVersion7(now),
        EditionId = line.EditionId,
        Day = line.Day,
        Kind = line.Kind,
        Copies = -line.Copies,
        Amount = -line.Amount,
        ChannelId = line.ChannelId,
        WrittenAt = now,
        TakesBack = line.Id,
    };

    private void Add(CopyMovementRow row)
    {
        db.CopyMovements.Add(row);
        Sum(row);
        var later = counts[row.EditionId].Cast<(Guid Id, DateOnly Day)?>().FirstOrDefault(count => count!.Value.Day > row.Day);
        if (later is { } count && row.Copies != 0)
        {
            var settled = new CopyMovementRow
            {
                PressId = db.Press,
                Id = Guid.CreateVersion7(now),
                EditionId = row.EditionId,
                Day = count.Day,
                Kind = MovementKind.Counted,
                Copies = -row.Copies,
                WrittenAt = now,
                SettledBy = count.Id,
                ImportId = importId,
            };
            db.CopyMovements.Add(settled);
            Sum(settled);
        }
    }

    // A line takes the next place of its edition, and joins the sum.
    private void Sum(CopyMovementRow row)
    {
        var here = onHand[row.EditionId];
        row.Sequence = ++here.Lines;
        here.OnHand += row.Copies;
        moved[row.EditionId] = moved.GetValueOrDefault(row.EditionId) + Math.Abs((long)row.Copies);
        here.CountNeeded = here.OnHand < 0 || (here.CountNeeded && row is not { Kind: MovementKind.Counted, TakesBack: null, SettledBy: null });
    }

    private async Task CloseAsync(HashSet<Guid> printed, CancellationToken cancel)
    {
        await db.SaveChangesAsync(cancel);
        await OutlookStore.MarkAsync(db, onHand.Keys, cancel);
        foreach (var here in onHand.Values.Where(here => here.CountNeeded))
        {
            // What was written late may show that the copies were there all along, and what was taken back never went.
            // Pairs are left out here and not by the database, which knows nothing yet of how many lines this transaction wrote and may look through all of them for each.
            var lines = await db.CopyMovements.AsNoTracking().Where(row => row.EditionId == here.EditionId)
                .Select(row => new { row.Id, row.TakesBack, Moved = new CopyMovement(row.Day, row.Sequence, row.Kind, row.Copies, row.Amount) }).ToListAsync(cancel);
            var takenBack = lines.Select(line => line.TakesBack).OfType<Guid>().ToHashSet();
            here.CountNeeded = CopiesAccount.At(lines.Where(line => line.TakesBack is null && !takenBack.Contains(line.Id)).Select(line => line.Moved)).CountNeeded;
        }

        await db.SaveChangesAsync(cancel);
        foreach (var editionId in printed)
        {
            await SayPrintedAsync(editionId, cancel);
        }
    }

    // An edition's own words, printed when and how many, follow its ledger.
    private async Task SayPrintedAsync(Guid editionId, CancellationToken cancel)
    {
        var printings = db.CopyMovements.Where(row => row.EditionId == editionId && row.Kind == MovementKind.Printed);
        var copies = await printings.SumAsync(row => (long)row.Copies, cancel);
        DateOnly? first = copies > 0
            ? await printings.Where(row => row.TakesBack == null && !db.CopyMovements.Any(back => back.TakesBack == row.Id)).MinAsync(row => (DateOnly?)row.Day, cancel)
            : null;
        int? said = copies > 0 ? (int)Math.Min(copies, 2 * MostMoved) : null;
        await db.Editions.Where(row => row.Id == editionId && (row.CopiesPrinted != said || row.PrintedOn != first))
            .ExecuteUpdateAsync(row => row.SetProperty(edition => edition.CopiesPrinted, said).SetProperty(edition => edition.PrintedOn, first), cancel);
    }

    private static SaveResult<IReadOnlyList<MovementRecord>>.Saved Saved(IEnumerable<CopyMovementRow> rows) => new([.. rows.Select(row => row.ToRecord())]);
}
