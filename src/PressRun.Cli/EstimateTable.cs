using System.Globalization;
using System.Text;
using PressRun.Engine.Costing;
using PressRun.JobFile;
using PressRun.JobFile.Results;

namespace PressRun.Cli;

/// <summary>A costing laid out for reading.</summary>
internal static class EstimateTable
{
    /// <summary>Writes the costing: the answer first, then lines, parts, post, channels and what to look at.</summary>
    public static void Write(StringBuilder text, Job job, Estimate estimate)
    {
        var totals = estimate.Totals;
        text.AppendLine(CultureInfo.InvariantCulture, $"{job.Edition.Title}: {estimate.Quantity} copies cost {Money(totals.LandedCost)} {job.Currency.Code}, that is {AnswerTable.PerCopy(estimate.UnitCost)} each.");
        text.AppendLine(CultureInfo.InvariantCulture, $"{estimate.CopiesToStart} copies are started; {Money(totals.CashOut)} is paid in cash, {AnswerTable.Short(totals.BenchHours)} hours are worked.");
        text.AppendLine();
        WriteLines(text, job, estimate);
        WriteParts(text, estimate);
        text.AppendLine(CultureInfo.InvariantCulture, $"A copy weighs {AnswerTable.Short(estimate.Copy.Mass.Grams)} g and is {AnswerTable.Short(estimate.Copy.Thickness.Millimetres)} mm thick, with {AnswerTable.Short(estimate.Copy.Creep.Millimetres)} mm of creep.");
        if (estimate.SecondHalf is { } half)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"That is a copy of the first half, {half.FirstCopies} copies on {job.Edition.Parts[half.Half.Part].StockId}. The other {half.Copies} are on {half.Half.StockId}, weigh {AnswerTable.Short(half.Copy.Mass.Grams)} g and are {AnswerTable.Short(half.Copy.Thickness.Millimetres)} mm thick.");
        }

        var cartons = estimate.Freight.Cartons switch
        {
            0 => string.Empty,
            1 => " in one carton",
            var count => string.Create(CultureInfo.InvariantCulture, $" in {count} cartons"),
        };
        text.AppendLine(CultureInfo.InvariantCulture, $"The shop sends {AnswerTable.Short(estimate.Freight.Mass.Kilograms)} kg{cartons}.");
        WriteChannels(text, job, estimate);
        foreach (var warning in estimate.Warnings)
        {
            text.AppendLine("! " + warning.Message);
        }

        string Money(decimal amount) => job.Currency.Format(amount);
    }

    private static void WriteLines(StringBuilder text, Job job, Estimate estimate)
    {
        var table = new TextTable("line", ">quantity", ">each", ">amount " + job.Currency.Code);
        foreach (var line in estimate.Lines)
        {
            table.Add(
                LineText.Label(line, job),
                line.Quantity.ToString("0.####", CultureInfo.InvariantCulture),
                line.Each.ToString("0.00##########", CultureInfo.InvariantCulture),
                (line.AtMinimum ? "at least " : string.Empty) + job.Currency.Format(line.Amount));
        }

        table.Write(text);
        text.AppendLine();
    }

    private static void WriteParts(StringBuilder text, Estimate estimate)
    {
        var table = new TextTable("part", ">pieces a copy", ">piece mm", "sheet", ">out of a sheet", ">sheets", "layout");
        foreach (var part in estimate.Parts)
        {
            var sheets = part.OnSheets;
            table.Add(
                part.Name,
                AnswerTable.Whole(part.PiecesPerCopy),
                $"{AnswerTable.Short(part.Piece.Width.Millimetres)} x {AnswerTable.Short(part.Piece.Height.Millimetres)}",
                sheets?.SheetId ?? "-",
                sheets is null ? "-" : AnswerTable.Whole(sheets.PiecesPerSheet),
                sheets is null ? "-" : AnswerTable.Whole(sheets.Sheets),
                sheets is null ? "-" : JobWords.Layouts.Of(sheets.Layout));
        }

        table.Write(text);
        text.AppendLine();
    }

    private static void WriteChannels(StringBuilder text, Job job, Estimate estimate)
    {
        if (estimate.Channels.Count == 0)
        {
            return;
        }

        var table = new TextTable("channel", ">a copy keeps", ">breaks even at", "post", ">postage");
        foreach (var channel in estimate.Channels)
        {
            var postage = estimate.Postage.FirstOrDefault(choice => choice.ChannelId == channel.Id);
            table.Add(
                channel.Id,
                AnswerTable.PerCopy(channel.NetPerCopy),
                channel.BreakEvenPrice is { } price ? job.Currency.Format(price) : "-",
                postage?.ServiceId ?? "-",
                postage?.Price is { } post ? job.Currency.Format(post) : "-");
        }

        text.AppendLine();
        table.Write(text);
        text.AppendLine();
        text.AppendLine(estimate.BreakEven.Copies is { } copies
            ? string.Create(CultureInfo.InvariantCulture, $"The run pays for itself at {copies} copies{(estimate.BreakEven.WithinRun ? string.Empty : ", more than are for sale")}.")
            : "No number of copies pays for the run.");
    }
}
