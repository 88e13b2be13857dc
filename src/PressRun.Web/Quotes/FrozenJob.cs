using PressRun.Data.Quotes;
using PressRun.Engine.Costing;
using PressRun.Engine.Ladder;
using PressRun.JobFile;
using PressRun.JobFile.Results;
using PressRun.Web.RunPlans;

namespace PressRun.Web.Quotes;

/// <summary>The frozen job of a quote, read and worked out to be shown. Immutable, and the same for everybody.</summary>
/// <param name="Job">The job; null where this version cannot read it.</param>
/// <param name="Worked">The job worked out; null where this version would reckon it otherwise, or it took too long, so that no other quantity can be tried.</param>
public sealed record FrozenJob(Job? Job, WorkedPlan? Worked)
{
    // What a quantity, a step and a byte of the job file come to in memory, roughly.
    private const long BytesOfQuantity = 32;
    private const long BytesOfStep = 128;
    private const long BytesOfByte = 16;

    /// <summary>Reads a quote's job and works it out around the quantity that was quoted.</summary>
    /// <exception cref="OperationCanceledException">The work was ended early.</exception>
    public static FrozenJob Of(QuoteRecord quote, CancellationToken cancellation = default) =>
        Read(quote) is { Job: { } job } read ? read with { Worked = WorkedOut(quote, job, cancellation) } : new FrozenJob(null, null);

    /// <summary>Reads a quote's job alone, which takes no time to speak of.</summary>
    public static FrozenJob Read(QuoteRecord quote) => new(JobReader.Read(quote.Job) is { Succeeded: true } read ? read.Value : null, null);

    /// <summary>About how many bytes of memory it takes.</summary>
    public long BytesFor(QuoteRecord quote) => (quote.Job.Length * BytesOfByte)
        + (Worked is { Curve: var curve } ? (BytesOfQuantity * (curve.To - curve.From + 1)) + (BytesOfStep * (Worked.Steps.Count + Worked.Jumps.Count + Worked.AllBands.Count)) : 0);

    private static WorkedPlan? WorkedOut(QuoteRecord quote, Job job, CancellationToken cancellation)
    {
        if (PreparedJob.Prepare(job) is not { Succeeded: true } prepared
            || JobAnswer.To(JobQuestion.Estimate, prepared.Value, cancellation) is not { Succeeded: true } answer
            || !answer.Value.ToJson(indented: true).AsSpan().SequenceEqual(quote.Result))
        {
            return null;
        }

        // A job that names no quantities beside its own was quoted for that one alone.
        var range = ShownRange.Of(prepared.Value, quote.Quantity, job.Ladder ?? new LadderRange(quote.Quantity, quote.Quantity, 1), cancellation);
        return WorkedPlan.Of(prepared.Value, range, cancellation) is { Succeeded: true } worked ? worked.Value : null;
    }
}
