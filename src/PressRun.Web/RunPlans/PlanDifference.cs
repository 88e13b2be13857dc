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
    /// <summary>Compares two plans, each at the quantity it was worked out for. At different quantities hours and cash are those of one copy.</summary>
    public static IReadOnlyList<PlanDifference> Of((PlanCosting Costing, RunAnswer Answer) first, (PlanCosting Costing, RunAnswer Answer) second, PressFormat format)
    {
        var ((a, answerA), (b, answerB)) = (first, second);
        var (one, two) = (answerA.Estimate, answerB.Estimate);
        var (jobA, jobB) = (a.Worked!.Prepared.Job, b.Worked!.Prepared.Job);
        var sameRun = one.Quantity == two.Quantity;
        return
        [
            Text("Shop", jobA.Shop.Name, jobB.Shop.Name),
            Text("Prices from", format.Day(jobA.Shop.ValidFrom), format.Day(jobB.Shop.ValidFrom)),
            Text("Papers", Papers(a), Papers(b)),
            Text("Bound", Bound(a), Bound(b)),
            Number("Copies", one.Quantity, two.Quantity, format.Count, "more", "fewer"),
            sameRun
                ? Number("Landed cost", one.Totals.LandedCost, two.Totals.LandedCost, format.Money, "dearer", "cheaper")
                : new PlanDifference("Landed cost", format.Money(one.Totals.LandedCost), format.Money(two.Totals.LandedCost), "of another number of copies"),
            // As shown: who takes one figure from the other finds the difference that is said.
            Number(
                "A copy costs",
                format.Currency.Round(one.Totals.UnitCost(one.Quantity)),
                format.Currency.Round(two.Totals.UnitCost(two.Quantity)),
                format.Money,
                "dearer",
                "cheaper"),
            sameRun
                ? Number("Of it cash", one.Totals.CashOut, two.Totals.CashOut, format.Money, "more", "less")
                : Number(
                    "Of a copy cash",
                    format.Currency.Round(one.Totals.CashPerCopy(one.Quantity)),
                    format.Currency.Round(two.Totals.CashPerCopy(two.Quantity)),
                    format.Money,
                    "more",
                    "less"),
            sameRun
                ? Number("Your hours", one.Totals.BenchHours, two.Totals.BenchHours, hours => format.Number(hours, 1), "more", "fewer")
                : Number(
                    "Your minutes a copy",
                    one.Totals.BenchMinutesPerCopy(one.Quantity),
                    two.Totals.BenchMinutesPerCopy(two.Quantity),
                    minutes => format.Number(minutes, 1),
                    "more",
                    "fewer"),
            Measure("A copy weighs", one.Copy.Mass.Grams, two.Copy.Mass.Grams, grams => format.Mass(Mass.FromGrams(grams)).ToString(), "heavier", "lighter"),
            Measure("It is thick", one.Copy.Thickness.Millimetres, two.Copy.Thickness.Millimetres, mm => format.Thickness(Length.FromMillimetres(mm)).ToString(), "thicker", "thinner"),
            Text("Paid for by copy", PaidFor(a, one, format), PaidFor(b, two, format)),
        ];
    }

    private static PlanDifference Text(string what, string first, string second) => new(what, first, second, first == second ? null : "another");

    private static PlanDifference Number(string what, decimal first, decimal second, Func<decimal, string> format, string more, string less)
    {
        var (shownFirst, shownSecond) = (format(first), format(second));
        return new PlanDifference(
            what, shownFirst, shownSecond, shownFirst == shownSecond ? null : $"{format(Math.Abs(second - first))} {(second > first ? more : less)}");
    }

    private static PlanDifference Measure(string what, decimal first, decimal second, Func<decimal, string> format, string more, string less) =>
        Number(what, first, second, format, more, less);

    private static string Papers(PlanCosting costing)
    {
        var prepared = costing.Worked!.Prepared;
        var names = string.Join(", ", prepared.OrderedPieces.Select(part => part.Stock.Name).Distinct());
        return prepared.Job.SecondHalf is { } half ? $"{names}; half the run each for the {prepared.Job.Edition.Parts[half.Part].Name}" : names;
    }

    private static string Bound(PlanCosting costing) => costing.Worked!.Prepared.BoundBy switch
    {
        BoundBy.Bench => "at your own table",
        BoundBy.Shop => "by the shop",
        _ => "nobody yet",
    };

    private static string PaidFor(PlanCosting costing, Estimate estimate, PressFormat format) =>
        BreakEvenWords.Of(estimate, costing.Worked!.Prepared.Job, "", format).Short;
}
