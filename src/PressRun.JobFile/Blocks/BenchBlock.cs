using System.Text.Json;
using PressRun.Engine.Bench;
using PressRun.Engine.Measures;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Blocks;

/// <summary>Reads the press's own table.</summary>
public static class BenchBlock
{
    private const string Rule = "Write the bench as an object with hourlyRate, paid, steps, consumables, fittingsMass, overs and stapleFromSpine.";
    private const string StepRule = "Write bench steps as a list of { \"name\", \"setupMinutes\", \"secondsPerCopy\", \"spoilage\" } and the like.";
    private const string ConsumableRule = "Write consumables as a list of { \"name\", \"perCopy\" }.";
    private const string OversRule = "Write overs as { \"mode\", \"confidence\" }.";

    private static readonly NumberRule CopiesPerPile =
        new("Write how many copies are cut together, a whole number from 1 to 1,000,000.", 1m, 1_000_000m, IsWhole: true);

    /// <summary>Reads the member <c>bench</c> of a block; a press without one does nothing itself.</summary>
    public static BenchRates ReadMember(JsonBlock block) =>
        block.Take("bench", Need.May, Rule) is { } element
            ? Read(element, block.Path.Member("bench"), block.Problems) ?? BenchRates.None
            : BenchRates.None;

    /// <summary>Reads a bench.</summary>
    /// <returns>Null where it is no object; whole only where no problem was noted.</returns>
    public static BenchRates? Read(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var bench = new BenchRates(
            block.Number("hourlyRate", JobRules.Amount) ?? 0m,
            block.Flag("paid") ?? false,
            block.List("steps", Need.May, StepRule, (item, place) => ReadStep(item, place, problems), JobRules.MostEntries),
            block.List("consumables", Need.May, ConsumableRule, (item, place) => ReadConsumable(item, place, problems), JobRules.MostEntries),
            block.Mass("fittingsMass", JobRules.MassOrNone) ?? Mass.Zero,
            ReadOvers(block),
            block.Length("stapleFromSpine", JobRules.Allowance) ?? BenchRates.UsualStapleFromSpine);
        block.Close();
        return bench;
    }

    private static BenchStep? ReadStep(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, StepRule) is not { } block)
        {
            return null;
        }

        var step = new BenchStep(
            block.Text("name", Need.May, JobRules.Name) ?? string.Empty,
            Time("setupMinutes"),
            Time("secondsPerCopy"),
            Time("secondsPerPiece"),
            Time("secondsPerCut"),
            block.Count("copiesPerPile", CopiesPerPile) ?? 1,
            block.Number("spoilage", JobRules.RateBelowOne) ?? 0m);
        block.Close();
        return step;

        decimal Time(string name) => block.Number(name, JobRules.Time) ?? 0m;
    }

    private static Consumable? ReadConsumable(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, ConsumableRule) is not { } block)
        {
            return null;
        }

        var consumable = new Consumable(
            block.Text("name", Need.May, JobRules.Name) ?? string.Empty,
            block.Number("perCopy", JobRules.Amount) ?? 0m);
        block.Close();
        return consumable;
    }

    private static Overs ReadOvers(JsonBlock bench)
    {
        if (bench.Block("overs", Need.May, OversRule) is not { } block)
        {
            return BenchRates.None.Overs;
        }

        var overs = new Overs(
            block.Choice("mode", JobWords.OversModes) ?? OversMode.Plain,
            block.Number("confidence", JobRules.Confidence) ?? Overs.UsualConfidence);
        block.Close();
        return overs;
    }
}
