using System.Globalization;
using System.Text.Json;
using PressRun.Engine.Costing;
using PressRun.Engine.Ladder;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Blocks;

/// <summary>Reads the quantities of a ladder.</summary>
public static class LadderBlock
{
    private const string Rule = "Write a ladder as { \"from\", \"to\", \"step\" }.";

    private static readonly NumberRule Step = new("Write a whole number of copies from 1 to 1,000,000 between quantities.", 1m, Job.MostCopies, IsWhole: true);

    /// <summary>Reads the member <c>ladder</c> of a block; null where it is left out.</summary>
    public static LadderRange? ReadMember(JsonBlock block) =>
        block.Take("ladder", Need.May, Rule) is { } element ? Read(element, block.Path.Member("ladder"), block.Problems) : null;

    /// <summary>Reads a ladder; its step is 1 where none is named.</summary>
    /// <returns>Null where a problem was noted.</returns>
    public static LadderRange? Read(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var from = block.Count("from", JobRules.Copies, Need.Must);
        var to = block.Count("to", JobRules.Copies, Need.Must);
        var step = block.Count("step", Step) ?? (block.Has("step") ? null : 1);
        block.Close();
        if (from is null || to is null || step is null)
        {
            return null;
        }

        if (to < from)
        {
            problems.Add(path.Member("to"), Text(to.Value), $"A ladder ends where it begins, at {Text(from.Value)}, or above.");
            return null;
        }

        var range = new LadderRange(from.Value, to.Value, step.Value);
        if (range.Count > Job.MostQuantities)
        {
            problems.Add(path.Member("step"), Text(step.Value), $"A ladder has at most 10,000 quantities and this one {Text(range.Count)}; write a larger step.");
            return null;
        }

        return range;
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
