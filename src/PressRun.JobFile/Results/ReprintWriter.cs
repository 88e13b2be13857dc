using System.Text.Json;
using PressRun.Engine.Measures;
using PressRun.Engine.Reprint;

namespace PressRun.JobFile.Results;

/// <summary>Writes a reprint plan as the contract's result of <c>reprint</c>.</summary>
public static class ReprintWriter
{
    // Sums of doubles are exact to some twelve digits; what is shown of a probability or a mean is not more than they hold.
    private const int ProbabilityDecimals = 12;

    /// <summary>Writes one JSON object.</summary>
    public static void Write(Utf8JsonWriter json, ReprintPlan plan, Currency currency)
    {
        json.WriteStartObject();
        json.WriteNumber("bestQuantity", plan.BestQuantity);
        json.PerCopy("expectedProfit", plan.ExpectedProfit);
        json.Money("landedCost", plan.LandedCost, currency);
        json.PerCopy("netPerCopy", plan.NetPerCopy);
        json.WriteStartObject("withinCash");
        json.WriteNumber("quantity", plan.WithinCash.Quantity);
        json.PerCopy("expectedProfit", plan.WithinCash.ExpectedProfit);
        json.WriteEndObject();
        json.WriteNumber("chanceOfSellingOut", Rounded(plan.Odds.SellingOut));
        json.WriteNumber("chanceOfLoss", Rounded(plan.Odds.Loss));
        json.WriteStartObject("leftover");
        json.WriteNumber("p10", plan.Odds.Leftover10);
        json.WriteNumber("p50", plan.Odds.Leftover50);
        json.WriteNumber("p90", plan.Odds.Leftover90);
        json.WriteEndObject();
        json.WriteNumber("expectedDemand", Rounded(plan.ExpectedDemand));
        json.WriteStartArray("dots");
        foreach (var dot in plan.Dots)
        {
            json.WriteNumberValue(dot);
        }

        json.WriteEndArray();
        json.WriteStartArray("curve");
        foreach (var point in plan.Curve)
        {
            json.WriteStartObject();
            json.WriteNumber("quantity", point.Quantity);
            json.PerCopy("expectedProfit", point.ExpectedProfit);
            json.Money("landedCost", point.LandedCost, currency);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static double Rounded(double value) => Math.Round(value, ProbabilityDecimals);
}
