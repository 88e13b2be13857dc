using System.Text.Json;
using PressRun.Engine.Bench;
using PressRun.Engine.Measures;

namespace PressRun.JobFile.Writing;

/// <summary>Writes the press's own table.</summary>
public static class BenchWriter
{
    /// <summary>Writes the members of a bench into an open object.</summary>
    public static void WriteMembers(Utf8JsonWriter json, BenchRates bench, Currency currency)
    {
        json.Amount("hourlyRate", bench.HourlyRate, currency);
        json.WriteBoolean("paid", bench.Paid);
        json.List("steps", bench.Steps, WriteStep);
        json.List("consumables", bench.Consumables, (writer, consumable) =>
        {
            writer.WriteString("name", consumable.Name);
            writer.Amount("perCopy", consumable.PerCopy, currency);
        });
        json.Mass("fittingsMass", bench.FittingsMass);
        json.WriteStartObject("overs");
        json.Word("mode", JobWords.OversModes, bench.Overs.Mode);
        json.Number("confidence", bench.Overs.Confidence);
        json.WriteEndObject();
        json.Length("stapleFromSpine", bench.StapleFromSpine);
    }

    private static void WriteStep(Utf8JsonWriter json, BenchStep step)
    {
        json.WriteString("name", step.Name);
        json.Number("setupMinutes", step.SetUpMinutes);
        json.Number("secondsPerCopy", step.SecondsPerCopy);
        json.Number("secondsPerPiece", step.SecondsPerPiece);
        json.Number("secondsPerCut", step.SecondsPerCut);
        json.WriteNumber("copiesPerPile", step.CopiesPerPile);
        json.Number("spoilage", step.Spoilage);
    }
}
