using BenchmarkDotNet.Attributes;
using PressRun.Engine.Costing;
using PressRun.Engine.Reprint;
using PressRun.Engine.Tests.Support;

namespace PressRun.Benchmarks;

/// <summary>Expected profit at every quantity from 0 to 5,000 over a demand that reaches past 5,000, by running sums and by a loop in a loop.</summary>
[InProcess]
[MemoryDiagnoser]
[MinColumn]
[MaxIterationCount(20)]
public class ReprintBenchmarks
{
    private const int Most = 5000;
    private const decimal Net = 5.20m;
    private const decimal Salvage = 0.50m;

    private static readonly Demand Demand = new NegativeBinomialDemand(2000m, 12m, 0);

    private readonly PreparedJob job = PreparedJob.Prepare(ExampleJob.Create()).Value;

    [Benchmark(Description = "reprint plan, 5,001 quantities, exact")]
    public ReprintPlan Plan() =>
        ReprintPlanner.Prepare(job, new ReprintRequest(12, Demand, Net, Salvage, 0m, 0m, null, 0, Most, 1)).Value.Plan().Value;

    [Benchmark(Description = "the same by a plain double loop", Baseline = true)]
    public int DoubleLoop()
    {
        var demand = DemandDistribution.Of(Demand).Value;
        var (best, bestProfit) = (0, double.MinValue);
        for (var quantity = 0; quantity <= Most; quantity++)
        {
            var cost = 0m;
            if (quantity > 0)
            {
                job.LandedCost(quantity, out cost);
            }

            var forSale = quantity == 0 ? 12 : Math.Max(0, 12 + quantity - job.Job.FreeCopies);
            var profit = -(double)cost;
            for (var copies = 0; copies <= demand.Largest; copies++)
            {
                var sold = Math.Min(copies, forSale);
                profit += demand.Probability(copies) * (((double)Net * sold) + ((double)Salvage * (forSale - sold)));
            }

            (best, bestProfit) = profit > bestProfit ? (quantity, profit) : (best, bestProfit);
        }

        return best;
    }
}
