using PressRun.Engine.Comparing;
using PressRun.Engine.Costing;
using PressRun.Engine.Reprint;
using PressRun.JobFile.Results;
using PressRun.Web.RunPlans;

namespace PressRun.Web.Api;

/// <summary>
/// Tells from a job, without working it out, whether it is a matter of milliseconds. The figures are measured as those of one costing are, and stand
/// with them in docs/benchmarks.md.
/// </summary>
public static class JobEffort
{
    // A short job is over within a few hundredths of a second.
    private const double MostOfShort = 30_000d;

    // A combination of papers is prepared anew and costed with all its lines, and its post is looked up for every channel.
    private const double CostingsOfCombination = 20d;
    private const double PostageStep = 0.05;

    // A count of the copies that may be asked for: its probability and what comes of it.
    private const double DemandCount = 0.2;

    /// <summary>True where the answer is worth waiting for among short jobs.</summary>
    public static bool IsShort(JobQuestion question, Job job) => Of(question, job) <= MostOfShort;

    /// <summary>About what an answer takes, in microseconds; rather more than less.</summary>
    public static double Of(JobQuestion question, Job job) => question switch
    {
        JobQuestion.Ladder when job.Ladder is { } range => (range.Last - range.From + 1d) * CostingEffort.Of(job, 1, range.Last),
        JobQuestion.Reprint when job.Reprint is { } plan =>
            ((((double)plan.To - plan.From) / Math.Max(1, plan.Step)) + 1d) * CostingEffort.Of(job, Math.Max(1, plan.Step), plan.To)
            + (DemandCount * CountsOf(plan.Demand)),
        JobQuestion.Compare when job.Compare is { } request =>
            (Combinations(request) + (2d * request.Halves.Count))
            * (Posting(job) + (request.Quantities.Count * ((CostingsOfCombination * CostingEffort.Of(job)) + CostingEffort.OversOf(job, Job.MostCopies, Job.MostCopies)))),
        _ => CostingEffort.Of(job),
    };

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
