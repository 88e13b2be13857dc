using PressRun.Engine.Costing;

namespace PressRun.Engine.Reprint;

/// <summary>A quantity seen under two assumptions.</summary>
/// <param name="Quantity">Copies printed.</param>
/// <param name="UnderFirst">What it promises if the first is right.</param>
/// <param name="UnderSecond">What it promises if the second is right.</param>
public sealed record AssumedQuantity(int Quantity, ReprintLook UnderFirst, ReprintLook UnderSecond);

/// <summary>Two assumptions about demand side by side: what is best under each, and what that keeps if the other one is right.</summary>
/// <param name="FirstBest">The best quantity under the first, under both.</param>
/// <param name="SecondBest">The best quantity under the second, under both.</param>
/// <param name="FirstDemand">Copies asked for on average under the first.</param>
/// <param name="SecondDemand">Copies asked for on average under the second.</param>
public sealed record TwoAssumptions(AssumedQuantity FirstBest, AssumedQuantity SecondBest, double FirstDemand, double SecondDemand)
{
    /// <summary>Sets two assumptions beside each other.</summary>
    /// <param name="first">The decision under one.</param>
    /// <param name="second">The decision about the same job under the other.</param>
    /// <param name="costs">Quantities looked at, by their costs.</param>
    /// <returns>Both, or the problem where the shop cannot take a quantity.</returns>
    public static Outcome<TwoAssumptions> Of(ReprintPlanner first, ReprintPlanner second, IReadOnlyList<RunCost> costs)
    {
        var one = Seen(first.Best(costs).Quantity);
        var other = Seen(second.Best(costs).Quantity);
        return one.Succeeded && other.Succeeded
            ? Outcome<TwoAssumptions>.Of(new TwoAssumptions(one.Value, other.Value, first.ExpectedDemand, second.ExpectedDemand))
            : Outcome<TwoAssumptions>.Refused([.. one.Problems, .. other.Problems]);

        Outcome<AssumedQuantity> Seen(int quantity)
        {
            var (here, there) = (first.LookAt(quantity), second.LookAt(quantity));
            return here.Succeeded && there.Succeeded
                ? Outcome<AssumedQuantity>.Of(new AssumedQuantity(quantity, here.Value, there.Value))
                : Outcome<AssumedQuantity>.Refused([.. here.Problems, .. there.Problems]);
        }
    }
}
