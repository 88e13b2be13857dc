using System.Globalization;
using System.Net;
using System.Text;
using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.Caching.Memory;
using PressRun.Data.Running;
using PressRun.Data;
using PressRun.Data.People;
using PressRun.Data.Quotes;
using PressRun.Engine.Costing;
using PressRun.Web.People;
using PressRun.Web.Shared;

namespace PressRun.Web.Quotes;

/// <summary>What is worked out for one link alone. Each is counted by itself, so that a reader who tried many quantities may still answer.</summary>
public enum LinkWork
{
    /// <summary>A PDF, or a quantity that is tried or asked for.</summary>
    Tried,

    /// <summary>A form that is taken.</summary>
    Sent,

    /// <summary>A page that nobody has asked for since the last change, or not in this language's way of writing numbers.</summary>
    Opened,
}

/// <summary>Quotes as their readers see them: pages that are rendered once for each change and kept as bytes, and what readers say.</summary>
public sealed class SharedQuotes : IDisposable
{
    private const long MostKept = 32 * 1024 * 1024;

    /// <summary>Links that never were that may be asked for from one place within a minute.</summary>
    public const int MostMisses = 30;

    /// <summary>PDFs and tried quantities, together, that are worked out for one link within a minute; and forms that are taken.</summary>
    public const int MostWorked = 30;

    /// <summary>Pages that are set for one link within a minute; further ones are written as in <see cref="Usual"/>. What is kept of one link is at most as much as is set
    /// while it is kept.</summary>
    public const int MostOpened = 10;

    /// <summary>How numbers are written for whoever asks in too many languages.</summary>
    public static readonly CultureInfo Usual = CultureInfo.GetCultureInfo("en");

    private static readonly TimeSpan Kept = TimeSpan.FromMinutes(5);

    private readonly SharedQuoteStore store;
    private readonly IServiceScopeFactory scopes;
    private readonly TimeProvider time;
    private readonly FrozenJobs jobs;
    private readonly MemoryCache pages = new(new MemoryCacheOptions { SizeLimit = MostKept });

    // Whoever guesses at secrets is slowed down, by place. The secrets themselves cannot be guessed.
    private readonly PartitionedRateLimiter<string> misses = PartitionedRateLimiter.Create<string, string>(place =>
        RateLimitPartition.GetFixedWindowLimiter(place, _ => new FixedWindowRateLimiterOptions { PermitLimit = MostMisses, Window = TimeSpan.FromMinutes(1) }));

    // What is worked out for one request alone is work that a link may ask for now and then; its page is there already.
    private readonly PartitionedRateLimiter<(Guid Link, LinkWork Work)> worked = PartitionedRateLimiter.Create<(Guid Link, LinkWork Work), (Guid, LinkWork)>(asked =>
        RateLimitPartition.GetFixedWindowLimiter(
            asked, _ => new FixedWindowRateLimiterOptions { PermitLimit = asked.Work == LinkWork.Opened ? MostOpened : MostWorked, Window = TimeSpan.FromMinutes(1) }));

    /// <summary>Made once for the app.</summary>
    public SharedQuotes(SharedQuoteStore store, IServiceScopeFactory scopes, FrozenJobs jobs, TimeProvider time) =>
        (this.store, this.scopes, this.jobs, this.time) = (store, scopes, jobs, time);

    /// <summary>Counts that a link was asked for that never was; false where that was one too many from its place within this minute.</summary>
    public bool MayMiss(IPAddress? address)
    {
        using var lease = misses.AttemptAcquire(Place.Of(address));
        return lease.IsAcquired;
    }

    /// <summary>True where something may be worked out for a link once more within this minute; it is counted.</summary>
    public bool MayWork(SharedLook look, LinkWork work = LinkWork.Tried)
    {
        using var lease = worked.AttemptAcquire((look.LinkId, work));
        return lease.IsAcquired;
    }

    /// <summary>Looks a link up, with one indexed look-up; null where there never was one.</summary>
    public Task<SharedLook?> LookAsync(string secret, CancellationToken cancel) => store.LookAsync(Secret.Hash(secret), cancel);

