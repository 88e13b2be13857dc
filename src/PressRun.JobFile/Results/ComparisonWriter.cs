using System.Text.Json;
using PressRun.Engine.Comparing;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;

namespace PressRun.JobFile.Results;

/// <summary>Writes papers side by side as the result of <c>compare</c>.</summary>
public static class ComparisonWriter
{
    private static readonly (ComparisonMarks Mark, string Word)[] Marks =
    [
        (ComparisonMarks.Cheapest, "cheapest"),
        (ComparisonMarks.Lightest, "lightest"),
        (ComparisonMarks.FirstOverStep, "firstOverStep"),
        (ComparisonMarks.HeaviestInStep, "heaviestInStep"),
    ];

    /// <summary>Writes one JSON object.</summary>
    public static void Write(Utf8JsonWriter json, StockComparison comparison, Job job)
    {
        json.WriteStartObject();
        json.WriteStartArray("rows");
        foreach (var row in comparison.Rows)
        {
            json.WriteStartObject();
            WriteStrings(json, "stocks", row.StockIds);
            WriteCosts(json, row.Estimate, job.Currency);
            WriteCopy(json, row.Estimate.Copy, row.InHand, job.Currency);
            WriteStrings(json, "marks", [.. Marks.Where(mark => row.Marks.HasFlag(mark.Mark)).Select(mark => mark.Word)]);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("halves");
        foreach (var row in comparison.Halves)
        {
            WriteHalves(json, row, job);
        }

        json.WriteEndArray();
        json.WriteStartArray("refused");
        foreach (var refused in comparison.Refused)
        {
            WriteRefused(json, refused);
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteHalves(Utf8JsonWriter json, HalvesRow row, Job job)
    {
        json.WriteStartObject();
        json.WriteString("part", job.Edition.Parts[row.Choice.Part].Name);
        WriteCosts(json, row.Estimate, job.Currency);
        WriteHalf("first", row.Choice.FirstStockId, row.Estimate.Copy, row.InHand);
        WriteHalf("second", row.Choice.SecondStockId, row.OtherCopy, row.OtherInHand);
        json.WriteEndObject();

        void WriteHalf(string name, string stockId, in CopyEstimate copy, IReadOnlyList<InHand> inHand)
        {
            json.WriteStartObject(name);
            json.WriteString("stock", stockId);
            WriteCopy(json, copy, inHand, job.Currency);
            json.WriteEndObject();
        }
    }

    private static void WriteCosts(Utf8JsonWriter json, Estimate estimate, Currency currency)
    {
        json.WriteNumber("quantity", estimate.Quantity);
        json.Money("landedCost", estimate.Totals.LandedCost, currency);
        json.PerCopy("unitCost", estimate.UnitCost);
        json.WriteStartObject("freight");
        json.Measure("massG", estimate.Freight.Mass.Grams);
        json.WriteNumber("cartons", estimate.Freight.Cartons);
        json.WriteEndObject();
    }

    private static void WriteCopy(Utf8JsonWriter json, in CopyEstimate copy, IReadOnlyList<InHand> inHands, Currency currency)
    {
        EstimateWriter.WriteCopy(json, copy);
        json.WriteStartArray("inHand");
        foreach (var inHand in inHands)
        {
            json.WriteStartObject();
            json.WriteString("channel", inHand.ChannelId);
            json.PerCopy("cost", inHand.Cost);
            json.WriteString("service", inHand.Postage?.ServiceId);
            json.Price("postage", inHand.Postage?.Price, currency);
            json.Measure("headroomG", inHand.Postage?.HeadroomMass?.Grams);
            json.Measure("headroomMm", inHand.Postage?.HeadroomThickness?.Millimetres);
            json.WriteStartArray("headroomLeaves");
            foreach (var leaves in inHand.HeadroomLeaves)
            {
                json.WriteNumberValue(leaves);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteRefused(Utf8JsonWriter json, RefusedCombination refused)
    {
        json.WriteStartObject();
        WriteStrings(json, "stocks", refused.StockIds);
        json.Count("quantity", refused.Quantity);
        json.WriteStartArray("errors");
        foreach (var problem in refused.Problems)
        {
            json.WriteStartObject();
            json.WriteString("path", problem.Path);
            json.WriteString("value", problem.Value);
            json.WriteString("rule", problem.Rule);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteStrings(Utf8JsonWriter json, string name, IReadOnlyList<string> strings)
    {
        json.WriteStartArray(name);
        foreach (var text in strings)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }
}
