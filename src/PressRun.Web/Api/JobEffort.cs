using PressRun.Engine.Bench;
using PressRun.Engine.Comparing;
using PressRun.Engine.Costing;
using PressRun.Engine.Reprint;
using PressRun.JobFile.Results;

namespace PressRun.Web.Api;

/// <summary>
/// Tells from a job, without working it out, whether it is a matter of milliseconds. The unit is what a part costed on a sheet takes, which is a
/// microsecond at most; the other figures are what was measured in that unit on 2026-11-29 (release build, two cores, processor time), and stand in
/// docs/benchmarks.md.
/// </summary>
public static class JobEffort
{
    // A short job is over within a few hundredths of a second.
    private const double MostOfShort = 30_000d;

    // A finishing operation, consumable, cost or bench step with 28 digits.
    private const double Entry = 0.1;

    // Of a price whose steps are all charged: looked through for each part on each sheet.
    private const double ChargedStep = 0.02;

    // Of the quantities that a shop sells: looked through from the least.
    private const double SoldQuantity = 0.004;

    // A combination of papers is prepared anew and costed with all its lines, and its post is looked up for every channel.
    private const double CostingsOfCombination = 20d;
    private const double PostageStep = 0.05;

    // A count of the copies that may be asked for: its probability and what comes of it.
    private const double DemandCount = 0.2;

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

    /// <summary>True where the answer is worth waiting for among short jobs.</summary>
    public static bool IsShort(JobQuestion question, Job job) => Of(question, job) <= MostOfShort;

    /// <summary>About what an answer takes, in microseconds; rather more than less.</summary>
    public static double Of(JobQuestion question, Job job) => question switch
    {
        JobQuestion.Ladder when job.Ladder is { } range => (range.Last - range.From + 1d) * (Costing(job) + OversOf(job, 1, range.Last)),
        JobQuestion.Reprint when job.Reprint is { } plan =>
            ((((double)plan.To - plan.From) / Math.Max(1, plan.Step)) + 1d) * (Costing(job) + OversOf(job, Math.Max(1, plan.Step), plan.To))
            + (DemandCount * CountsOf(plan.Demand)),
        JobQuestion.Compare when job.Compare is { } request =>
            (Combinations(request) + (2d * request.Halves.Count))
            * (Posting(job) + (request.Quantities.Count * ((CostingsOfCombination * Costing(job)) + OversOf(job, Job.MostCopies, Job.MostCopies)))),
        _ => Costing(job),
    };

    // One costing, once the copies to start are known.
    private static double Costing(Job job)
    {
        var shop = job.Shop;
        var charged = shop.Print.Where(price => price.Rule == StepRule.Incremental).Sum(price => price.Steps.Count)
            + shop.Paper.Where(price => price.Rule == StepRule.Incremental).Sum(price => price.Steps.Count);
        var entries = shop.Finishing.Count + job.Bench.Consumables.Count + job.Bench.Steps.Count + job.Edition.FixedCosts.Count + shop.Order.Discounts.Count;
        return (job.Edition.Parts.Count * (Math.Max(1, shop.Sheets.Count) + (ChargedStep * charged))) + (Entry * entries) + (SoldQuantity * shop.Quantities.Count);
    }

    // The copies to start for a quantity that is so much larger than the one before.
    private static double OversOf(Job job, double apart, double largest)
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

    // The largest count that is likely at all: it bounds the sums over a demand. Tails of wide ones fall by the share 1 / (1 + shape / mean).
    private static double CountsOf(Demand demand)
    {
        const double inTail = 30d;
        var largest = demand switch
        {
            TableDemand table => table.Probabilities.Count,
            PoissonDemand poisson => (double)poisson.Mean,
            NegativeBinomialDemand wide => Wide((double)wide.Mean, (double)wide.Shape),
            HistoryDemand history => OfHistory(history),
            OpinionDemand opinion => (double)opinion.High,
            _ => DemandDistribution.MostCopies,
        };
        return Math.Min(largest, DemandDistribution.MostCopies) + demand.Committed;

        static double Wide(double mean, double shape) => mean * (1d + (inTail / shape));

        static double OfHistory(HistoryDemand history)
        {
            var shape = (double)history.PriorShape + history.Periods.Sum(sold => (double)sold);
            return Wide((double)history.Uplift * (double)history.HorizonPeriods * shape / ((double)history.PriorRate + history.Periods.Count), shape);
        }
    }

    private static double Posting(Job job) => PostageStep * job.Channels.Count * job.Postage.Sum(service => service.Steps.Count);

    // Combinations past the engine's own limit are refused before any work, so they need not be counted further.
    private static double Combinations(ComparisonRequest request) =>
        request.Choices.Aggregate(1d, (combinations, choice) => Math.Min(combinations * choice.StockIds.Count, ComparisonRequest.MostRows));
}
