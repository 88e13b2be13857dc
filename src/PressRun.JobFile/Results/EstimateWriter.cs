using System.Text.Json;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Results;

/// <summary>Writes a costing as the contract's result of <c>estimate</c>.</summary>
public static class EstimateWriter
{
    /// <summary>Writes one JSON object.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="estimate">The costing.</param>
    /// <param name="job">The job it is of, for its currency and the names of its papers.</param>
    public static void Write(Utf8JsonWriter json, Estimate estimate, Job job)
    {
        json.WriteStartObject();
        json.WriteNumber("quantity", estimate.Quantity);
        json.WriteNumber("copiesToStart", estimate.CopiesToStart);
        WriteList(json, "parts", estimate.Parts, WritePart);
        WriteList(json, "lines", estimate.Lines, (writer, line) => WriteLine(writer, line, job));
        WriteTotals(json, estimate, job.Currency);
        WriteCopy(json, estimate.Copy);
        json.WriteStartObject("freight");
        json.Measure("massG", estimate.Freight.Mass.Grams);
        json.WriteNumber("cartons", estimate.Freight.Cartons);
        json.WriteEndObject();
        WriteList(json, "postage", estimate.Postage, (writer, choice) => WritePostage(writer, choice, job.Currency));
        WriteList(json, "channels", estimate.Channels, (writer, channel) =>
        {
            writer.WriteString("id", channel.Id);
            writer.PerCopy("netPerCopy", channel.NetPerCopy);
            writer.Money("breakEvenPrice", channel.BreakEvenPrice, job.Currency);
        });
        json.WriteStartObject("breakEven");
        json.Count("copies", estimate.BreakEven.Copies);
        json.WriteBoolean("withinRun", estimate.BreakEven.WithinRun);
        json.PerCopy("netPerCopy", estimate.BreakEven.NetPerCopy);
        json.WriteEndObject();
        WriteList(json, "warnings", estimate.Warnings, (writer, warning) =>
        {
            writer.WriteString("code", JobWords.Warnings.Of(warning.Code));
            writer.WriteString("message", warning.Message);
        });
        if (estimate.SecondHalf is { } half)
        {
            WriteHalves(json, half, job);
        }

        json.WriteEndObject();
    }

    /// <summary>Writes one finished copy as the member <c>copy</c>.</summary>
    internal static void WriteCopy(Utf8JsonWriter json, in CopyEstimate copy)
    {
        json.WriteStartObject("copy");
        json.Measure("massG", copy.Mass.Grams);
        json.Measure("thicknessMm", copy.Thickness.Millimetres);
        json.Measure("creepMm", copy.Creep.Millimetres);
        json.WriteEndObject();
    }

    // What is there only where the job has it comes last, so that every other answer is as it was.
    private static void WriteHalves(Utf8JsonWriter json, SecondHalfEstimate half, Job job)
    {
        var part = job.Edition.Parts[half.Half.Part];
        json.WriteStartObject("halves");
        json.WriteString("part", part.Name);
        json.WriteStartObject("first");
        json.WriteString("stock", part.StockId);
        json.WriteNumber("copies", half.FirstCopies);
        json.WriteEndObject();
        json.WriteStartObject("second");
        json.WriteString("stock", half.Half.StockId);
        json.WriteNumber("copies", half.Copies);
        WriteCopy(json, half.Copy);
        WriteList(json, "postage", half.Postage, (writer, choice) => WritePostage(writer, choice, job.Currency));
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WritePart(Utf8JsonWriter json, PartEstimate part)
    {
        var sheets = part.OnSheets;
        json.WriteString("name", part.Name);
        json.WriteNumber("piecesPerCopy", part.PiecesPerCopy);
        json.Measure("pieceWidthMm", part.Piece.Width.Millimetres);
        json.Measure("pieceHeightMm", part.Piece.Height.Millimetres);
        json.WriteString("sheet", sheets?.SheetId);
        json.Count("piecesPerSheet", sheets?.PiecesPerSheet);
        json.Count("sheets", sheets?.Sheets);
        json.Measure("sheetsPerCopy", sheets?.SheetsPerCopy);
        json.WriteString("layout", sheets is null ? null : JobWords.Layouts.Of(sheets.Layout));
        if (sheets is null)
        {
            json.WriteNull("impressions");
        }
        else
        {
            json.WriteStartObject("impressions");
            foreach (var (ink, count) in sheets.Impressions)
            {
                json.WriteNumber(JobWords.Inks.Of(ink), count);
            }

            json.WriteEndObject();
        }

        json.Measure("massPerCopyG", part.MassPerCopy.Grams);
        json.Measure("caliperUm", part.Caliper.Micrometres);
    }

    private static void WriteLine(Utf8JsonWriter json, CostLine line, Job job)
    {
        json.WriteString("code", LineText.Code(line));
        json.WriteString("label", LineText.Label(line, job));
        json.WriteNumber("quantity", NumberText.Trimmed(line.Quantity));
        json.Price("each", line.Each, job.Currency);
        json.Money("amount", line.Amount, job.Currency);
    }

    private static void WriteTotals(Utf8JsonWriter json, Estimate estimate, Currency currency)
    {
        var totals = estimate.Totals;
        json.Money("goods", totals.Goods, currency);
        json.Money("discount", totals.Discount, currency);
        json.Money("minimumTopUp", totals.MinimumTopUp, currency);
        json.Money("delivery", totals.Delivery, currency);
        json.Money("tax", totals.Tax, currency);
        json.Money("shopTotal", totals.ShopTotal, currency);
        json.Measure("benchHours", totals.BenchHours);
        json.Money("benchLabour", totals.BenchLabour, currency);
        json.Money("consumables", totals.Consumables, currency);
        json.Money("fixedCosts", totals.FixedCosts, currency);
        json.Money("landedCost", totals.LandedCost, currency);
        json.Money("cashOut", totals.CashOut, currency);
        json.PerCopy("unitCost", estimate.UnitCost);
    }

    private static void WritePostage(Utf8JsonWriter json, PostageChoice choice, Currency currency)
    {
        json.WriteString("channel", choice.ChannelId);
        json.WriteString("service", choice.ServiceId);
        json.Measure("massG", choice.Mass.Grams);
        json.Measure("thicknessMm", choice.Thickness.Millimetres);
        json.Price("price", choice.Price, currency);
        json.Measure("headroomG", choice.HeadroomMass?.Grams);
        json.Measure("headroomMm", choice.HeadroomThickness?.Millimetres);
        WriteList(json, "refused", choice.Refused, (writer, refused) =>
        {
            writer.WriteString("service", refused.ServiceId);
            writer.WriteString("limit", JobWords.PostageLimits.Of(refused.Limit));
            writer.Measure(refused.Limit == PostageLimit.Mass ? "byG" : "byMm", refused.By);
        });
    }

    private static void WriteList<T>(Utf8JsonWriter json, string name, IReadOnlyList<T> items, Action<Utf8JsonWriter, T> writeMembers)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            writeMembers(json, item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
