using PressRun.Data.Tallies;
using PressRun.Engine.Copies;
using PressRun.Engine.Bench;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Archive;

/// <summary>What tallies must keep beside their shape.</summary>
internal static class TallyArchiveRules
{
    private const string BackRule = "Name an earlier entry, which nothing else takes back, of the same step and kind with the opposite copies and seconds.";
    private const string IntoRule = "Name a printing of this ledger, and how many of the tally's entries went into it.";

    /// <summary>Notes what is wrong with the tallies of a printing.</summary>
    public static void Check(ArchivedEdition edition, JsonPath at, ProblemList problems)
    {
        foreach (var (place, tally) in edition.Tallies.Index())
        {
            var path = at.Item(place);
            problems.AddAll(path, TallyStore.Problems(new NewTally(Guid.AllBitsSet, Guid.Empty, tally.Plan, tally.Copies, tally.Wanted, tally.Steps)));
            if ((tally.WrittenInto is { } line && edition.Movements[line] is not { Kind: MovementKind.Printed, TakesBack: null }) || tally.WrittenLines > tally.Entries.Count)
            {
                problems.Add(path.Member("writtenInto"), $"{tally.WrittenInto}", IntoRule);
            }

            CheckEntries(tally, path.Member("entries"), problems);
        }
    }

    private static void CheckEntries(ArchivedTally tally, JsonPath at, ProblemList problems)
    {
        var takenBack = new HashSet<int>();
        foreach (var (place, archived) in tally.Entries.Index())
        {
            var entry = archived.Entry;
            problems.AddAll(at.Item(place), LibraryRules.Still("$.by", entry.By));
            if (archived.TakesBack is { } taken)
            {
                if (taken >= place || !takenBack.Add(taken) || tally.Entries[taken] is not { TakesBack: null } before
                    || (entry with { Copies = -entry.Copies, Seconds = -entry.Seconds, By = before.Entry.By }) != before.Entry)
                {
                    problems.Add(at.Item(place).Member("takesBack"), $"{taken}", BackRule);
                }
            }
            else if (TallyWriting.Problem(entry, tally.Steps.Count) is { } problem)
            {
                problems.Add(at.Item(place), (string?)null, problem);
            }
        }
    }
}