    /// <summary>The page of an open link as it is sent; null where the link has ended meanwhile.</summary>
    public async Task<byte[]?> PageAsync(SharedLook look, string secret, string basePath, CancellationToken cancel)
    {
        var today = time.Today();
        return Found(CultureInfo.CurrentCulture) is { } kept ? kept
            : MayWork(look, LinkWork.Opened) ? await SetAsync(CultureInfo.CurrentCulture)
            : Found(Usual) ?? await SetAsync(Usual);

        byte[]? Found(CultureInfo culture) => pages.TryGetValue((look.LinkId, look.Changes, culture.Name, Language.Name, basePath, today), out byte[]? page) ? page : null;

        async Task<byte[]?> SetAsync(CultureInfo culture)
        {
            if (await LoadAsync(look, culture, cancel) is not var (view, link))
            {
                return null;
            }

            var page = await RenderAsync(new ShareState(view, link, secret, basePath));
            return pages.Set((look.LinkId, look.Changes, culture.Name, Language.Name, basePath, today), page, new MemoryCacheEntryOptions { Size = page.Length, AbsoluteExpirationRelativeToNow = Kept });
        }
    }

    /// <summary>The quote behind an open link; null where it has ended meanwhile.</summary>
    public Task<(QuoteView View, QuoteLink Link)?> LoadAsync(SharedLook look, CancellationToken cancel) => LoadAsync(look, CultureInfo.CurrentCulture, cancel);

    /// <summary>Renders a page that is shown once: a quantity that is tried, or a form that comes back.</summary>
    public async Task<byte[]> RenderAsync(ShareState state)
    {
        await using var scope = scopes.CreateAsyncScope();
        await using var renderer = new HtmlRenderer(scope.ServiceProvider, scope.ServiceProvider.GetRequiredService<ILoggerFactory>());
        var html = await renderer.Dispatcher.InvokeAsync(async () =>
        {
            var root = await renderer.RenderComponentAsync<SharePage>(ParameterView.FromDictionary(new Dictionary<string, object?> { [nameof(SharePage.State)] = state }));
            return root.ToHtmlString();
        });
        return Encoding.UTF8.GetBytes(html);
    }

    /// <summary>Adds what a reader says, a quantity that is asked for with what it was shown to cost; a sentence where it is refused. Null where the link has ended.</summary>
    public async Task<(bool Taken, string? Problem)?> ReplyAsync(SharedLook look, Reply reply, CancellationToken cancel)
    {
        if (reply is not Reply.AskFor ask)
        {
            return await SayAsync(look, reply, cancel);
        }

        if (await LoadAsync(look, cancel) is not var (view, link))
        {
            return null;
        }

        var (shown, problem) = Try(view, link, ask.Quantity);
        return shown is null ? (false, problem) : await SayAsync(look, ask with { Landed = shown.Totals.LandedCost }, cancel);
    }

    /// <summary>What a quantity costs that a reader may try; a sentence where they may not, or it cannot be worked out.</summary>
    public static (Estimate? Estimate, string? Problem) Try(QuoteView view, QuoteLink link, int? copies)
    {
        if (link.Rights is not { TryFrom: { } from, TryTo: { } to } || view.Worked is not { } worked)
        {
            return (null, Say($"This link shows one quantity only."));
        }

        if (copies is not { } quantity || quantity < from || quantity > to)
        {
            return (null, Say($"Write a number of copies from {view.Format.Count(from)} to {view.Format.Count(to)}."));
        }

        var estimate = worked.Prepared.Estimate(quantity);
        return estimate.Succeeded ? (estimate.Value, null) : (null, Say($"The shop does not make so many."));
    }

    private async Task<(bool Taken, string? Problem)?> SayAsync(SharedLook look, Reply reply, CancellationToken cancel) => await store.ReplyAsync(look, reply, cancel) switch
    {
        SaveResult<QuoteEvent>.Saved => (true, null),
        SaveResult<QuoteEvent>.Refused refused => (false, Words.Standing(refused.Problems)),
        _ => null,
    };

    private async Task<(QuoteView View, QuoteLink Link)?> LoadAsync(SharedLook look, CultureInfo culture, CancellationToken cancel) =>
        await store.LoadAsync(look, cancel) is var (whole, link) ? (QuoteView.Of(whole, await jobs.OfAsync(look.Press, whole.Quote, cancel), culture), link) : null;

    /// <inheritdoc/>
    public void Dispose()
    {
        pages.Dispose();
        misses.Dispose();
        worked.Dispose();
    }
}
