using System.Text.Json;
using PressRun.Engine.Comparing;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Reprint;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Writing;

/// <summary>Writes what a job file asks for beyond its costing.</summary>
public static class RequestWriter
{
    /// <summary>Writes that half of the run has a part on another stock, as the member <c>halves</c>.</summary>
    public static void WriteHalves(Utf8JsonWriter json, string part, string second)
    {
        json.WriteStartObject("halves");
        json.WriteString("part", part);
        json.WriteString("second", second);
        json.WriteEndObject();
    }

    /// <summary>Writes papers to compare as the member <c>compare</c>.</summary>
    public static void WriteCompare(Utf8JsonWriter json, ComparisonRequest request, Job job)
    {
        json.WriteStartObject("compare");
        json.WriteStartObject("stocks");
        foreach (var choice in request.Choices)
        {
            json.WriteStartArray(job.Edition.Parts[choice.Part].Name);
            foreach (var id in choice.StockIds)
            {
                json.WriteStringValue(id);
            }

            json.WriteEndArray();
        }

        json.WriteEndObject();
        json.List("halves", request.Halves, (writer, halves) =>
        {
            writer.WriteString("part", job.Edition.Parts[halves.Part].Name);
            writer.WriteString("first", halves.FirstStockId);
            writer.WriteString("second", halves.SecondStockId);
        });
        WriteNumbers(json, "quantities", request.Quantities.Select(quantity => (decimal)quantity));
        json.WriteEndObject();
    }

    /// <summary>Writes what a reprint is decided from as the member <c>reprint</c>.</summary>
    public static void WriteReprint(Utf8JsonWriter json, ReprintRequest request, Currency currency)
    {
        json.WriteStartObject("reprint");
        json.WriteNumber("onHand", request.OnHand);
        json.WriteStartObject("demand");
        WriteDemand(json, request.Demand);
        json.WriteNumber("committed", request.Demand.Committed);
        json.WriteEndObject();
        json.Amount("netPerCopy", request.NetPerCopy, currency);
        json.Amount("salvage", request.Salvage, currency);
        json.Amount("penalty", request.Penalty, currency);
        json.Amount("holding", request.Holding, currency);
        json.Amount("cash", request.Cash, currency);
        json.WriteNumber("from", request.From);
        json.WriteNumber("to", request.To);
        json.WriteNumber("step", request.Step);
        json.WriteEndObject();
    }

    private static void WriteDemand(Utf8JsonWriter json, Demand demand)
    {
        switch (demand)
        {
            case TableDemand table:
                json.WriteString("kind", "table");
                WriteNumbers(json, "probabilities", table.Probabilities);
                break;
            case PoissonDemand poisson:
                json.WriteString("kind", "poisson");
                json.Number("mean", poisson.Mean);
                break;
            case NegativeBinomialDemand wide:
                json.WriteString("kind", "negativeBinomial");
                json.Number("mean", wide.Mean);
                json.Number("shape", wide.Shape);
                break;
            case HistoryDemand history:
                json.WriteString("kind", "history");
                WriteNumbers(json, "periods", history.Periods.Select(sold => (decimal)sold));
                json.Number("horizonPeriods", history.HorizonPeriods);
                json.Number("uplift", history.Uplift);
                json.Number("priorShape", history.PriorShape);
                json.Number("priorRate", history.PriorRate);
                break;
            case OpinionDemand opinion:
                json.WriteString("kind", "opinion");
                json.Number("low", opinion.Low);
                json.Number("likely", opinion.Likely);
                json.Number("high", opinion.High);
                break;
        }
    }

    private static void WriteNumbers(Utf8JsonWriter json, string name, IEnumerable<decimal> numbers)
    {
        json.WriteStartArray(name);
        foreach (var number in numbers)
        {
            json.WriteNumberValue(NumberText.Trimmed(number));
        }

        json.WriteEndArray();
    }
}
