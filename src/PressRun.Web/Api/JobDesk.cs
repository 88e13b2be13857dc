using System.Text.Json;
using System.Threading.RateLimiting;
using Microsoft.Extensions.Options;
using PressRun.Engine.Costing;
using PressRun.JobFile.Results;

namespace PressRun.Web.Api;

/// <summary>What came of a job that was handed in.</summary>
internal enum DeskReply
{
    /// <summary>There is an answer or a refusal.</summary>
    Done,

    /// <summary>Too many jobs wait already.</summary>
    Busy,

    /// <summary>It took longer than is allowed.</summary>
    TookTooLong,
}

/// <summary>Works out jobs a few at a time and not for ever.</summary>
internal sealed class JobDesk : IDisposable
{
    private readonly ConcurrencyLimiter limiter;
    private readonly TimeProvider time;
    private readonly TimeSpan longest;

    public JobDesk(IOptions<ApiLimits> limits, TimeProvider time)
    {
        this.time = time;
        longest = TimeSpan.FromSeconds(limits.Value.LongestSeconds);
        limiter = new ConcurrencyLimiter(new ConcurrencyLimiterOptions
        {
            PermitLimit = limits.Value.MostAtOnce,
            QueueLimit = limits.Value.MostWaiting,
            QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
        });
    }

    /// <summary>Answers a question about a job file.</summary>
    /// <exception cref="OperationCanceledException">The caller went away.</exception>
    public async Task<(DeskReply Reply, Outcome<JobAnswer>? Outcome)> Ask(JobQuestion question, JsonElement jobFile, CancellationToken gone)
    {
        using var late = new CancellationTokenSource(longest, time);
        using var ended = CancellationTokenSource.CreateLinkedTokenSource(late.Token, gone);
        try
        {
            using var turn = await limiter.AcquireAsync(1, ended.Token);
            return turn.IsAcquired ? (DeskReply.Done, JobAnswer.To(question, jobFile, ended.Token)) : (DeskReply.Busy, null);
        }
        catch (OperationCanceledException) when (!gone.IsCancellationRequested)
        {
            return (DeskReply.TookTooLong, null);
        }
    }

    public void Dispose() => limiter.Dispose();
}
