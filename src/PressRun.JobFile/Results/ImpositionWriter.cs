using System.Text.Json;
using PressRun.Engine.Bench;

namespace PressRun.JobFile.Results;

/// <summary>Writes what the one who binds needs as the contract's result of <c>impose</c>.</summary>
public static class ImpositionWriter
{
    /// <summary>Writes one JSON object.</summary>
    public static void Write(Utf8JsonWriter json, Imposition imposition)
    {
        json.WriteStartObject();
        json.WriteStartArray("sheets");
        foreach (var piece in imposition.Pieces)
        {
            json.WriteStartObject();
            json.WriteNumber("sheet", piece.Number);
            json.WriteString("part", piece.PartName);
            WritePages(json, "outer", piece.Outer);
            WritePages(json, "inner", piece.Inner);
            json.Measure("pushOutMm", piece.PushOut.Millimetres);
            json.Measure("shiftMm", piece.Shift.Millimetres);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.Measure("staplerStopMm", imposition.StaplerStop?.Millimetres);
        json.WriteStartArray("staplesFromHeadMm");
        foreach (var staple in imposition.StaplesFromHead)
        {
            json.MeasureValue(staple.Millimetres);
        }

        json.WriteEndArray();
        json.WriteStartArray("cuts");
        foreach (var cut in imposition.Cuts)
        {
            json.WriteStartObject();
            json.WriteString("edge", JobWords.Edges.Of(cut.Edge));
            json.Measure("fenceMm", cut.Fence.Millimetres);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WritePages(Utf8JsonWriter json, string name, IReadOnlyList<int> pages)
    {
        json.WriteStartArray(name);
        foreach (var page in pages)
        {
            json.WriteNumberValue(page);
        }

        json.WriteEndArray();
    }
}
