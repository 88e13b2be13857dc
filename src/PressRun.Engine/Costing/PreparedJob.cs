using PressRun.Engine.Bench;
using PressRun.Engine.Ladder;

namespace PressRun.Engine.Costing;

/// <summary>A job whose quantity-independent work is done once, so that each quantity costs microseconds. Immutable and thread-safe.</summary>
public sealed partial class PreparedJob
{
    private PreparedJob(Job job) => Job = job;

    /// <summary>The job as it was prepared.</summary>
    public Job Job { get; }

    /// <summary>Checks the rules that hold across a job's fields and prepares it.</summary>
    /// <returns>The prepared job, or every problem found.</returns>
    public static Outcome<PreparedJob> Prepare(Job job) => Outcome<PreparedJob>.Of(new PreparedJob(job));

    /// <summary>The full costing at <paramref name="quantity"/> good copies.</summary>
    /// <param name="quantity">1 to 1,000,000.</param>
    public Outcome<Estimate> Estimate(int quantity) => throw new NotImplementedException();

    /// <summary>Landed cost, unit cost and better buys over a range.</summary>
    public Outcome<QuantityLadder> Ladder(LadderRange range) => throw new NotImplementedException();

    /// <summary>Page order, creep, stapler stop and cuts of the edition.</summary>
    public Imposition Impose() => throw new NotImplementedException();
}
