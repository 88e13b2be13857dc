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

/// <summary>Works out jobs a few at a time and not for ever. Short jobs have turns of their own, so that none waits behind a long ladder; what was taken
/// for short and is not goes among the long ones.</summary>
internal sealed class JobDesk(IOptions<ApiLimits> limits, TimeProvider time) : IDisposable
{
    // Many times what the longest of those takes that are taken for short.
    private static readonly TimeSpan LongestOfShort = TimeSpan.FromMilliseconds(250);

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

                (var answer, job) = await OnItsOwn(() => AmongShortOnes(question, jobFile, ended.Token), ended.Token);
                if (answer is not null)
                {
                    return (DeskReply.Done, answer);
                }
            }

            using var longTurn = await longOnes.AcquireAsync(1, ended.Token);
            return longTurn.IsAcquired ? (DeskReply.Done, await OnItsOwn(() => JobAnswer.To(question, job, ended.Token), ended.Token)) : (DeskReply.Busy, null);
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

    // No answer where the job is not short, or turns out not to be: what it took by then is lost, and it begins anew in its turn among the long ones.
    private (Outcome<JobAnswer>? Answer, PreparedJob Job) AmongShortOnes(JobQuestion question, JsonElement jobFile, CancellationToken ended)
    {
        var prepared = JobReader.Prepare(jobFile);
        if (!prepared.Succeeded)
        {
            return (Outcome<JobAnswer>.Refused(prepared.Problems), null!);
        }

        var job = prepared.Value;
        if (!JobEffort.IsShort(question, job.Job))
        {
            return (null, job);
        }

        using var over = new CancellationTokenSource(LongestOfShort, time);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(over.Token, ended);
        try
        {
            return (JobAnswer.To(question, job, stop.Token), job);
        }
        catch (OperationCanceledException) when (!ended.IsCancellationRequested)
        {
            return (null, job);
        }
    }

    // On a thread of its own: those of the pool are few, and the server answers everybody with them.
    private static Task<T> OnItsOwn<T>(Func<T> work, CancellationToken ended) =>
        Task.Factory.StartNew(work, ended, TaskCreationOptions.LongRunning, TaskScheduler.Default);

    private static ConcurrencyLimiter Turns(int most, int mostWaiting) => new(new ConcurrencyLimiterOptions
    {
        PermitLimit = most,
        QueueLimit = mostWaiting,
        QueueProcessingOrder = QueueProcessingOrder.OldestFirst,
    });
}
