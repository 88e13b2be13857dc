using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.RunPlans;

/// <summary>A line of two plans side by side.</summary>
/// <param name="What">What is compared.</param>
/// <param name="First">The plan that is open.</param>
/// <param name="Second">The plan beside it.</param>
/// <param name="Says">How the second differs; null where it does not.</param>
public sealed record PlanDifference(string What, string First, string Second, string? Says)
{
    /// <summary>True of the line that says what a copy costs.</summary>
    public bool OfACopy { get; private init; }

    // How much the second is above or below the first, in words.
    private sealed record Compared(Func<string, string> More, Func<string, string> Less);

    private static Compared MoreOrFewer => new(by => Say($"{by} more"), by => Say($"{by} fewer"));

    private static Compared MoreOrLess => new(by => Say($"{by} more"), by => Say($"{by} less"));

    private static Compared LaterOrEarlier => new(by => Say("a copy of a run by which it is paid for", $"{by} later"), by => Say("a copy of a run by which it is paid for", $"{by} earlier"));

    private static Compared DearerOrCheaper => new(by => Say($"{by} dearer"), by => Say($"{by} cheaper"));

    /// <summary>Compares two plans, each at the quantity it was worked out for. At different quantities hours and cash are those of one copy.</summary>
    public static IReadOnlyList<PlanDifference> Of((PlanCosting Costing, RunAnswer Answer) first, (PlanCosting Costing, RunAnswer Answer) second, PressFormat format)
    {
        var ((a, answerA), (b, answerB)) = (first, second);
        var (one, two) = (answerA.Estimate, answerB.Estimate);
        var (jobA, jobB) = (a.Worked!.Prepared.Job, b.Worked!.Prepared.Job);
        var sameRun = one.Quantity == two.Quantity;
        return
        [
            Text(Say($"Shop"), jobA.Shop.Name, jobB.Shop.Name),
            Text(Say($"Prices from"), format.Day(jobA.Shop.ValidFrom), format.Day(jobB.Shop.ValidFrom)),
            Text(Say($"Papers"), Papers(a), Papers(b)),
            Text(Say($"Bound"), Bound(a), Bound(b)),
            Number(Say($"Copies"), one.Quantity, two.Quantity, format.Count, MoreOrFewer, copies => copies),
            sameRun
                ? Number(Say($"Landed cost"), one.Totals.LandedCost, two.Totals.LandedCost, format.Money, DearerOrCheaper, format.Currency.Round)
                : new PlanDifference(Say($"Landed cost"), format.Money(one.Totals.LandedCost), format.Money(two.Totals.LandedCost), Say($"of another number of copies")),
            Number(Say($"A copy costs"), one.UnitCost, two.UnitCost, format.Money, DearerOrCheaper, format.Currency.Round) with { OfACopy = true },
            sameRun
                ? Number(Say($"Of it cash"), one.Totals.CashOut, two.Totals.CashOut, format.Money, MoreOrLess, format.Currency.Round)
                : Number(Say($"Of a copy cash"), one.CashPerCopy, two.CashPerCopy, format.Money, MoreOrLess, format.Currency.Round),
            sameRun
                ? Number(Say($"Your hours"), one.Totals.BenchHours, two.Totals.BenchHours, hours => format.Number(hours, 1), MoreOrFewer, ToTheTenth)
                : Number(
                    Say($"Your minutes a copy"),
                    one.BenchMinutesPerCopy,
                    two.BenchMinutesPerCopy,
                    minutes => format.Number(minutes, 1),
                    MoreOrFewer,
                    ToTheTenth),
            OfHalves(Say($"A copy weighs"), first.Costing, second.Costing, (one, two), copy => copy.Mass.Grams, grams => format.Mass(Mass.FromGrams(grams)).ToString(), new Compared(by => Say($"{by} heavier"), by => Say($"{by} lighter")), grams => format.AsShown(Mass.FromGrams(grams)).Grams),
            OfHalves(
                Say($"It is thick"), first.Costing, second.Costing, (one, two), copy => copy.Thickness.Millimetres, mm => format.Thickness(Length.FromMillimetres(mm)).ToString(), new Compared(by => Say($"{by} thicker"), by => Say($"{by} thinner")), mm => format.AsShown(Length.FromMillimetres(mm)).Millimetres),
            one.BreakEven.Copies is { } paidOne && two.BreakEven.Copies is { } paidTwo
                ? Number(Say($"Paid for by copy"), paidOne, paidTwo, format.Count, LaterOrEarlier, copies => copies)
                : Text(Say($"Paid for by copy"), PaidFor(a, one, format), PaidFor(b, two, format)),
        ];
    }

    private static PlanDifference Text(string what, string first, string second) => new(what, first, second, first == second ? null : Say("a shop, a day or a paper that is not the same", $"another"));

    private static decimal ToTheTenth(decimal number) => decimal.Round(number, 1, MidpointRounding.AwayFromZero);

    // The difference is that of the figures as they are shown: who takes one from the other finds it.
    private static PlanDifference Number(string what, decimal first, decimal second, Func<decimal, string> format, Compared words, Func<decimal, decimal> asShown)
    {
        var (shownFirst, shownSecond) = (format(first), format(second));
        return new PlanDifference(
            what, shownFirst, shownSecond, shownFirst == shownSecond ? null : (second > first ? words.More : words.Less)(format(Math.Abs(asShown(second) - asShown(first)))));
    }

    // Where the halves of a run are two kinds of copies each has a line of its own.
    private static PlanDifference OfHalves(
        string what, PlanCosting a, PlanCosting b, (Estimate One, Estimate Two) estimates, Func<CopyEstimate, decimal> of, Func<decimal, string> format, Compared words, Func<decimal, decimal> asShown)
    {
        var (one, two) = (Kinds(estimates.One, of), Kinds(estimates.Two, of));
        if (one.Count == 1 && two.Count == 1)
        {
            return Number(what, one[0], two[0], format, words, asShown);
        }

        var (shownOne, shownTwo) = (Lines(a, one, format), Lines(b, two, format));
        return new PlanDifference(what, shownOne, shownTwo, shownOne == shownTwo ? null : Say($"not alike in its halves"));
    }

    private static IReadOnlyList<decimal> Kinds(Estimate estimate, Func<CopyEstimate, decimal> of) =>
        estimate.SecondHalf is { } half ? [of(estimate.Copy), of(half.Copy)] : [of(estimate.Copy)];

    private static string Lines(PlanCosting costing, IReadOnlyList<decimal> kinds, Func<decimal, string> format) =>
        kinds.Count == 1 ? format(kinds[0]) : string.Join('\n', kinds.Zip(HalvesWords.Papers(costing.Worked!.Prepared.Job), (kind, paper) => Say($"{format(kind)} on {paper}")));

    private static string Papers(PlanCosting costing)
    {
        var prepared = costing.Worked!.Prepared;
        var names = string.Join(", ", prepared.OrderedPieces.Select(part => part.Stock.Name).Distinct());
        return prepared.Job.SecondHalf is { } half ? Say($"{names}; half the run each for the {prepared.Job.Edition.Parts[half.Part].Name}") : names;
    }

    private static string Bound(PlanCosting costing) => costing.Worked!.Prepared.BoundBy switch
    {
        BoundBy.Bench => Say($"at your own table"),
        BoundBy.Shop => Say($"by the shop"),
        _ => Say($"nobody yet"),
    };

    private static string PaidFor(PlanCosting costing, Estimate estimate, PressFormat format) =>
        BreakEvenWords.Of(estimate, costing.Worked!.Prepared.Job, "", format).Short;
}
