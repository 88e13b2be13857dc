using PressRun.Engine.Bench;
using PressRun.Engine.Costing;

namespace PressRun.Web.RunPlans;

/// <summary>
/// Tells from a job, without working it out, about how long one costing of it takes, in microseconds; rather more than less. The unit is what a part
/// costed on a sheet takes, which is a microsecond at most; the other figures are what was measured in that unit on 2026-11-29 (release build, two
/// cores, processor time), and stand in docs/benchmarks.md.
/// </summary>
public static class CostingEffort
{
    /// <summary>What a page that costs a job many times works out at most: some seconds of work.</summary>
    public const double MostOfPage = 10_000_000d;

    // A finishing operation, consumable, cost or bench step with 28 digits.
    private const double Entry = 0.1;

    // Of a price whose steps are all charged: looked through for each part on each sheet.
    private const double ChargedStep = 0.02;

    // Of the quantities that a shop sells: looked through from the least.
    private const double SoldQuantity = 0.004;

    // A sum of the binomial tail, for each copy of its standard deviation: about twenty terms.
    private const double SumOfTail = 0.1;

    // Assured overs of a distant quantity take one or two sums; where the confidence is next to never or always, the whole search.
    private const double SumsOfSearch = 2d;
    private const double SumsOfWholeSearch = 45d;
    private const double NextToNever = 1e-6;

    // Of a near one: as many updates of the tail as copies are started more, and a sum after so many of them; never more than the search takes.
    private const double Update = 0.005;
    private const double UpdatesOfSum = 256d;
    private const double MostUpdates = 512d;

    /// <summary>What a page says of a job beyond <see cref="MostOfPage"/>.</summary>
    public static string TooLong => Say($"This job takes too long to work out here. Fewer parts, sheet sizes or price steps make it shorter.");

    /// <summary>One costing, once the copies to start are known.</summary>
    public static double Of(Job job)
    {
        var shop = job.Shop;
        var charged = shop.Print.Where(price => price.Rule == StepRule.Incremental).Sum(price => price.Steps.Count)
            + shop.Paper.Where(price => price.Rule == StepRule.Incremental).Sum(price => price.Steps.Count);
        var entries = shop.Finishing.Count + job.Bench.Consumables.Count + job.Bench.Steps.Count + job.Edition.FixedCosts.Count + shop.Order.Discounts.Count;
        return (job.Edition.Parts.Count * (Math.Max(1, shop.Sheets.Count) + (ChargedStep * charged))) + (Entry * entries) + (SoldQuantity * shop.Quantities.Count);
    }

    /// <summary>One costing of a series of rising quantities, the copies to start included.</summary>
    /// <param name="job">The job.</param>
    /// <param name="apart">By how much each quantity is larger than the one before.</param>
    /// <param name="largest">The last.</param>
    public static double Of(Job job, double apart, double largest) => Of(job) + OversOf(job, apart, largest);

    /// <summary>The copies to start for a quantity that is so much larger than the one before.</summary>
    /// <param name="job">The job.</param>
    /// <param name="apart">By how much.</param>
    /// <param name="largest">The largest quantity.</param>
    public static double OversOf(Job job, double apart, double largest)
    {
        var overs = job.Bench.Overs;
        var survival = job.Bench.Steps.Aggregate(1d - (double)job.Shop.Spoilage, (product, step) => product * (1d - (double)step.Spoilage));
        if (overs.Mode != OversMode.Assured || survival >= 1d)
        {
            return 0d;
        }

        var sum = SumOfTail * Math.Sqrt(largest * (1d - survival));
        if ((double)overs.Confidence is < NextToNever or > 1d - NextToNever)
        {
            return SumsOfWholeSearch * sum;
        }

        var updates = apart / survival;
        return updates > MostUpdates ? SumsOfSearch * sum : updates * (Update + (sum / UpdatesOfSum));
    }
}
