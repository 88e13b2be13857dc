using System.Text.Json;
using PressRun.Data.Conversions;
using PressRun.Engine.Bench;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Bench;

/// <summary>A press's limits as a document, in the database and in its archive. What is left out is as usual.</summary>
internal static class BenchLimitsShape
{
    /// <summary>The member of an archive that holds it.</summary>
    public const string Name = "benchLimits";

    private const string Rule = "Write the limits of the bench as { \"stapleLeg\", \"clinch\", \"scoreOver\", \"grainOver\", \"creepBeyondTrim\" }.";

    private static readonly NumberRule Grammage = new("Write a grammage in g/m² from 0 to 10,000 as a number.", 0m, 10_000m);

    /// <summary>As it is kept in the database.</summary>
    public static JobFileShape<BenchLimits> Document { get; } = new(
        limits => Contract.Text(json => WriteMembers(json, limits)), text => Contract.Read(text, Read));

    public static void WriteMembers(Utf8JsonWriter json, BenchLimits limits)
    {
        json.WriteString("stapleLeg", MeasureText.Exact(limits.StapleLeg));
        json.WriteString("clinch", MeasureText.Exact(limits.Clinch));
        json.WriteNumber("scoreOver", limits.ScoreOver);
        json.WriteNumber("grainOver", limits.GrainOver);
        json.WriteString("creepBeyondTrim", MeasureText.Exact(limits.CreepBeyondTrim));
    }

    public static BenchLimits ReadMember(JsonBlock archive) =>
        archive.Take(Name, Need.May, Rule) is { } element
            ? Read(element, archive.Path.Member(Name), archive.Problems) ?? BenchLimits.Usual
            : BenchLimits.Usual;

    public static BenchLimits? Read(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var usual = BenchLimits.Usual;
        var limits = new BenchLimits(
            block.Length("stapleLeg", JobRules.Allowance) ?? usual.StapleLeg,
            block.Length("clinch", JobRules.Allowance) ?? usual.Clinch,
            block.Number("scoreOver", Grammage) ?? usual.ScoreOver,
            block.Number("grainOver", Grammage) ?? usual.GrainOver,
            block.Length("creepBeyondTrim", JobRules.Allowance) ?? usual.CreepBeyondTrim);
        block.Close();
        return limits;
    }
}
