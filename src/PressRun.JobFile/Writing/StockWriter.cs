using System.Text.Json;
using PressRun.Engine.Paper;

namespace PressRun.JobFile.Writing;

/// <summary>Writes papers.</summary>
public static class StockWriter
{
    /// <summary>Writes the members of a stock, but not its id, into an open object.</summary>
    public static void WriteMembers(Utf8JsonWriter json, Stock stock)
    {
        json.WriteString("name", stock.Name);
        json.Weight("weight", stock.Weight);
        if (stock.StatedCaliper is { } caliper)
        {
            json.WriteString("caliper", MeasureText.ExactThin(caliper));
        }

        json.Number("bulk", stock.Bulk);
        if (stock.Finish is { } finish)
        {
            json.Word("finish", JobWords.Finishes, finish);
        }
    }
}
