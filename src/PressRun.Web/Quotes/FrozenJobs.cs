using System.Security.Cryptography;
using Microsoft.Extensions.Caching.Memory;
using PressRun.Data.Quotes;

namespace PressRun.Web.Quotes;

/// <summary>
/// The frozen jobs of quotes, worked out once for all who look at them: a quote never changes, and whoever has a link to it may ask for it again and again.
/// A few are worked out at once, each on a thread of its own, so that the pages of everybody else go on.
/// </summary>
public sealed class FrozenJobs : IDisposable
{
    private const long MostKept = 64 * 1024 * 1024;

    private static readonly TimeSpan Kept = TimeSpan.FromMinutes(30);

    private readonly MemoryCache jobs = new(new MemoryCacheOptions { SizeLimit = MostKept });
    private readonly SemaphoreSlim turns = new(MostAtOnce);
    private readonly Func<QuoteRecord, CancellationToken, FrozenJob> work;

    /// <summary>Made once for the app.</summary>
    public FrozenJobs()
        : this(FrozenJob.Of)
    {
    }

    /// <summary>With other work than reading and working out.</summary>
    public FrozenJobs(Func<QuoteRecord, CancellationToken, FrozenJob> work) => this.work = work;

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

            var fresh = await Task.Factory.StartNew(() => work(quote, gone), gone, TaskCreationOptions.LongRunning, TaskScheduler.Default);
            return jobs.Set(key, fresh, new MemoryCacheEntryOptions { Size = fresh.BytesFor(quote), SlidingExpiration = Kept });
        }
        finally
        {
            turns.Release();
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
