using PressRun.Engine.Costing;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Bindery;

/// <summary>The first sentence of a bench sheet.</summary>
public static class BenchSentence
{
    private const decimal MinutesPerHour = 60m;

    /// <summary>How many copies there will be.</summary>
    public static string Copies(BinderyView view, PressFormat format) =>
        Words.Many(format.Count(view.Sheet!.Estimate.Quantity), view.Sheet.Estimate.Quantity, "good copy", "good copies");

    /// <summary>The rest of the sentence: the work that they are.</summary>
    public static string Rest(BinderyView view, PressFormat format)
    {
        var (sheet, estimate) = (view.Sheet!, view.Sheet!.Estimate);
        var overs = estimate.CopiesToStart - estimate.Quantity;
        var started = overs > 0 ? $", {format.Count(estimate.CopiesToStart)} started, for what goes wrong" : "";
        return view.Prepared!.BoundBy == BoundBy.Shop
            ? $" come bound from {Apart.Of(view.Prepared.Job.Shop.Name)}; {(sheet.Steps.Count == 0 ? "nothing is left to do at your table" : $"{Steps(sheet.Steps.Count, format)} left to do at your table")}."
            : $"{started}: {Words.Many(format.Count(sheet.Piles.Count), sheet.Piles.Count, "pile", "piles")}, {Words.Many(format.Count(sheet.Steps.Count), sheet.Steps.Count, "step", "steps")}{Hours(estimate, format)}.";
    }

    /// <summary>A time in words: <c>40 minutes</c>, <c>2.5 hours</c>.</summary>
    public static string Time(decimal minutes, PressFormat format) => minutes < MinutesPerHour
        ? Words.Many(format.Number(minutes, 0), (long)decimal.Round(minutes), "minute", "minutes")
        : Hours(format.Number(minutes / MinutesPerHour, 1), format);

    private static string Hours(string hours, PressFormat format) => $"{hours} {(hours == format.Number(1m, 1) ? "hour" : "hours")}";

    private static string Steps(int count, PressFormat format) => Words.Many(format.Count(count), count, "step is", "steps are");

    private static string Hours(Estimate estimate, PressFormat format) =>
        estimate.Totals.BenchHours > 0m ? $", about {Time(estimate.Totals.BenchHours * MinutesPerHour, format)} by your own rates" : "";
}
