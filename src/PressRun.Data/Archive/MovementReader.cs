using System.Text.Json;
using PressRun.Data.Copies;
using PressRun.Engine.Copies;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Archive;

/// <summary>Reads the copies ledger of an edition.</summary>
internal static class MovementReader
{
    private const string Rule = "Write a movement as { \"day\", \"kind\", \"change\", \"amount\", \"channel\", \"note\" }.";
    private const string PlaceRule = "Name an earlier or later movement of the list by its place, the first being 0.";

    private static readonly NumberRule Change = new(
        "Write by how many the copies on hand change: a whole number, below 0 for copies that go.", -MovementRules.MostDifference, MovementRules.MostDifference, IsWhole: true);

    // What the ledger of one printing may come to, and what it may still hold that was written before there was a limit.
    public static readonly NumberRule Copies = new("Write a whole number of copies from 0 to 2,000,000,000.", 0m, 2 * LedgerWriting.MostMoved, IsWhole: true);

    private static readonly NumberRule Amount = new("Write an amount of money, below 0 for what was paid back.", -1_000_000_000_000m, 1_000_000_000_000m);

    private static readonly NumberRule Place = new(PlaceRule, 0m, int.MaxValue, IsWhole: true);

    /// <summary>The ledger as the edition names it; where it names none, lines that come to the copies it says were printed and are on hand.</summary>
    public static IReadOnlyList<ArchivedMovement> Read(JsonBlock edition, IReadOnlySet<string> channelIds, DateOnly? printedOn, int? printed)
    {
        var onHand = edition.Count("copiesOnHand", Copies);
        var movements = edition.List("movements", Need.May, Rule, (item, place) => ReadOne(item, place, channelIds, edition.Problems));
        if (movements.Count == 0)
        {
            return Opening(printedOn ?? ArchiveWords.DayUnknown, printed ?? 0, onHand ?? 0);
        }

        var path = edition.Path.Member("movements");
        foreach (var (place, movement) in movements.Index())
        {
            CheckPlace(movement.TakesBack, path.Item(place).Member("takesBack"));
            CheckPlace(movement.SettledBy, path.Item(place).Member("settledBy"));
        }

        Agrees(onHand, movements.Sum(movement => (long)movement.Change), "copiesOnHand");
        Agrees(printed, movements.Where(movement => movement.Kind == MovementKind.Printed).Sum(movement => (long)movement.Change), "copiesPrinted");
        return movements;

        void CheckPlace(int? place, JsonPath at)
        {
            if (place >= movements.Count)
            {
                edition.Problems.Add(at, $"{place}", PlaceRule);
            }
        }

        void Agrees(int? said, long sum, string member)
        {
            if (said is not null && said != sum)
            {
                edition.Problems.Add(edition.Path.Member(member), $"{said}", $"The movements come to {sum} copies; write that, or leave it out.");
            }
        }
    }

    private static List<ArchivedMovement> Opening(DateOnly day, int printed, int onHand)
    {
        var lines = new List<ArchivedMovement>();
        if (printed > 0)
        {
            lines.Add(new ArchivedMovement(day, MovementKind.Printed, printed, 0m, null, ArchiveWords.BeforeTheLedger, null, null, null));
        }

        if (onHand != printed)
        {
            lines.Add(new ArchivedMovement(day, MovementKind.Counted, onHand - printed, 0m, null, ArchiveWords.BeforeTheLedger, null, null, null));
        }

        return lines;
    }

    private static ArchivedMovement? ReadOne(JsonElement element, JsonPath path, IReadOnlySet<string> channelIds, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var channel = block.Text("channel", Need.May, JobRules.Id);
        if (channel is not null && !channelIds.Contains(channel))
        {
            problems.Add(path.Member("channel"), channel, "Name one of the press's channels by its id.");
        }

        var movement = new ArchivedMovement(
            Moments.Day(block, "day", Need.Must) ?? default,
            block.Choice("kind", ArchiveWords.Movements, Need.Must) ?? default,
            block.Count("change", Change, Need.Must) ?? 0,
            block.Number("amount", Amount) ?? 0m,
            channel,
            block.Text("note", Need.May, ArchiveWords.Text) ?? "",
            block.Count("takesBack", Place),
            block.Count("settledBy", Place),
            block.Take("printing", Need.May, Rule) is { } printing ? PrintingShape.Read(printing, path.Member("printing"), problems) : null);
        block.Close();
        return movement;
    }
}
