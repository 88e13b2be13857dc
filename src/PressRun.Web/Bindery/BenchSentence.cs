using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
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
        var started = overs > 0 ? $", {format.Count(estimate.CopiesToStart)} started, so that {format.Count(overs)} may go wrong" : "";
        return view.Prepared!.BoundBy == BoundBy.Shop
            ? $" come bound from {Apart.Of(view.Prepared.Job.Shop.Name)}; {(sheet.Steps.Count == 0 ? "nothing is left to do at your table" : $"{Steps(sheet.Steps.Count, format)} left to do at your table")}."
            : $"{started}: {(view.Prepared.ShopCollates ? "" : $"{Words.Many(format.Count(sheet.Piles.Count), sheet.Piles.Count, "pile", "piles")}, ")}{Words.Many(format.Count(sheet.Steps.Count), sheet.Steps.Count, "step", "steps")}{Hours(estimate, format)}.";
    }

    /// <summary>In what shape the work comes to the table; null where it comes finished, or the first sentence says so.</summary>
    public static string? Arrives(BinderyView view, PressFormat format)
    {
        var prepared = view.Prepared!;
        if (prepared.BoundBy == BoundBy.Shop)
        {
            return null;
        }

        var sets = prepared.ShopCollates ? ", laid together: each set is a copy" : "";
        return prepared.Delivers switch
        {
            Delivered.TrimmedCopies when !prepared.BoundAtHome => null,
            Delivered.UntrimmedCopies => "Bound copies come from the shop, not yet trimmed.",
            Delivered.FlatSheets when view.Sheet!.Steps.Any(step => step.Kind == WorkKind.CutApart) => $"Flat sheets come from the shop{sets}.",
            _ => $"Cut pieces{Size(view, format)} come from the shop{sets}.{(prepared.ShopCollates ? Sets(prepared) : "")}",
        };
    }

    private static string Sets(PreparedJob prepared) =>
        $" Look through one set in ten before you begin: pieces follow each other as drawn.{(prepared.Job.Edition.Binding == Binding.Perfect ? " Take the covers off; they wait until the spines are glued." : "")}";

    // Where all pieces are of one size: by it one sees whether the fences suit what has come.
    private static string Size(BinderyView view, PressFormat format) =>
        view.Sheet!.Piles.Select(pile => pile.Part.Piece).Distinct().ToList() is [var only] ? $" of {format.Size(only)}" : "";

    /// <summary>How many copies come to a step. Those on the table are known; what comes to a later step, less what usually goes wrong before it, is a guess.</summary>
    public static string Copies(BinderyView view, WorkStep step, PressFormat format) =>
        $"{(step.Copies < view.Sheet!.Steps[0].Copies ? "about " : "")}{Words.Many(format.Count(step.Copies), step.Copies, "copy", "copies")}";

    /// <summary>The rest of that line: what usually goes wrong, and how long it takes.</summary>
    public static string Usually(WorkStep step, PressFormat format) =>
        (step.Spoilage > 0m ? $", {format.Percent(step.Spoilage)} usually go wrong" : "") + (step.Minutes is { } minutes ? $", about {Time(minutes, format)}" : "");

    /// <summary>A time in words: <c>40 minutes</c>, <c>2.5 hours</c>.</summary>
    public static string Time(decimal minutes, PressFormat format) => minutes < MinutesPerHour
        ? Words.Many(format.Number(minutes, 0), (long)decimal.Round(minutes), "minute", "minutes")
        : Hours(format.Number(minutes / MinutesPerHour, 1), format);

    private static string Hours(string hours, PressFormat format) => $"{hours} {(hours == format.Number(1m, 1) ? "hour" : "hours")}";

    private static string Steps(int count, PressFormat format) => Words.Many(format.Count(count), count, "step is", "steps are");

    private static string Hours(Estimate estimate, PressFormat format) =>
        estimate.Totals.BenchHours > 0m ? $", about {Time(estimate.Totals.BenchHours * MinutesPerHour, format)} by your own rates" : "";
}
