using System.Globalization;
using System.Text;
using PressRun.Engine.Comparing;
using PressRun.Engine.Costing;

namespace PressRun.Cli;

/// <summary>Papers side by side, laid out for reading.</summary>
internal static class ComparisonTable
{
    public static void Write(StringBuilder text, Job job, StockComparison comparison)
    {
        text.AppendLine(CultureInfo.InvariantCulture, $"{job.Edition.Title}, amounts in {job.Currency.Code}").AppendLine();
        var table = new TextTable(">copies", "papers", ">landed cost", ">a copy", ">g", ">mm", ">creep mm", "in hand", "note");
        foreach (var row in comparison.Rows)
        {
            Add(row.Estimate, string.Join(", ", row.StockIds), row.Estimate.Copy, row.InHand, Notes(row.Marks));
        }

        foreach (var row in comparison.Halves)
        {
            Add(row.Estimate, $"half on {row.Choice.FirstStockId}", row.Estimate.Copy, row.InHand, string.Empty);
            Add(row.Estimate, $"half on {row.Choice.SecondStockId}", row.OtherCopy, row.OtherInHand, string.Empty);
        }

        table.Write(text);
        foreach (var refused in comparison.Refused)
        {
            text.AppendLine().AppendLine(CultureInfo.InvariantCulture, $"Not on {string.Join(", ", refused.StockIds)}: {string.Join("; ", refused.Problems)}");
        }

        void Add(Estimate estimate, string papers, in CopyEstimate copy, IReadOnlyList<InHand> inHand, string note) => table.Add(
            AnswerTable.Whole(estimate.Quantity),
            papers,
            job.Currency.Format(estimate.Totals.LandedCost),
            AnswerTable.PerCopy(estimate.UnitCost),
            AnswerTable.Short(copy.Mass.Grams),
            AnswerTable.Short(copy.Thickness.Millimetres),
            AnswerTable.Short(copy.Creep.Millimetres),
            string.Join(", ", inHand.Select(channel => $"{channel.ChannelId} {AnswerTable.PerCopy(channel.Cost)}")),
            note);
    }

    private static string Notes(ComparisonMarks marks)
    {
        var notes = new List<string>();
        Add(ComparisonMarks.Cheapest, "cheapest");
        Add(ComparisonMarks.Lightest, "lightest");
        Add(ComparisonMarks.HeaviestInStep, "heaviest in its postage step");
        Add(ComparisonMarks.FirstOverStep, "first over a postage step");
        return string.Join(", ", notes);

        void Add(ComparisonMarks mark, string words)
        {
            if (marks.HasFlag(mark))
            {
                notes.Add(words);
            }
        }
    }
}
