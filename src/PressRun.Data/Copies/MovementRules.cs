using System.Globalization;
using Microsoft.EntityFrameworkCore;
using PressRun.Data.Conversions;
using PressRun.Data.Running;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;
using PressRun.JobFile;

namespace PressRun.Data.Copies;

/// <summary>What a line of the ledger must keep to be written.</summary>
internal sealed class MovementRules(PressRunDbContext db, DateTimeOffset now)
{
    /// <summary>Most copies by which a count differs from what is on hand.</summary>
    public const int MostDifference = 1_000_000_000;

    private const int MostNote = 500;
    private static readonly DateOnly First = new(1900, 1, 1);

    private HashSet<string>? channels;

    public async Task<List<Problem>> CheckAsync(IReadOnlyList<NewMovement> movements, CancellationToken cancel, bool importing = false)
    {
        channels ??= await db.Channels.Select(channel => channel.Id).ToHashSetAsync(cancel);
        var problems = new List<Problem>();
        for (var index = 0; index < movements.Count; index++)
        {
            // Somewhere it is tomorrow already.
            Check(movements[index], $"$[{index}]", channels, db.Zone.DayOf(now).AddDays(1), problems);
            if (movements[index].Kind == MovementKind.Counted && (movements.Count > 1 || importing))
            {
                problems.Add(new Problem($"$[{index}].kind", null, "Counts are written down one at a time."));
            }

            if (movements[index].Tally is not null && !await GoesOnAsync(movements[index], cancel))
            {
                problems.Add(new Problem($"$[{index}].tally", null, "This tally stands in the ledger already. Take its line back there first, and write it again."));
            }
        }

        return problems;
    }

    // Sent again it stands in the very line that it is sent with.
    private Task<bool> GoesOnAsync(NewMovement movement, CancellationToken cancel) => db.Tallies.AnyAsync(
        tally => tally.Id == movement.Tally!.Id && tally.EditionId == movement.EditionId
            && (tally.WrittenInto == null || tally.WrittenInto == movement.Id || db.CopyMovements.Any(back => back.TakesBack == tally.WrittenInto)),
        cancel);

    /// <summary>Notes what is wrong with a line by itself.</summary>
    /// <param name="movement">The line.</param>
    /// <param name="path">Where it stands.</param>
    /// <param name="channels">Ids of the press's ways of selling.</param>
    /// <param name="last">The last day on which it may have happened.</param>
    /// <param name="problems">Where problems go.</param>
    public static void Check(NewMovement movement, string path, IReadOnlySet<string> channels, DateOnly last, List<Problem> problems)
    {
        var counted = movement.Kind == MovementKind.Counted;
        var copies = counted ? JobRules.CopiesOrNone : JobRules.Copies;
        Require(movement.Id != Guid.Empty, "id", null, "A line has an id of its own.");
        Require(
            movement.Day >= First && movement.Day <= last, "day", movement.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            "Write the day on which it happened, not one to come.");
        Require(copies.Holds(movement.Copies), "copies", Written(movement.Copies), copies.Sentence);
        Require(JobRules.Amount.Holds(movement.Amount), "amount", Written(movement.Amount), JobRules.Amount.Sentence);
        problems.AddRange(movement.Printing is not { } printing ? [] : Contract.Problems(
            json => PrintingShape.WriteMembers(json, printing, Contract.NoCurrency), (element, at, found) => PrintingShape.Read(element, at, found))
            .Select(problem => problem with { Path = $"{path}.printing{problem.Path[1..]}" }));
        problems.AddRange(StepNames(movement.Printing).Select(problem => problem with { Path = path + problem.Path[1..] }));
        Require(
            movement.Amount == 0m || movement.Kind is MovementKind.Printed or MovementKind.Sold or MovementKind.Returned,
            "amount", Written(movement.Amount), "Only printings, sales and returns move money here.");
        Require(movement.ChannelId is null || channels.Contains(movement.ChannelId), "channel", movement.ChannelId, "Name one of the press's ways of selling.");
        Require(
            movement.Note.Length <= MostNote && PlainText.IsStill(movement.Note), "note", null, $"Write a note on one line, at most {MostNote} characters.");

        void Require(bool holds, string member, string? value, string rule)
        {
            if (!holds)
            {
                problems.Add(new Problem($"{path}.{member}", value, rule));
            }
        }
    }

    /// <summary>What is wrong with the names of the steps of the work at the table.</summary>
    public static IEnumerable<Problem> StepNames(PrintingActual? printing) =>
        (printing?.Steps ?? []).SelectMany((step, index) => LibraryRules.Still($"$.printing.steps[{index}].step", step.Step));

    private static string Written(decimal number) => number.ToString(CultureInfo.InvariantCulture);
}
