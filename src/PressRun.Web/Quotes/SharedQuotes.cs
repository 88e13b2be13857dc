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
using PressRun.Engine.Quoting;
using PressRun.Web.People;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Quotes;

/// <summary>What became of something that a reader sent.</summary>
public enum ShareOutcome
{
    /// <summary>It stands there.</summary>
    Taken,

    /// <summary>It stood there before, and once is enough.</summary>
    SaidBefore,

    /// <summary>They are asked whether they mean it.</summary>
    Asked,

    /// <summary>Something stands in the way.</summary>
    Refused,
}

/// <summary>What became of something that a reader sent, and what is said of it.</summary>
/// <param name="Outcome">What became of it.</param>
/// <param name="Words">What they are asked, or what stands in the way; null for neither.</param>
public sealed record ShareTaken(ShareOutcome Outcome, string? Words = null);

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

    /// <summary>Adds what a reader says, a quantity that is asked for with what it was shown to cost.</summary>
    /// <param name="look">By which link.</param>
    /// <param name="reply">What they say.</param>
    /// <param name="meant">The name by which they mean to agree though their link was made for another one; empty where nobody asked them.</param>
    /// <param name="cancel">Gives up waiting.</param>
    /// <returns>Null where the link has ended.</returns>
    public async Task<ShareTaken?> ReplyAsync(SharedLook look, Reply reply, string meant, CancellationToken cancel) => reply switch
    {
        Reply.Remark { Words.Length: > QuoteRules.LongestRemark and var length } => TooLong(length),
        Reply.TurnDown { Words.Length: > QuoteRules.LongestRemark and var length } => TooLong(length),
        Reply.Agree agree => await AgreeAsync(look, agree, meant, cancel),
        Reply.AskFor ask => await AskAsync(look, ask, cancel),
        _ => await SayAsync(look, reply, cancel),
    };

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

    private static ShareTaken TooLong(int length) => new(
        ShareOutcome.Refused,
        Say($"That has {Counted(length)} characters, and {Counted(QuoteRules.LongestRemark)} go at most; shorten it by {Counted(length - QuoteRules.LongestRemark)}."));

    private static string Counted(int number) => number.ToString("N0", CultureInfo.CurrentCulture);

    // A link is often read by two, and what is signed cannot be taken back. Where something else stands in the way, that is what is said.
    private async Task<ShareTaken?> AgreeAsync(SharedLook look, Reply.Agree agree, string meant, CancellationToken cancel)
    {
        if (!SignersName.Same(agree.Name, meant))
        {
            if (await store.LoadAsync(look, cancel) is not var (whole, link))
            {
                return null;
            }

            var isOpen = link is { Rights.Agree: true, Answer: QuoteAnswer.None } && whole.State is QuoteState.Out or QuoteState.Held
                && agree.Quantity == whole.Quote.Quantity && agree.Fingerprint.AsSpan().SequenceEqual(whole.Quote.Fingerprint);
            if (isOpen && agree.Name.Length is > 0 and <= QuoteRules.LongestName && SignersName.IsOther(link.Name, agree.Name))
            {
                return new(ShareOutcome.Asked, Say($"This link was made for {Apart.Of(link.Name)}. Agree as {Apart.Of(agree.Name)}?"));
            }
        }

        return await SayAsync(look, agree, cancel);
    }

    private async Task<ShareTaken?> AskAsync(SharedLook look, Reply.AskFor ask, CancellationToken cancel)
    {
        if (await LoadAsync(look, cancel) is not var (view, link))
        {
            return null;
        }

        var (shown, problem) = Try(view, link, ask.Quantity);
        return shown is null ? new(ShareOutcome.Refused, problem) : await SayAsync(look, ask with { Landed = shown.Totals.LandedCost }, cancel);
    }

    // What stood there when the link was looked up was said before.
    private async Task<ShareTaken?> SayAsync(SharedLook look, Reply reply, CancellationToken cancel) => await store.ReplyAsync(look, reply, cancel) switch
    {
        SaveResult<QuoteEvent>.Saved { Now: { Kind: QuoteEventKind.AskedFor } asked } when asked.Sequence <= look.Changes => new(ShareOutcome.SaidBefore),
        SaveResult<QuoteEvent>.Saved => new(ShareOutcome.Taken),
        SaveResult<QuoteEvent>.Refused refused => new(ShareOutcome.Refused, Words.Standing(refused.Problems)),
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
