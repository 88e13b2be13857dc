using System.Text.Json;
using System.Threading.RateLimiting;
using Microsoft.Extensions.Options;
using PressRun.Engine.Costing;
using PressRun.JobFile;
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

/// <summary>Works out jobs a few at a time and not for ever. Short jobs have turns of their own, so that none waits behind a long ladder.</summary>
internal sealed class JobDesk(IOptions<ApiLimits> limits, TimeProvider time) : IDisposable
{
    private readonly ConcurrencyLimiter shortOnes = Turns(limits.Value.MostAtOnce, limits.Value.MostWaiting);
    private readonly ConcurrencyLimiter longOnes = Turns(limits.Value.MostLongAtOnce, limits.Value.MostWaiting);
    private readonly TimeSpan longest = TimeSpan.FromSeconds(limits.Value.LongestSeconds);

    /// <summary>Answers a question about a job file.</summary>
    /// <exception cref="OperationCanceledException">The caller went away.</exception>
    public async Task<(DeskReply Reply, Outcome<JobAnswer>? Outcome)> Ask(JobQuestion question, JsonElement jobFile, CancellationToken gone)
    {
        using var late = new CancellationTokenSource(longest, time);
        using var ended = CancellationTokenSource.CreateLinkedTokenSource(late.Token, gone);
        try
        {
            PreparedJob job;
            using (var turn = await shortOnes.AcquireAsync(1, ended.Token))
            {
                if (!turn.IsAcquired)
                {
                    return (DeskReply.Busy, null);
                }

                var prepared = JobReader.Prepare(jobFile);
                if (!prepared.Succeeded)
                {
                    return (DeskReply.Done, Outcome<JobAnswer>.Refused(prepared.Problems));
                }

                job = prepared.Value;
                if (JobEffort.IsShort(question, job.Job))
                {
                    return (DeskReply.Done, JobAnswer.To(question, job, ended.Token));
                }
            }

            using var longTurn = await longOnes.AcquireAsync(1, ended.Token);
            return longTurn.IsAcquired ? (DeskReply.Done, await WorkOut(question, job, ended.Token)) : (DeskReply.Busy, null);
        }
        catch (OperationCanceledException) when (!gone.IsCancellationRequested)
        {
            return (DeskReply.TookTooLong, null);
        }
    }

    public void Dispose()
    {
        shortOnes.Dispose();
        longOnes.Dispose();
    }

    // On a thread of its own: those of the pool are few, and the server answers everybody with them.
    private static Task<Outcome<JobAnswer>> WorkOut(JobQuestion question, PreparedJob job, CancellationToken ended) =>
        Task.Factory.StartNew(() => JobAnswer.To(question, job, ended), ended, TaskCreationOptions.LongRunning, TaskScheduler.Default);

    private static ConcurrencyLimiter Turns(int most, int mostWaiting) => new(new ConcurrencyLimiterOptions
    {
        PermitLimit = most,
        QueueLimit = mostWaiting,
        QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
    });
}
