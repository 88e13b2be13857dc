using System.Buffers;
using System.Text.Json;
using PressRun.Engine.Bench;
using PressRun.Engine.Comparing;
using PressRun.Engine.Costing;
using PressRun.Engine.Ladder;
using PressRun.Engine.Reprint;
using PressRun.JobFile.Writing;

namespace PressRun.JobFile.Results;

/// <summary>What can be asked of a job file.</summary>
public enum JobQuestion
{
    /// <summary>The full costing at the job's quantity.</summary>
    Estimate,

    /// <summary>Landed and unit cost over the job's ladder of quantities.</summary>
    Ladder,

    /// <summary>Page order, creep, stapler stop and cuts.</summary>
    Impose,

    /// <summary>The edition on other papers, side by side.</summary>
    Compare,

    /// <summary>How many to print, from what may be asked for.</summary>
    Reprint,
}

/// <summary>The answer to a question about a job: the same wherever it is asked.</summary>
public abstract record JobAnswer
{
    private JobAnswer()
    {
    }

    /// <summary>The costing of a job.</summary>
    public sealed record OfEstimate(Job Job, Estimate Estimate) : JobAnswer
    {
        /// <inheritdoc/>
        public override void Write(Utf8JsonWriter json) => EstimateWriter.Write(json, Estimate, Job);
    }

    /// <summary>The ladder of a job.</summary>
    public sealed record OfLadder(Job Job, QuantityLadder Ladder) : JobAnswer
    {
        /// <inheritdoc/>
        public override void Write(Utf8JsonWriter json) => LadderWriter.Write(json, Ladder, Job.Currency);
    }

    /// <summary>The imposition of a job's edition.</summary>
    public sealed record OfImposition(Job Job, Imposition Imposition) : JobAnswer
    {
        /// <inheritdoc/>
        public override void Write(Utf8JsonWriter json) => ImpositionWriter.Write(json, Imposition);
    }

    /// <summary>Papers of a job's edition side by side.</summary>
    public sealed record OfComparison(Job Job, StockComparison Comparison) : JobAnswer
    {
        /// <inheritdoc/>
        public override void Write(Utf8JsonWriter json) => ComparisonWriter.Write(json, Comparison, Job);
    }

    /// <summary>A reprint of a job's edition.</summary>
    public sealed record OfReprint(Job Job, ReprintPlan Plan) : JobAnswer
    {
        /// <inheritdoc/>
        public override void Write(Utf8JsonWriter json) => ReprintWriter.Write(json, Plan, Job.Currency);
    }

    /// <summary>Answers a question about a job in an open document.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="jobFile">The document's root.</param>
    /// <param name="cancellation">Ends long work early.</param>
    /// <returns>The answer, or every problem that stands in its way.</returns>
    /// <exception cref="OperationCanceledException">The work was ended early.</exception>
    public static Outcome<JobAnswer> To(JobQuestion question, JsonElement jobFile, CancellationToken cancellation = default)
    {
        var prepared = JobReader.Prepare(jobFile);
        return prepared.Succeeded ? To(question, prepared.Value, cancellation) : Outcome<JobAnswer>.Refused(prepared.Problems);
    }

    /// <summary>Answers a question about a prepared job.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="prepared">The job.</param>
    /// <param name="cancellation">Ends long work early.</param>
    /// <exception cref="OperationCanceledException">The work was ended early.</exception>
    public static Outcome<JobAnswer> To(JobQuestion question, PreparedJob prepared, CancellationToken cancellation = default)
    {
        var job = prepared.Job;
        return question switch
        {
            JobQuestion.Estimate => Answer(prepared.Estimate(job.Quantity), estimate => new OfEstimate(job, estimate)),
            JobQuestion.Ladder when job.Ladder is { } range => Answer(prepared.Ladder(range, cancellation), ladder => new OfLadder(job, ladder)),
            JobQuestion.Ladder => Missing("ladder", "{ \"from\", \"to\", \"step\" }"),
            JobQuestion.Impose => Outcome<JobAnswer>.Of(new OfImposition(job, prepared.Impose())),
            JobQuestion.Compare when job.Compare is { } request =>
                Answer(StockComparer.Compare(job, request, cancellation), comparison => new OfComparison(job, comparison)),
            JobQuestion.Compare => Missing("compare", "{ \"stocks\", \"halves\", \"quantities\" }"),
            JobQuestion.Reprint when job.Reprint is { } request => Reprint(prepared, request, cancellation),
            JobQuestion.Reprint => Missing("reprint", "{ \"onHand\", \"demand\", \"from\", \"to\", \"step\" }"),
            _ => throw new ArgumentOutOfRangeException(nameof(question), question, "There is no such question."),
        };
    }

    /// <summary>Writes the answer as one JSON object.</summary>
    public abstract void Write(Utf8JsonWriter json);

    /// <summary>The answer as JSON bytes (UTF-8).</summary>
    /// <param name="indented">True for people, false for machines.</param>
    public byte[] ToJson(bool indented)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(bytes, JsonWriting.Options(indented)))
        {
            Write(json);
        }

        return bytes.WrittenSpan.ToArray();
    }

    private static Outcome<JobAnswer> Missing(string block, string form) => Outcome<JobAnswer>.Refused(
        new Problem("$." + block, null, $"This is required for {block} and is missing. Write it as {form}."));

    private static Outcome<JobAnswer> Reprint(PreparedJob prepared, ReprintRequest request, CancellationToken cancellation)
    {
        var planner = ReprintPlanner.Prepare(prepared, request);
        return planner.Succeeded
            ? Answer(planner.Value.Plan(cancellation), plan => new OfReprint(prepared.Job, plan))
            : Outcome<JobAnswer>.Refused(planner.Problems);
    }

    private static Outcome<JobAnswer> Answer<T>(Outcome<T> outcome, Func<T, JobAnswer> answer)
        where T : class =>
        outcome.Succeeded ? Outcome<JobAnswer>.Of(answer(outcome.Value)) : Outcome<JobAnswer>.Refused(outcome.Problems);
}
