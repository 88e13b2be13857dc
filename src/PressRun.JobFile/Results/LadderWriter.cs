using System.Text.Json;
using PressRun.Engine.Ladder;
using PressRun.Engine.Measures;

namespace PressRun.JobFile.Results;

/// <summary>Writes a ladder of quantities as the contract's result of <c>ladder</c>.</summary>
public static class LadderWriter
{
    /// <summary>Writes one JSON object.</summary>
    public static void Write(Utf8JsonWriter json, QuantityLadder ladder, Currency currency)
    {
        json.WriteStartObject();
        json.WriteStartArray("ladder");
        foreach (var rung in ladder.Rungs)
        {
            json.WriteStartObject();
            json.WriteNumber("quantity", rung.Quantity);
            json.Money("landedCost", rung.LandedCost, currency);
            json.PerCopy("unitCost", rung.UnitCost);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteNumber("lowestUnitCostQuantity", ladder.LowestUnitCostQuantity);
        json.WriteStartArray("betterBuys");
        foreach (var buy in ladder.BetterBuys)
        {
            json.WriteStartObject();
            json.WriteNumber("from", buy.From);
            json.WriteNumber("to", buy.To);
            json.Money("saves", buy.Saves, currency);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
