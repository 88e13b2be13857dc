using BenchmarkDotNet.Attributes;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Ladder;
using PressRun.Engine.Tests.Support;

namespace PressRun.Benchmarks;

/// <summary>The example job: three parts, two inks, price steps, discount, delivery by mass, bench work, post and three channels.</summary>
[InProcess]
[MemoryDiagnoser]
[MinColumn]
[MaxIterationCount(20)]
public class CostingBenchmarks
{
    private readonly Job job = ExampleJob.Create();
    private readonly PreparedJob prepared = PreparedJob.Prepare(ExampleJob.Create()).Value;
    private readonly PreparedJob assured = PreparedJob.Prepare(Assured(ExampleJob.Create())).Value;

    [Benchmark(Description = "prepare a job")]
    public PreparedJob Prepare() => PreparedJob.Prepare(job).Value;

    [Benchmark(Description = "landed cost at one quantity, prepared")]
    public decimal LandedCost()
    {
        prepared.LandedCost(150, out var cost);
        return cost;
    }

    [Benchmark(Description = "full estimate at one quantity, prepared")]
    public Estimate Estimate() => prepared.Estimate(150).Value;

    [Benchmark(Description = "ladder of 5,000 quantities with better buys")]
    public QuantityLadder Ladder() => prepared.Ladder(new LadderRange(1, 5000, 1)).Value;

    [Benchmark(Description = "ladder of 5,000 quantities, assured overs")]
    public QuantityLadder AssuredLadder() => assured.Ladder(new LadderRange(1, 5000, 1)).Value;

    [Benchmark(Description = "ladder of 1,000,000 quantities, assured overs")]
    public QuantityLadder LongestAssuredLadder() => assured.Ladder(new LadderRange(1, Job.MostCopies, 1000)).Value;

    [Benchmark(Description = "steps ahead among 1,000 quantities")]
    public Outlook LookAhead() => prepared.LookAhead(150, 1150).Value;

    private static Job Assured(Job job) => job with { Bench = job.Bench with { Overs = new Overs(OversMode.Assured, Overs.UsualConfidence) } };
}
