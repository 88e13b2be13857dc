using System.Text.Json;
using PressRun.Data.Conversions;
using PressRun.Engine.Copies;
using PressRun.Engine.Measures;
using PressRun.JobFile;
using PressRun.JobFile.Reading;
using PressRun.JobFile.Writing;

namespace PressRun.Data.Copies;

/// <summary>What a printing really was, as a document.</summary>
internal static class PrintingShape
{
    private const string Rule = "Write a printing as { \"goodCopies\", \"shopPaid\", \"taxReclaimed\", \"consumables\", \"fixedCosts\", \"hourlyRate\", \"invoice\", \"steps\" }.";
    private const string StepRule = "Write a step as { \"step\", \"minutes\", \"started\", \"spoiled\" }.";
    private const string InvoiceRule = "Write a part of the invoice as { \"part\", \"amount\" }, each part once.";
    private const string SpoiledRule = "No more copies can go wrong than were started.";

    private static readonly Words<InvoicePart> Parts = new(
        ("printing", InvoicePart.Printing), ("paper", InvoicePart.Paper), ("setUp", InvoicePart.SetUp), ("finishing", InvoicePart.Finishing),
        ("delivery", InvoicePart.Delivery), ("tax", InvoicePart.Tax));

    /// <summary>As it is kept in the database.</summary>
    public static JobFileShape<PrintingActual> Document { get; } = new(
        printing => Contract.Text(json => WriteMembers(json, printing, Contract.NoCurrency)), text => Contract.Read(text, Read));

    public static void WriteMembers(Utf8JsonWriter json, PrintingActual printing, Currency currency)
    {
        json.WriteNumber("goodCopies", printing.GoodCopies);
        json.WriteString("shopPaid", Amounts.AtLeastMinorDigits(printing.ShopPaid, currency));
        json.WriteString("taxReclaimed", Amounts.AtLeastMinorDigits(printing.TaxReclaimed, currency));
        json.WriteString("consumables", Amounts.AtLeastMinorDigits(printing.Consumables, currency));
        json.WriteString("fixedCosts", Amounts.AtLeastMinorDigits(printing.FixedCosts, currency));
        json.WriteString("hourlyRate", Amounts.AtLeastMinorDigits(printing.HourlyRate, currency));
        if (printing.Invoice.Count > 0)
        {
            json.WriteStartArray("invoice");
            foreach (var line in printing.Invoice)
            {
                json.WriteStartObject();
                json.WriteString("part", Parts.Of(line.Part));
                json.WriteString("amount", Amounts.AtLeastMinorDigits(line.Amount, currency));
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        json.WriteStartArray("steps");
        foreach (var step in printing.Steps)
        {
            json.WriteStartObject();
            json.WriteString("step", step.Step);
            json.WriteNumber("minutes", step.Minutes);
            json.WriteNumber("started", step.Started);
            json.WriteNumber("spoiled", step.Spoiled);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    public static PrintingActual? Read(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var printing = new PrintingActual(
            block.Count("goodCopies", JobRules.Copies, Need.Must) ?? 1,
            block.Number("shopPaid", JobRules.Amount) ?? 0m,
            block.Number("taxReclaimed", JobRules.Amount) ?? 0m,
            block.Number("consumables", JobRules.Amount) ?? 0m,
            block.Number("fixedCosts", JobRules.Amount) ?? 0m,
            block.Number("hourlyRate", JobRules.Amount) ?? 0m,
            block.List("steps", Need.May, StepRule, (item, place) => ReadStep(item, place, problems), JobRules.MostEntries))
        {
            Invoice = block.List("invoice", Need.May, InvoiceRule, (item, place) => ReadInvoice(item, place, problems)),
        };
        if (printing.Invoice.DistinctBy(line => line.Part).Count() < printing.Invoice.Count)
        {
            problems.Add(path.Member("invoice"), null, InvoiceRule);
        }

        block.Close();
        return printing;
    }

    private static InvoiceLine? ReadInvoice(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, InvoiceRule) is not { } block)
        {
            return null;
        }

        var line = new InvoiceLine(block.Choice("part", Parts, Need.Must) ?? default, block.Number("amount", JobRules.Amount, Need.Must) ?? 0m);
        block.Close();
        return line;
    }

    private static StepActual? ReadStep(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, StepRule) is not { } block)
        {
            return null;
        }

        var step = new StepActual(
            block.Text("step", Need.Must, JobRules.Id) ?? "",
            block.Number("minutes", JobRules.Time) ?? 0m,
            block.Count("started", JobRules.CopiesOrNone) ?? 0,
            block.Count("spoiled", JobRules.CopiesOrNone) ?? 0);
        if (step.Spoiled > step.Started)
        {
            problems.Add(path.Member("spoiled"), $"{step.Spoiled}", SpoiledRule);
        }

        block.Close();
        return step;
    }
}
