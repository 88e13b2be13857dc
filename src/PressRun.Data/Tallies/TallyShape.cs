using System.Text.Json;
using PressRun.Data.Conversions;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Tallies;

/// <summary>The steps of a tally as a document.</summary>
internal static class TallyShape
{
    /// <summary>Most steps of a tally.</summary>
    public const int MostSteps = 100;

    private const string Rule = "Write the steps of a tally as a list of { \"name\", \"kind\", \"spoilage\", \"minutes\" }.";

    private static readonly Words<WorkKind> Kinds = new(
        ("cutApart", WorkKind.CutApart), ("score", WorkKind.Score), ("collate", WorkKind.Collate), ("jog", WorkKind.Jog), ("trimSpine", WorkKind.TrimSpine),
        ("staple", WorkKind.Staple), ("glue", WorkKind.Glue), ("fold", WorkKind.Fold), ("press", WorkKind.Press), ("trim", WorkKind.Trim),
        ("pack", WorkKind.Pack), ("other", WorkKind.Other));

    /// <summary>As it is kept in the database.</summary>
    public static JobFileShape<IReadOnlyList<TallyStep>> Document { get; } = new(
        steps => Contract.Text(json => WriteSteps(json, steps)),
        text => Contract.Read(text, ReadDocument));

    /// <summary>What is wrong with steps; empty where nothing is.</summary>
    public static IReadOnlyList<Problem> Problems(IReadOnlyList<TallyStep> steps) =>
        Contract.Problems(json => WriteSteps(json, steps), (element, path, problems) => ReadDocument(element, path, problems));

    public static void WriteSteps(Utf8JsonWriter json, IReadOnlyList<TallyStep> steps)
    {
        json.WriteStartArray("steps");
        foreach (var step in steps)
        {
            json.WriteStartObject();
            json.WriteString("name", step.Name);
            json.WriteString("kind", Kinds.Of(step.Kind));
            json.WriteNumber("spoilage", step.Spoilage);
            if (step.Minutes is { } minutes)
            {
                json.WriteNumber("minutes", minutes);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    public static IReadOnlyList<TallyStep> ReadSteps(JsonBlock tally) => tally.List("steps", Need.Must, Rule, (item, place) => ReadStep(item, place, tally.Problems), MostSteps);

    private static IReadOnlyList<TallyStep>? ReadDocument(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var steps = ReadSteps(block);
        block.Close();
        return steps;
    }

    private static TallyStep? ReadStep(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var step = new TallyStep(
            block.Text("name", Need.Must, JobRules.Id) ?? "",
            block.Choice("kind", Kinds, Need.Must) ?? default,
            block.Number("spoilage", JobRules.RateBelowOne) ?? 0m,
            block.Number("minutes", JobRules.Time));
        block.Close();
        return step;
    }
}
