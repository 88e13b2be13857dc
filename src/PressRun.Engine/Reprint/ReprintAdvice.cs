using PressRun.Engine.Costing;
using PressRun.Engine.Ladder;

namespace PressRun.Engine.Reprint;

/// <summary>What the next copies past a quantity bring on average against what they cost.</summary>
/// <param name="To">The quantity with them.</param>
/// <param name="More">How many they are: one, or as many as reach the best place past a leap of the cost.</param>
/// <param name="Brings">More kept on average before the run is paid for; not rounded, negative where more is lost.</param>
/// <param name="Costs">More that the run costs; negative where it costs less.</param>
/// <param name="Asked">Of the fifty futures, those in which the last of them is asked for too.</param>
public readonly record struct NextCopies(int To, int More, decimal Brings, decimal Costs, int Asked);

/// <summary>What more cash than there is would do.</summary>
/// <param name="More">Cash beyond what there is, to pay out for the best quantity.</param>
/// <param name="Gains">More kept on average; not rounded.</param>
public readonly record struct MoreCash(decimal More, decimal Gains);

/// <summary>How many to print and why, with a number of one's own beside it.</summary>
/// <param name="Answer">The best quantity that the cash pays for.</param>
/// <param name="Best">The best quantity, were cash no limit; the same where it is none.</param>
/// <param name="Own">One's own number.</param>
/// <param name="Next">Why the best is no higher; null where no higher quantity is looked at.</param>
/// <param name="WithMoreCash">What more cash would do; null where the best is paid for.</param>
/// <param name="OwnShort">What one's own number keeps less than the answer; negative where it keeps more, which only more cash than there is can do.</param>
/// <param name="OwnBeyondCash">What of one's own number the cash does not pay for; null where it pays for all of it.</param>
public sealed record ReprintAdvice(
    ReprintLook Answer, ReprintLook Best, ReprintLook Own, NextCopies? Next, MoreCash? WithMoreCash, decimal OwnShort, decimal? OwnBeyondCash)
{
    /// <summary>Says what a plan comes to.</summary>
    /// <param name="planner">Of the plan.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="own">One's own number, 0 to 1,000,000.</param>
    /// <returns>The advice, or the problem where the shop cannot take one's own number.</returns>
    public static Outcome<ReprintAdvice> Of(ReprintPlanner planner, ReprintPlan plan, int own)
    {
        var (best, answer, mine) = (planner.LookAt(plan.BestQuantity), planner.LookAt(plan.WithinCash.Quantity), planner.LookAt(own));
        if (!best.Succeeded || !answer.Succeeded || !mine.Succeeded)
        {
            return Outcome<ReprintAdvice>.Refused([.. best.Problems, .. answer.Problems, .. mine.Problems]);
        }

        var (point, number) = (answer.Value.Point, mine.Value.Point);
        return Outcome<ReprintAdvice>.Of(new ReprintAdvice(
            answer.Value,
            best.Value,
            mine.Value,
            NextAfter(planner, plan),
            planner.Cash is { } cash && point.Quantity != plan.BestQuantity
                ? new MoreCash(best.Value.Point.CashOut - cash, plan.ExpectedProfit - point.ExpectedProfit)
                : null,
            point.ExpectedProfit - number.ExpectedProfit,
            number.CashOut > planner.Cash ? number.CashOut - planner.Cash : null));
    }

    // Marginal analysis (Hillier and Lieberman, Introduction to Operations Research, the newsvendor's problem): the next copy, unless it stands at the foot of a
    // leap. What follows a leap is held against the best place past it, for nobody would print just the first copy there.
    private static NextCopies? NextAfter(ReprintPlanner planner, ReprintPlan plan)
    {
        var curve = plan.Curve;
        var at = curve.Index().First(item => item.Item.Quantity == plan.BestQuantity).Index;
        if (at + 1 >= curve.Count)
        {
            return null;
        }

        var leaps = LadderJump.Of(new CostCurve(0, [.. curve.Select(point => point.LandedCost)])).Any(jump => jump.At == at + 1 && jump.Change > 0m);
        var (best, next) = (curve[at], leaps ? ReprintPlanner.Best(curve.Skip(at + 1)) : curve[at + 1]);
        var costs = next.LandedCost - best.LandedCost;
        var forSale = planner.ForSale(next.Quantity);
        return new NextCopies(next.Quantity, next.Quantity - best.Quantity, next.ExpectedProfit - best.ExpectedProfit + costs, costs, plan.Dots.Count(copies => copies >= forSale));
    }
}
