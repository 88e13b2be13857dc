using System.Globalization;
using PressRun.Data.Running;
using PressRun.Data;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Web.RunPlans;
using PressRun.Web.Shared;

namespace PressRun.Web.Quotes;

/// <summary>A plan that can be frozen.</summary>
/// <param name="Title">The book.</param>
/// <param name="Costing">The plan worked out.</param>
/// <param name="Replaces">The quote whose place it takes; null for none.</param>
public sealed record FreezeView(TitleRecord Title, PlanCosting Costing, QuoteView? Replaces);

/// <summary>What became of something that the maker did to a quote.</summary>
/// <typeparam name="T">What comes of it.</typeparam>
/// <param name="Now">What came of it; null where it was refused.</param>
/// <param name="Problem">What stands in the way, as sentences; null where nothing does.</param>
public sealed record QuoteDone<T>(T? Now, string? Problem)
    where T : class;

/// <summary>Quotes from the maker's side.</summary>
public sealed class QuoteService(QuoteStore quotes, RunPlanService runs, TitleStore titles, EditionStore editions, FrozenJobs jobs, TimeProvider time)
{
    /// <summary>The day that stands on a quote that is frozen now, as its readers' days are counted: where the server stands.</summary>
    public DateOnly Today => time.Today();

    /// <summary>A plan of a printing that is to be frozen, or null.</summary>
    /// <param name="press">Whose.</param>
    /// <param name="slug">The title's.</param>
    /// <param name="printing">Which printing.</param>
    /// <param name="plan">Which plan; null for the chosen one.</param>
    /// <param name="replaces">Number of the quote whose place it is to take.</param>
    public async Task<FreezeView?> LoadAsync(PressId press, string slug, int printing, Guid? plan, int? replaces)
    {
        if (await runs.LoadAsync(press, slug, printing) is not { } view)
        {
            return null;
        }

        var open = view.Plans.FirstOrDefault(costing => costing.Source.Plan.Id == plan) ?? view.Plans.FirstOrDefault(costing => costing.Source.Plan.Chosen);
        var before = replaces is { } number ? await FindAsync(press, number) : null;
        return open is null ? null : new FreezeView(view.Title, open, before);
    }

    /// <summary>Freezes a plan as it stands in the view.</summary>
    public async Task<QuoteDone<QuoteRecord>> FreezeAsync(PressId press, Guid id, FreezeView view, QuoteTerms terms, string by)
    {
        var quote = QuoteFreezing.Of(id, view.Costing.Source, RunFiles.JobOf(view.Costing.Source), view.Title, terms, Today, by, view.Replaces?.Quote.Id);
        return quote.Succeeded ? Told(await quotes.FreezeAsync(press, quote.Value with { Seen = view.Replaces?.Whole.Changes })) : new QuoteDone<QuoteRecord>(null, Words.Standing(quote.Problems));
    }

    /// <summary>The quote that is to be replaced as it stands by now, with what its readers did since it was looked at; null where that is nothing.</summary>
    public async Task<(QuoteView Now, IReadOnlyList<QuoteEvent> Said)?> SinceAsync(PressId press, FreezeView view) =>
        view.Replaces is { } seen && await FindAsync(press, seen.Quote.Number) is { } now
            && now.Whole.Events.Where(happened => happened.IsReaders && happened.Sequence > seen.Whole.Changes).ToList() is { Count: > 0 } said
            ? (now, said)
            : null;

    /// <summary>All quotes of the press, the latest first.</summary>
    public Task<IReadOnlyList<QuoteSummary>> ListAsync(PressId press) => quotes.ListAsync(press);

    /// <summary>A quote by its number, or null.</summary>
    /// <param name="press">Whose.</param>
    /// <param name="number">Its number.</param>
    /// <param name="gone">Whoever asked has left.</param>
    public async Task<QuoteView?> FindAsync(PressId press, int number, CancellationToken gone = default) =>
        await quotes.FindAsync(press, number, gone) is { } whole ? QuoteView.Of(whole, await jobs.OfAsync(press, whole.Quote, gone), CultureInfo.CurrentCulture) : null;

    /// <summary>Address of the printing that was quoted.</summary>
    public async Task<string?> AddressAsync(PressId press, QuoteView view) =>
        await editions.LoadAsync(press, view.Quote.EditionId) is { } edition && await titles.LoadAsync(press, edition.TitleId) is { } title
            ? string.Create(CultureInfo.InvariantCulture, $"titles/{title.Slug}/{edition.Printing}")
            : null;

    /// <summary>Marks what happened so far as seen by the maker.</summary>
    public Task SeeAsync(PressId press, QuoteView view) => quotes.SeeAsync(press, view.Quote.Id, view.Whole.Changes);

    /// <summary>Makes a link that opens until the end of a day.</summary>
    public async Task<QuoteDone<MadeLink>> LinkAsync(PressId press, QuoteView view, string name, LinkRights rights, DateOnly until, int? part, string by)
    {
        return Told(await quotes.LinkAsync(press, view.Quote.Id, new NewLink(name, rights, time.LocalTimeZone.EndOf(until), part), by));
    }

    /// <summary>Ends a link.</summary>
    public async Task<string?> EndAsync(PressId press, QuoteView view, Guid link, string by) => Told(await quotes.EndAsync(press, view.Quote.Id, link, by)).Problem;

    /// <summary>Adds a remark of the maker's.</summary>
    public async Task<string?> RemarkAsync(PressId press, QuoteView view, string by, string words) => Told(await quotes.RemarkAsync(press, view.Quote.Id, by, words)).Problem;

    /// <summary>Writes down what was paid.</summary>
    public async Task<string?> PayAsync(PressId press, QuoteView view, int part, decimal amount, DateOnly day, string by) =>
        Told(await quotes.PayAsync(press, view.Quote.Id, part, amount, day, by)).Problem;

    private static QuoteDone<T> Told<T>(SaveResult<T> result)
        where T : class => result switch
        {
            SaveResult<T>.Saved saved => new QuoteDone<T>(saved.Now, null),
            SaveResult<T>.Refused refused => new QuoteDone<T>(null, Words.Standing(refused.Problems)),
            _ => new QuoteDone<T>(null, Say($"It is not there any more.")),
        };
}
