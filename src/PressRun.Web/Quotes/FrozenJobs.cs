using System.Collections.Concurrent;
using System.Security.Cryptography;
using Microsoft.Extensions.Caching.Memory;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;

namespace PressRun.Web.Quotes;

/// <summary>
/// The frozen jobs of quotes, worked out once for all who look at them: a quote never changes, and whoever has a link to it may ask for it again and again.
/// A few are worked out at once, each on a thread of its own, so that the pages of everybody else go on; and none for long, since the others wait. Of one press it is one at a time:
/// whoever opens many heavy quotes of theirs has their own press wait, and of the turns of all takes one.
/// </summary>
public sealed class FrozenJobs : IDisposable
{
    private const long MostKept = 64 * 1024 * 1024;

    private static readonly TimeSpan Kept = TimeSpan.FromMinutes(30);

    // A second or two of work on a busy machine. What takes longer than the range that is shown lets one think is shown at its own quantity alone.
    private static readonly TimeSpan MostWork = TimeSpan.FromSeconds(10);

    private readonly MemoryCache jobs = new(new MemoryCacheOptions { SizeLimit = MostKept });
    private readonly SemaphoreSlim turns = new(MostAtOnce);

    // One for every press that was asked for since the start: there are as many as presses, and each is next to nothing.
    private readonly ConcurrentDictionary<PressId, SemaphoreSlim> turnsOfPresses = new();
    private readonly Func<QuoteRecord, CancellationToken, FrozenJob> work;
    private readonly TimeSpan mostWork;

    /// <summary>Made once for the app.</summary>
    public FrozenJobs()
        : this(FrozenJob.Of, MostWork)
    {
    }

    /// <summary>With other work than reading and working out.</summary>
    public FrozenJobs(Func<QuoteRecord, CancellationToken, FrozenJob> work)
        : this(work, MostWork)
    {
    }

    /// <summary>With other work, and another time that it may take.</summary>
    public FrozenJobs(Func<QuoteRecord, CancellationToken, FrozenJob> work, TimeSpan mostWork) => (this.work, this.mostWork) = (work, mostWork);

    /// <summary>How many are worked out at once: half the processors, and at least one, and one more, so that a press never waits for the work of one other alone.</summary>
    public static int MostAtOnce { get; } = Math.Max(1, Environment.ProcessorCount / 2) + 1;

    /// <summary>The frozen job of a quote.</summary>
    /// <param name="press">Whose quote.</param>
    /// <param name="quote">The quote.</param>
    /// <param name="gone">Whoever asked has left: the work on it ends.</param>
    /// <exception cref="OperationCanceledException">Whoever asked has left.</exception>
    public async Task<FrozenJob> OfAsync(PressId press, QuoteRecord quote, CancellationToken gone)
    {
        var key = Key(quote);
        if (jobs.Get<FrozenJob>(key) is { } kept)
        {
            return kept;
        }

        var ownTurn = turnsOfPresses.GetOrAdd(press, _ => new SemaphoreSlim(1));
        await ownTurn.WaitAsync(gone);
        try
        {
            await turns.WaitAsync(gone);
            try
            {
                return await InTurnAsync(key, quote, gone);
            }
            finally
            {
                turns.Release();
            }
        }
        finally
        {
            ownTurn.Release();
        }
    }

    private async Task<FrozenJob> InTurnAsync(string key, QuoteRecord quote, CancellationToken gone)
    {
        // Somebody else may have had it worked out while this one waited.
        if (jobs.Get<FrozenJob>(key) is { } meanwhile)
        {
            return meanwhile;
        }

        var (fresh, inTime) = await WorkAsync(quote, gone);
        var entry = new MemoryCacheEntryOptions { Size = fresh.BytesFor(quote) };

        // Where it was not over in time, it may be another time.
        return jobs.Set(key, fresh, inTime ? entry.SetSlidingExpiration(Kept) : entry.SetAbsoluteExpiration(Kept));
    }

    private async Task<(FrozenJob Fresh, bool InTime)> WorkAsync(QuoteRecord quote, CancellationToken gone)
    {
        using var end = CancellationTokenSource.CreateLinkedTokenSource(gone);
        end.CancelAfter(mostWork);
        try
        {
            return (await Task.Factory.StartNew(() => work(quote, end.Token), gone, TaskCreationOptions.LongRunning, TaskScheduler.Default), true);
        }
        catch (OperationCanceledException) when (!gone.IsCancellationRequested)
        {
            return (FrozenJob.Read(quote), false);
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        jobs.Dispose();
        turns.Dispose();
        foreach (var turn in turnsOfPresses.Values)
        {
            turn.Dispose();
        }
    }

    // All that the work goes by, and nothing else, whatever the row says of itself.
    private static string Key(QuoteRecord quote) =>
        $"{quote.Quantity} {Convert.ToHexString(SHA256.HashData(quote.Job))} {Convert.ToHexString(SHA256.HashData(quote.Result))}";
}
