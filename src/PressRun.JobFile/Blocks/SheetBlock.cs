using System.Text.Json;
using PressRun.Engine.Sheets;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Blocks;

/// <summary>Reads a shop's sheet sizes.</summary>
internal static class SheetBlock
{
    // Each part is tried on each sheet.
    private const int MostSheets = 100;

    private const string Rule = "Write a sheet as { \"width\", \"height\", \"margin\", \"gutter\", \"mixedLayout\", \"grain\" }.";

    /// <summary>Reads the member <c>sheets</c>: an object whose keys are the ids.</summary>
    /// <param name="block">The block that holds it.</param>
    /// <param name="need">Whether it may be left out.</param>
    /// <param name="rule">What it should be.</param>
    /// <param name="ids">The ids found; null where the member is wrong and that cannot be told.</param>
    public static IReadOnlyList<Sheet> ReadAll(JsonBlock block, Need need, string rule, out IReadOnlySet<string>? ids)
    {
        if (block.Entries("sheets", need, rule, MostSheets) is not { } members)
        {
            ids = block.Has("sheets") || need == Need.Must ? null : new HashSet<string>();
            return [];
        }

        ids = members.Members.Select(member => member.Name).ToHashSet(StringComparer.Ordinal);
        var sheets = new List<Sheet>();
        foreach (var (id, value) in members.Members)
        {
            var path = members.Path.Member(id);
            Keys.CheckId(id, path, block.Problems);
            if (Read(value, path, id, block.Problems) is { } sheet)
            {
                sheets.Add(sheet);
            }
        }

        return sheets;
    }

    private static Sheet? Read(JsonElement element, JsonPath path, string id, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var sheet = new Sheet(
            id,
            block.Length("width", JobRules.Side, Need.Must) ?? default,
            block.Length("height", JobRules.Side, Need.Must) ?? default,
            block.Length("margin", JobRules.Allowance) ?? default,
            block.Length("gutter", JobRules.Allowance) ?? default,
            block.Flag("mixedLayout") ?? false,
            block.Choice("grain", JobWords.Grains) ?? GrainRule.Any);
        block.Close();
        return sheet;
    }
}
