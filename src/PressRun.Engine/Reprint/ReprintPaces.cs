using PressRun.Engine.Costing;

namespace PressRun.Engine.Reprint;

/// <summary>What would be best at another pace, and what a number of one's own would keep then.</summary>
/// <param name="Pace">Factor on what is asked for.</param>
/// <param name="ExpectedDemand">Copies asked for on average.</param>
/// <param name="Best">The best quantity then.</param>
/// <param name="Own">One's own number then.</param>
/// <param name="OwnIsPaidFor">True where the cash pays for one's own number.</param>
public readonly record struct PaceRow(decimal Pace, double ExpectedDemand, ReprintPoint Best, ReprintPoint Own, bool OwnIsPaidFor)
{
    /// <summary>What one's own number keeps less than the best that the cash pays for; 0 or more where it is among the quantities looked at and paid for.</summary>
    public decimal Short => Best.ExpectedProfit - Own.ExpectedProfit;

    /// <summary>True where one's own number is paid for and keeps nearly as much: short by no more than <see cref="ReprintPaces.Near"/> of the dearer run's cost.</summary>
    public bool IsNearlyBest => OwnIsPaidFor && Short <= ReprintPaces.Near * Math.Max(Best.LandedCost, Own.LandedCost);
}

/// <summary>
/// What would have to be true for another quantity to be right: the decision taken again with the demand multiplied (a sensitivity analysis; Hillier and
/// Lieberman, Introduction to Operations Research, chapter on decision analysis).
/// </summary>
/// <param name="Rows">At each of <see cref="Shown"/>; a pace at which too many copies would be asked for to be reckoned with is left out.</param>
/// <param name="NearlyFrom">The lowest pace at which one's own number is nearly best; null where it is at none.</param>
/// <param name="NearlyTo">The highest of the same run of paces.</param>
public sealed record ReprintPaces(IReadOnlyList<PaceRow> Rows, decimal? NearlyFrom, decimal? NearlyTo)
{
    /// <summary>A number is nearly best where it keeps less than the best by no more than this part of the run's cost (common practice).</summary>
    public const decimal Near = 0.02m;

    /// <summary>The slowest pace tried.</summary>
    public const decimal Slowest = 0.25m;

    /// <summary>The quickest pace tried.</summary>
    public const decimal Quickest = 3m;

    private const decimal Stride = 0.05m;

    /// <summary>The paces of the table.</summary>
    public static IReadOnlyList<decimal> Shown { get; } = [0.5m, 0.75m, 1m, 1.25m, 1.5m, 2m];

    /// <summary>Takes the decision again at every pace.</summary>
    /// <param name="planner">The decision.</param>
    /// <param name="costs">Its costs, far enough for the quickest pace: no quantity beyond them is found best.</param>
    /// <param name="own">One's own number, 0 to 1,000,000.</param>
    /// <returns>The paces, or the problem where the shop cannot take one's own number.</returns>
    public static Outcome<ReprintPaces> Of(ReprintPlanner planner, IReadOnlyList<RunCost> costs, int own)
    {
        var there = planner.LookAt(own);
        if (!there.Succeeded)
        {
            return Outcome<ReprintPaces>.Refused(there.Problems);
        }

        var point = there.Value.Point;
        var ownCost = new RunCost(own, point.LandedCost, point.CashOut);
        var paidFor = planner.IsPaidFor(point.CashOut);
        var tried = new List<PaceRow>();
        for (var pace = Slowest; pace <= Quickest; pace += Stride)
        {
            if (planner.AtPace(pace) is { Succeeded: true } paced)
            {
                tried.Add(Row(pace, paced.Value));
            }
        }

        var (from, to) = Nearly(tried);
        return Outcome<ReprintPaces>.Of(new ReprintPaces([.. tried.Where(row => Shown.Contains(row.Pace))], from, to));

        PaceRow Row(decimal pace, ReprintPlanner paced)
        {
            var best = paced.Best(costs);
            return new PaceRow(pace, paced.ExpectedDemand, best, paced.Point(ownCost), paidFor);
        }
    }

    // The longest run of neighbours; of equals the slower.
    private static (decimal? From, decimal? To) Nearly(List<PaceRow> tried)
    {
        var (bestStart, bestLength) = (0, 0);
        for (var start = 0; start < tried.Count; start++)
        {
            var length = tried.Skip(start).TakeWhile(row => row.IsNearlyBest).Count();
            if (length > bestLength)
            {
                (bestStart, bestLength) = (start, length);
            }

            start += length;
        }

        return bestLength == 0 ? (null, null) : (tried[bestStart].Pace, tried[bestStart + bestLength - 1].Pace);
    }
}
