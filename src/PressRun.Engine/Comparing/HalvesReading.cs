using PressRun.Engine.Costing;

namespace PressRun.Engine.Comparing;

/// <summary>Half of the run on each of two stocks, beside the whole run on either and beside two orders.</summary>
/// <param name="Halves">The two halves as one order.</param>
/// <param name="AllOnFirst">The whole run on the first stock.</param>
/// <param name="AllOnSecond">The whole run on the second stock.</param>
/// <param name="TwoOrders">Landed cost of the halves as two orders; null where one of them has no copies or cannot be ordered.</param>
public sealed record HalvesReading(HalvesRow Halves, ComparedRow AllOnFirst, ComparedRow AllOnSecond, decimal? TwoOrders)
{
    /// <summary>What the halves cost more than the whole run on the first stock; negative where they cost less.</summary>
    public decimal MoreThanFirst => Halves.Estimate.Totals.LandedCost - AllOnFirst.Estimate.Totals.LandedCost;

    /// <summary>What the halves cost more than the whole run on the second stock; negative where they cost less.</summary>
    public decimal MoreThanSecond => Halves.Estimate.Totals.LandedCost - AllOnSecond.Estimate.Totals.LandedCost;

    /// <summary>What one order saves against two; null where there are not two.</summary>
    public decimal? SavedByOneOrder => TwoOrders - Halves.Estimate.Totals.LandedCost;

    /// <summary>Reads halves of a run. A weighed copy is left out of account in all of it, since it was on one paper only.</summary>
    /// <param name="asked">The job with both stocks and the shop's prices for them.</param>
    /// <param name="choice">The part and its two stocks.</param>
    /// <param name="quantity">Good copies of the whole run, 1 to 1,000,000.</param>
    /// <returns>The reading, or why it cannot be ordered so.</returns>
    public static Outcome<HalvesReading> Of(Job asked, HalvesChoice choice, int quantity)
    {
        var job = asked with { Edition = asked.Edition with { Weighed = null }, SecondHalf = null };
        var compared = StockComparer.Compare(
            job, new ComparisonRequest([new StockChoice(choice.Part, [choice.FirstStockId, choice.SecondStockId])], [choice], [quantity]));
        if (!compared.Succeeded)
        {
            return Outcome<HalvesReading>.Refused(compared.Problems);
        }

        if (compared.Value is not { Rows: [var first, var second], Halves: [var halves] })
        {
            return Outcome<HalvesReading>.Refused([.. compared.Value.Refused.SelectMany(refused => refused.Problems).Distinct()]);
        }

        // Of an odd number the first half has one more, as in the one order.
        var one = Landed(job.WithStocks((choice.Part, choice.FirstStockId)), quantity - (quantity / 2));
        var other = Landed(job.WithStocks((choice.Part, choice.SecondStockId)), quantity / 2);
        return Outcome<HalvesReading>.Of(new HalvesReading(halves, first, second, one + other));
    }

    private static decimal? Landed(Job job, int quantity) =>
        quantity > 0 && PreparedJob.Prepare(job) is { Succeeded: true, Value: var ready } && ready.LandedCost(quantity, out var landed) is null ? landed : null;
}
