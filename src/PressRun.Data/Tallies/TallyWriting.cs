using PressRun.Engine.Bench;

namespace PressRun.Data.Tallies;

/// <summary>Adds entries to a tally whose row is held; saving is the caller's.</summary>
/// <param name="db">The press's.</param>
/// <param name="tally">The tally.</param>
/// <param name="now">The moment of the arrival.</param>
/// <param name="written">Entries with the ids that come, as they are there already.</param>
/// <param name="takenBack">Ids of those that are taken back already.</param>
internal sealed class TallyWriting(PressRunDbContext db, TallyRow tally, DateTimeOffset now, Dictionary<Guid, TallyEntryRow> written, HashSet<Guid> takenBack)
{
    /// <summary>Writes an entry, and takes it back where it says so.</summary>
    /// <returns>Why it is not taken; null where it stands.</returns>
    // What was taken back is written all the same: a message that got lost on its way might bring the entry itself later.
    public string? Take(NewTallyEntry entry)
    {
        if ((entry.Id == Guid.Empty ? "An entry has an id of its own." : Problem(entry.Entry, tally.Steps.Count)) is { } problem)
        {
            return problem;
        }

        if (!written.TryGetValue(entry.Id, out var row))
        {
            row = written[entry.Id] = Add(entry.Id, entry.Entry with { By = entry.Entry.By.Trim() }, At(entry.Ago), null);
        }

        if (row.TallyId != tally.Id)
        {
            return "This entry stands in another tally.";
        }

        if (entry.TakenBack && takenBack.Add(entry.Id))
        {
            Add(Guid.CreateVersion7(now), row.ToEntry() with { Copies = -row.Copies, Seconds = -row.Seconds }, now, entry.Id);
        }

        return null;
    }

    private TallyEntryRow Add(Guid id, TallyEntry entry, DateTimeOffset at, Guid? takesBack)
    {
        var row = new TallyEntryRow
        {
            PressId = db.Press, Id = id, TallyId = tally.Id, Sequence = ++tally.Lines, Step = entry.Step, Kind = entry.Kind, Copies = entry.Copies, Seconds = entry.Seconds, By = entry.By,
            At = at, TakesBack = takesBack,
        };
        db.TallyEntries.Add(row);
        return row;
    }

    // Not before the tally was begun, whatever a phone's clock says, and never to come.
    private DateTimeOffset At(TimeSpan ago)
    {
        var longest = now - tally.BegunAt;
        return now - (ago < TimeSpan.Zero ? TimeSpan.Zero : ago > longest ? longest : ago);
    }

    /// <summary>What is wrong with an entry that takes back nothing; null where nothing is.</summary>
    public static string? Problem(TallyEntry entry, int steps) => entry switch
    {
        _ when entry.Step < 0 || entry.Step >= steps => "This step is not one of this tally's.",
        { Kind: TallyKind.Worked, Copies: not 0 } or { Kind: not TallyKind.Worked, Seconds: not 0 } => "Copies and time are written down by entries of their own.",
        { Kind: TallyKind.Worked, Seconds: < 1 or > TallyStore.MostSeconds } => "Write down 1 second to a day of work at once.",
        { Kind: not TallyKind.Worked, Copies: < 1 or > TallyStore.MostCopies } => "Write down 1 to 10,000 copies at once.",
        _ when entry.By.Trim().Length > TallyStore.MostName || !PlainText.IsStill(entry.By) => $"Write the name of whoever counts on one line, at most {TallyStore.MostName} characters.",
        _ => null,
    };
}
