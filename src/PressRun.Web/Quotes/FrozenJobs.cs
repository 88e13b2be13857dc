using System.Security.Cryptography;
using Microsoft.Extensions.Caching.Memory;
using PressRun.Data.Quotes;

namespace PressRun.Web.Quotes;

/// <summary>
/// The frozen jobs of quotes, worked out once for all who look at them: a quote never changes, and whoever has a link to it may ask for it again and again.
/// A few are worked out at once, each on a thread of its own, so that the pages of everybody else go on; and none for long, since the others wait.
/// </summary>
public sealed class FrozenJobs : IDisposable
{
    private const long MostKept = 64 * 1024 * 1024;

    private static readonly TimeSpan Kept = TimeSpan.FromMinutes(30);

    // A second or two of work on a busy machine. What takes longer than the range that is shown lets one think is shown at its own quantity alone.
    private static readonly TimeSpan MostWork = TimeSpan.FromSeconds(10);

    private readonly MemoryCache jobs = new(new MemoryCacheOptions { SizeLimit = MostKept });
    private readonly SemaphoreSlim turns = new(MostAtOnce);
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

    /// <summary>How many are worked out at once: half the processors, and at least one.</summary>
    public static int MostAtOnce { get; } = Math.Max(1, Environment.ProcessorCount / 2);

    /// <summary>The frozen job of a quote.</summary>
    /// <param name="quote">The quote.</param>
    /// <param name="gone">Whoever asked has left: the work on it ends.</param>
    /// <exception cref="OperationCanceledException">Whoever asked has left.</exception>
    public async Task<FrozenJob> OfAsync(QuoteRecord quote, CancellationToken gone)
    {
        var key = Key(quote);
        if (jobs.Get<FrozenJob>(key) is { } kept)
        {
            return kept;
        }

        await turns.WaitAsync(gone);
        try
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
        finally
        {
            turns.Release();
        }
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
    }

    // All that the work goes by, and nothing else, whatever the row says of itself.
    private static string Key(QuoteRecord quote) =>
        $"{quote.Quantity} {Convert.ToHexString(SHA256.HashData(quote.Job))} {Convert.ToHexString(SHA256.HashData(quote.Result))}";
}
