using Microsoft.AspNetCore.Components;
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
        Say(view.Sheet!.Estimate.Quantity, $"{format.Count(view.Sheet.Estimate.Quantity)} good copy", $"{format.Count(view.Sheet.Estimate.Quantity)} good copies");

    /// <summary>The sentence: the copies, and the work that they are.</summary>
    public static string Of(BinderyView view, PressFormat format) => Say(Whole(view, Copies(view, format), format));

    /// <summary>The same with its copies set apart, as a page has it.</summary>
    public static RenderFragment Set(BinderyView view, PressFormat format) => Put(Whole(view, Strong(Copies(view, format)), format));

    private static RenderFragment Strong(string words) => builder =>
    {
        builder.OpenElement(0, "strong");
        builder.AddContent(1, words);
        builder.CloseElement();
    };

    private static FormattableString Whole(BinderyView view, object copies, PressFormat format)
    {
        var (sheet, estimate) = (view.Sheet!, view.Sheet!.Estimate);
        if (view.Prepared!.BoundBy == BoundBy.Shop)
        {
            var (shop, left) = (Apart.Of(view.Prepared.Job.Shop.Name), Left(sheet.Steps.Count, format));
            return estimate.Quantity == 1 ? (FormattableString)$"{copies} comes bound from {shop}; {left}." : $"{copies} come bound from {shop}; {left}.";
        }

        var (overs, work) = (estimate.Overs, Work(view, format));
        return overs > 0 ? (FormattableString)$"{copies}, {format.Count(estimate.CopiesToStart)} started, so that {format.Count(overs)} may go wrong: {work}." : $"{copies}: {work}.";
    }

    private static string Left(int steps, PressFormat format) => steps == 0
        ? Say($"nothing is left to do at your table")
        : Say(steps, $"{format.Count(steps)} step is left to do at your table", $"{format.Count(steps)} steps are left to do at your table");

    private static string Work(BinderyView view, PressFormat format)
    {
        var (piles, steps, hours) = (view.Sheet!.Piles.Count, view.Sheet.Steps.Count, view.Sheet.Estimate.Totals.BenchHours);
        var work = Say(steps, $"{format.Count(steps)} step", $"{format.Count(steps)} steps");
        if (!view.Prepared!.ShopCollates)
        {
            work = $"{Say(piles, $"{format.Count(piles)} pile", $"{format.Count(piles)} piles")}, {work}";
        }

        var untimed = view.Sheet.Steps.Count(step => step.Minutes is null && step.Kind != WorkKind.Press);
        return hours == 0m ? work
            : untimed == 0 ? Say($"{work}, about {Time(hours * MinutesPerHour, format)} by your own rates")
            : Say(
                untimed,
                $"{work}, about {Time(hours * MinutesPerHour, format)} by your own rates without {format.Count(untimed)} step that has no time there",
                $"{work}, about {Time(hours * MinutesPerHour, format)} by your own rates without {format.Count(untimed)} steps that have no time there");
    }

    /// <summary>In what shape the work comes to the table; null where it comes finished, or the first sentence says so.</summary>
    public static string? Arrives(BinderyView view, PressFormat format)
    {
        var prepared = view.Prepared!;
        return prepared.BoundBy == BoundBy.Shop
            ? null
            : prepared.Delivers switch
            {
                Delivered.TrimmedCopies when !prepared.BoundAtHome => null,
                Delivered.UntrimmedCopies => Say($"Bound copies come from the shop, not yet trimmed."),
                Delivered.FlatSheets when view.Sheet!.Steps.Any(step => step.Kind == WorkKind.CutApart) => prepared.ShopCollates
                    ? Say($"Flat sheets come from the shop, laid together: each set is a copy.")
                    : Say($"Flat sheets come from the shop."),
                _ => prepared.ShopCollates ? string.Join(' ', [SetsOfPieces(view, format), .. LookThrough(prepared)]) : Pieces(view, format),
            };
    }

    private static string Pieces(BinderyView view, PressFormat format) =>
        Size(view) is { } size ? Say($"Cut pieces of {format.Size(size)} come from the shop.") : Say($"Cut pieces come from the shop.");

    private static string SetsOfPieces(BinderyView view, PressFormat format) => Size(view) is { } size
        ? Say($"Cut pieces of {format.Size(size)} come from the shop, laid together: each set is a copy.")
        : Say($"Cut pieces come from the shop, laid together: each set is a copy.");

    private static IEnumerable<string> LookThrough(PreparedJob prepared)
    {
        yield return Say($"Look through one set in ten before you begin: pieces follow each other as drawn.");
        if (prepared.Job.Edition.Binding == Binding.Perfect)
        {
            yield return Say($"Take the covers off; they wait until the spines are glued.");
        }
    }

    // Where all pieces are of one size: by it one sees whether the fences suit what has come.
    private static Size? Size(BinderyView view) => view.Sheet!.Piles.Select(pile => pile.Part.Piece).Distinct().ToList() is [var only] ? only : null;

    /// <summary>How many copies come to a step. Those on the table are known; what comes to a later step, less what usually goes wrong before it, is a guess.</summary>
    public static string Copies(BinderyView view, WorkStep step, PressFormat format)
    {
        var copies = Words.Copies(step.Copies, format.Count);
        return step.Copies < view.Sheet!.Steps[0].Copies ? Say($"about {copies}") : copies;
    }

    /// <summary>How many copies come to a step, what usually goes wrong, and how long it takes.</summary>
    public static string Of(BinderyView view, WorkStep step, PressFormat format) =>
        Rest(step, Copies(view, step, format), format) is { } whole ? Say(whole) : Copies(view, step, format);

    /// <summary>The same with its copies set apart, as a page has it.</summary>
    public static RenderFragment Set(BinderyView view, WorkStep step, PressFormat format)
    {
        var copies = Strong(Copies(view, step, format));
        return Rest(step, copies, format) is { } whole ? Put(whole) : copies;
    }

    // Null where nothing is to be said beside the copies.
    private static FormattableString? Rest(WorkStep step, object copies, PressFormat format) => (step.Spoilage > 0m, step.Minutes) switch
    {
        (true, { } minutes) => $"{copies}, {format.Percent(step.Spoilage)} usually go wrong, about {Time(minutes, format)}",
        (false, { } minutes) => $"{copies}, about {Time(minutes, format)}",
        _ when step.Kind == WorkKind.Press => null,
        _ => $"{copies}, no time on your bench",
    };

    /// <summary>A time in words: <c>40 minutes</c>, <c>2.5 hours</c>.</summary>
    public static string Time(decimal minutes, PressFormat format)
    {
        return minutes < MinutesPerHour
            ? Say(decimal.Round(minutes), $"{format.Number(minutes, 0)} minute", $"{format.Number(minutes, 0)} minutes")
            : Words.Hours(minutes / MinutesPerHour, format);
    }
}
