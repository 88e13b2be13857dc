using PressRun.Engine.Costing;

namespace PressRun.Engine.Bench;

/// <summary>A run finished at the shop beside the same run finished at the press's own table.</summary>
/// <param name="AtShop">The run as the shop finishes it.</param>
/// <param name="AtBench">The run as the press does.</param>
/// <param name="EqualHourlyRate">
/// The price of an hour at which both cost the same: what the shop's way costs more without any labour, over the hours it saves. Below it one's own
/// table is the cheaper. Not rounded; null where the press's way takes no more hours, or costs more even if they are free.
/// </param>
public sealed record BenchAgainstShop(Estimate AtShop, Estimate AtBench, decimal? EqualHourlyRate)
{
    /// <summary>What the shop's way costs without the press's own hours.</summary>
    public decimal ShopWithoutHours => WithoutHours(AtShop.Totals);

    /// <summary>What the press's way costs without its own hours.</summary>
    public decimal BenchWithoutHours => WithoutHours(AtBench.Totals);

    /// <summary>Compares two ways of finishing one run.</summary>
    /// <param name="atShop">The job with what the shop does, and what is left for the bench.</param>
    /// <param name="atBench">The job with what the press does.</param>
    /// <param name="quantity">Good copies, 1 to 1,000,000.</param>
    /// <returns>The comparison, or what stands in the way of either job.</returns>
    public static Outcome<BenchAgainstShop> Compare(Job atShop, Job atBench, int quantity)
    {
        var shop = Estimated(atShop, quantity);
        var bench = Estimated(atBench, quantity);
        return shop.Succeeded && bench.Succeeded
            ? Outcome<BenchAgainstShop>.Of(new BenchAgainstShop(shop.Value, bench.Value, EqualRate(shop.Value.Totals, bench.Value.Totals)))
            : Outcome<BenchAgainstShop>.Refused([.. shop.Problems, .. bench.Problems]);
    }

    private static Outcome<Estimate> Estimated(Job job, int quantity)
    {
        var prepared = PreparedJob.Prepare(job);
        return prepared.Succeeded ? prepared.Value.Estimate(quantity) : Outcome<Estimate>.Refused(prepared.Problems);
    }

    private static decimal? EqualRate(CostTotals shop, CostTotals bench)
    {
        var hours = bench.BenchHours - shop.BenchHours;
        var dearer = WithoutHours(shop) - WithoutHours(bench);
        return hours > 0m && dearer >= 0m ? dearer / hours : null;
    }

    private static decimal WithoutHours(CostTotals totals) => totals.LandedCost - totals.BenchLabour;
}
