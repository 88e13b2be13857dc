using System.Collections.Immutable;
using PressRun.Data.Copies;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Archive;

/// <summary>What the lines of a copies ledger must keep beside their shape: what is written down is what somebody could have written, and what the ledger added itself answers a line before it.</summary>
internal static class MovementArchiveRules
{
    private const string BackRule = "Name an earlier line, which nothing else takes back, of the same day and kind with the opposite change and amount.";
    private const string SettledRule = "Name an earlier count of the same day for a line of a count that moves no money.";
    private const string SignRule = "Copies that are printed or returned come, above 0; copies that are sold, given away or spoiled go, below 0.";

    /// <summary>Notes what is wrong.</summary>
    public static void Check(IReadOnlyList<ArchivedMovement> movements, JsonPath at, ProblemList problems)
    {
        var written = movements.Where(movement => movement is { TakesBack: null, Kind: not MovementKind.Counted }).Sum(movement => Math.Abs((long)movement.Change));
        if (Math.Max(written, Math.Abs(movements.Sum(movement => (long)movement.Change))) > MovementReader.Copies.Most)
        {
            problems.Add(at, (string?)null, "The lines of one printing come to at most 2,000,000,000 copies, coming and going.");
        }

        var takenBack = new HashSet<int>();
        foreach (var (place, movement) in movements.Index())
        {
            var path = at.Item(place);
            if (movement.TakesBack is { } taken)
            {
                if (taken >= place || !takenBack.Add(taken) || !IsOpposite(movement, movements[taken]))
                {
                    problems.Add(path.Member("takesBack"), $"{taken}", BackRule);
                }
            }
            else if (movement.SettledBy is { } settled)
            {
                if (settled >= place || !IsSettled(movement, movements[settled]))
                {
                    problems.Add(path.Member("settledBy"), $"{settled}", SettledRule);
                }
            }
            else
            {
                CheckWritten(movement, path, problems);
            }
        }
    }

    private static bool IsOpposite(ArchivedMovement line, ArchivedMovement taken) => line.SettledBy is null && taken.TakesBack is null && line.Day == taken.Day && line.Kind == taken.Kind
        && line.Change == -taken.Change && line.Amount == -taken.Amount;

    private static bool IsSettled(ArchivedMovement line, ArchivedMovement count) =>
        line is { Kind: MovementKind.Counted, Amount: 0m } && count is { Kind: MovementKind.Counted, TakesBack: null, SettledBy: null } && line.Day == count.Day;

    private static void CheckWritten(ArchivedMovement movement, JsonPath path, ProblemList problems)
    {
        var comes = movement.Kind is MovementKind.Printed or MovementKind.Returned;
        if (movement.Kind != MovementKind.Counted && comes != movement.Change > 0)
        {
            problems.Add(path.Member("change"), $"{movement.Change}", SignRule);
        }

        if (movement.Amount != 0m && movement.Amount < 0m != (movement.Kind == MovementKind.Returned))
        {
            problems.Add(path.Member("amount"), $"{movement.Amount}", "Money comes with what is printed or sold, above 0, and goes back with what is returned, below 0.");
        }

        // What a count differed by is no number of copies that anybody found.
        var copies = movement.Kind == MovementKind.Counted ? 0 : Math.Abs(movement.Change);
        var written = new NewMovement(Guid.AllBitsSet, Guid.Empty, movement.Day, movement.Kind, copies, Math.Abs(movement.Amount), null, movement.Note);
        var found = new List<Problem>();
        MovementRules.Check(written, "$", ImmutableHashSet<string>.Empty, Moments.LastDay, found);
        problems.AddAll(path, MovementRules.StepNames(movement.Printing));
        problems.AddAll(path, found.Select(problem => problem.Path == "$.copies" ? problem with { Path = "$.change" } : problem));
    }
}
