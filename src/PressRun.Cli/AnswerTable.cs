using System.Globalization;
using System.Text;
using PressRun.Engine.Bench;
using PressRun.JobFile;
using PressRun.JobFile.Results;

namespace PressRun.Cli;

/// <summary>Answers laid out for reading in a terminal.</summary>
internal static class AnswerTable
{
    /// <summary>The answer as lines of text.</summary>
    public static string Of(JobAnswer answer)
    {
        var text = new StringBuilder();
        switch (answer)
        {
            case JobAnswer.OfEstimate estimate:
                EstimateTable.Write(text, estimate.Job, estimate.Estimate);
                break;
            case JobAnswer.OfLadder ladder:
                Write(text, ladder);
                break;
            case JobAnswer.OfImposition imposition:
                Write(text, imposition);
                break;
            case JobAnswer.OfComparison comparison:
                ComparisonTable.Write(text, comparison.Job, comparison.Comparison);
                break;
            case JobAnswer.OfReprint reprint:
                ReprintTable.Write(text, reprint.Job, reprint.Plan);
                break;
        }

        return text.ToString();
    }

    /// <summary>A measure with at most two decimals.</summary>
    public static string Short(decimal measure) => measure.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>A figure per copy with four decimals, or a dash where there is none.</summary>
    public static string PerCopy(decimal? amount) =>
        amount is { } value ? decimal.Round(value, 4, MidpointRounding.AwayFromZero).ToString("F4", CultureInfo.InvariantCulture) : "-";

    /// <summary>A whole number.</summary>
    public static string Whole(long number) => number.ToString(CultureInfo.InvariantCulture);

    private static void Write(StringBuilder text, JobAnswer.OfLadder answer)
    {
        var (job, ladder) = answer;
        var better = ladder.BetterBuys.ToDictionary(buy => buy.From);
        var table = new TextTable(">copies", ">landed cost", ">a copy", "better buy");
        foreach (var rung in ladder.Rungs)
        {
            var note = better.TryGetValue(rung.Quantity, out var buy) ? $"{buy.To} copies cost {job.Currency.Format(buy.Saves)} less" : string.Empty;
            table.Add(Whole(rung.Quantity), job.Currency.Format(rung.LandedCost), PerCopy(rung.UnitCost), note);
        }

        text.AppendLine(CultureInfo.InvariantCulture, $"{job.Edition.Title}, amounts in {job.Currency.Code}").AppendLine();
        table.Write(text);
        text.AppendLine().AppendLine(CultureInfo.InvariantCulture, $"A copy costs least at {ladder.LowestUnitCostQuantity} copies.");
    }

    private static void Write(StringBuilder text, JobAnswer.OfImposition answer)
    {
        var imposition = answer.Imposition;
        var table = new TextTable(">sheet", "part", "outer", "inner", ">push-out mm", ">shift mm");
        foreach (var piece in imposition.Pieces)
        {
            table.Add(
                Whole(piece.Number), piece.PartName, Pages(piece.Outer), Pages(piece.Inner), Short(piece.PushOut.Millimetres), Short(piece.Shift.Millimetres));
        }

        table.Write(text);
        text.AppendLine();
        if (imposition.StaplerStop is { } stop)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"Stapler stop at {Short(stop.Millimetres)} mm, staples {Staples()} mm from the head.");
        }

        foreach (var cut in imposition.Cuts)
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"Cut the {Name(cut.Edge)} with the fence at {Short(cut.Fence.Millimetres)} mm.");
        }

        text.AppendLine("Keep fingers clear of the blade and of the stapler, and cut a spare copy first.");

        string Staples() => string.Join(" and ", imposition.StaplesFromHead.Select(staple => Short(staple.Millimetres)));
    }

    private static string Name(Edge edge) => edge == Edge.ForeEdge ? "fore-edge" : JobWords.Edges.Of(edge);

    private static string Pages(IReadOnlyList<int> pages) => pages.Count == 0 ? "blank" : string.Join(" | ", pages);
}
