using System.Runtime.InteropServices;
using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;

namespace PressRun.Data.Titles;

/// <summary>What of the shelf to show.</summary>
/// <param name="Search">Beginnings of words of title or maker; null or blank shows all.</param>
/// <param name="Skip">Titles to pass over.</param>
/// <param name="Take">Titles to show, at most 200.</param>
/// <param name="Archived">True shows the archived titles instead.</param>
/// <param name="OnlyAsking">True shows only titles that need a decision.</param>
/// <param name="OnlyDue">True shows only titles that are due to be ordered, those that run out first first.</param>
public sealed record ShelfFilter(string? Search = null, int Skip = 0, int Take = 50, bool Archived = false, bool OnlyAsking = false, bool OnlyDue = false);

/// <summary>A stretch of the shelf.</summary>
/// <param name="Titles">By title.</param>
/// <param name="Total">Titles that the filter finds in all.</param>
/// <param name="Totals">What the search finds in all, whether or not it needs a decision.</param>
public sealed record ShelfPage(IReadOnlyList<ShelfTitle> Titles, int Total, ShelfTotals Totals);

/// <summary>Sums over all that a search finds.</summary>
/// <param name="Titles">Titles.</param>
/// <param name="Asking">Of them, titles that need a decision.</param>
/// <param name="Planned">Of them, titles with a printing that is not printed yet.</param>
/// <param name="PrintingsOnHand">Printings of which copies are on hand.</param>
/// <param name="CopiesOnHand">Their copies.</param>
/// <param name="Due">Titles that are due to be ordered.</param>
public sealed record ShelfTotals(int Titles, int Asking, int Planned, int PrintingsOnHand, long CopiesOnHand, int Due = 0);

/// <summary>A printing that is not printed yet, with the plan it goes by.</summary>
/// <param name="TitleId">Its title.</param>
/// <param name="PlanId">The plan.</param>
/// <param name="PlanVersion">The plan's row version.</param>
/// <param name="EditionVersion">The edition's row version.</param>
public sealed record PlannedPrinting(Guid TitleId, Guid PlanId, uint PlanVersion, uint EditionVersion);

/// <summary>A printing by its address.</summary>
/// <param name="Title">The title.</param>
/// <param name="Slug">The title in addresses.</param>
/// <param name="Printing">First is 1.</param>
public sealed record PrintingName(string Title, string Slug, int Printing);

/// <summary>A title on the shelf.</summary>
/// <param name="Title">The title.</param>
/// <param name="Editions">Its printings, latest first, archived ones left out.</param>
public sealed record ShelfTitle(TitleRecord Title, IReadOnlyList<ShelfEdition> Editions);

/// <summary>A printing on the shelf.</summary>
/// <param name="Edition">The edition.</param>
/// <param name="Plan">The plan it goes by; null where none is chosen.</param>
public sealed record ShelfEdition(EditionRecord Edition, PlanRecord? Plan);

/// <summary>The shelf: titles with their editions and the plans they go by.</summary>
public sealed class ShelfQuery
{
    /// <summary>One copy in so many of the run left counts as running out (common practice).</summary>
    public const int LastCopies = 10;

    private const int MostTitles = 200;

    private readonly PressDatabase database;

    internal ShelfQuery(PressDatabase database) => this.database = database;

    /// <summary>Printings with a plan, not printed yet, of all titles that the search finds: whether they need a decision is known once they are
    /// worked out.</summary>
    public async Task<IReadOnlyList<PlannedPrinting>> PlannedAsync(PressId press, ShelfFilter filter, CancellationToken cancel = default) =>
        await database.ReadAsync(
            press,
            db => db.RunPlans.AsNoTracking()
                .Where(plan => plan.Chosen && plan.Edition.CopiesPrinted == null && !plan.Edition.Archived && Found(db, filter).Any(title => title.Id == plan.Edition.TitleId))
                .Select(plan => new PlannedPrinting(plan.Edition.TitleId, plan.Id, plan.Version, plan.Edition.Version)).ToListAsync(cancel),
            cancel);

    /// <summary>A mark of all that printings are costed by beside themselves and their plans: the press's settings, papers, price lists, bench, mailers,
    /// post and channels. It is another one after any change to any of them.</summary>
    public async Task<string> LibrariesMarkAsync(PressId press, CancellationToken cancel = default)
    {
        var versions = await database.ReadAsync(
            press,
            db => db.Presses.Where(row => row.Id == press).Select(row => row.Version)
                .Concat(db.Stocks.Select(row => row.Version)).Concat(db.PriceLists.Select(row => row.Version))
                .Concat(db.Benches.Select(row => row.Version)).Concat(db.Mailers.Select(row => row.Version))
                .Concat(db.PostageServices.Select(row => row.Version)).Concat(db.Channels.Select(row => row.Version)).ToListAsync(cancel),
            cancel);
        versions.Sort();
        return Convert.ToHexString(SHA256.HashData(MemoryMarshal.AsBytes(CollectionsMarshal.AsSpan(versions))));
    }

    /// <summary>Shows a stretch of the shelf.</summary>
    /// <param name="press">Whose shelf.</param>
    /// <param name="filter">What of it.</param>
    /// <param name="asking">Titles with a planned printing that needs a decision; those whose last copies are going and those whose planned printing
    /// goes by no plan are known from what is stored.</param>
    /// <param name="due">Titles that are due to be ordered; they need a decision too.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public Task<ShelfPage> ShowAsync(
        PressId press, ShelfFilter filter, IReadOnlyCollection<Guid>? asking = null, IReadOnlyCollection<Guid>? due = null, CancellationToken cancel = default) =>
        database.ReadMomentAsync(press, db => ShowAsync(db, filter, [.. asking ?? [], .. due ?? []], [.. due ?? []], cancel), cancel);

    private static async Task<ShelfPage> ShowAsync(PressRunDbContext db, ShelfFilter filter, Guid[] asking, Guid[] due, CancellationToken cancel)
    {
        var found = Found(db, filter);
        var shown = filter.OnlyDue ? found.Where(title => due.Contains(title.Id)) : filter.OnlyAsking ? Asking(db, found, asking) : found;
        var ordered = filter.OnlyDue
            ? shown.OrderBy(title => db.TitleOutlooks.Where(outlook => outlook.TitleId == title.Id).Select(outlook => outlook.RunsOutOn).FirstOrDefault())
            : shown.OrderBy(title => title.SearchText);
        var titles = await ordered.ThenBy(title => title.Id)
            .Skip(Math.Max(0, filter.Skip)).Take(Math.Clamp(filter.Take, 1, MostTitles)).ToListAsync(cancel);
        var titleIds = titles.ConvertAll(title => title.Id);
        // All queries of this stretch see one moment, so that an edition's parts need not come in one row with its costs.
        var editions = await db.Editions.AsNoTracking().Whole().AsSplitQuery()
            .Where(edition => titleIds.Contains(edition.TitleId) && !edition.Archived).ToListAsync(cancel);
        var editionIds = editions.ConvertAll(edition => edition.Id);
        var plans = (await db.RunPlans.Where(plan => plan.Chosen && editionIds.Contains(plan.EditionId)).ToListWithShopsAsync(db, cancel))
            .ToDictionary(plan => plan.EditionId);
        var byTitle = editions.ToLookup(edition => edition.TitleId);
        var totals = await TotalsAsync(db, found, asking, cancel);
        return new ShelfPage(
            titles.ConvertAll(title => new ShelfTitle(
                title.ToRecord(),
                [.. byTitle[title.Id].OrderByDescending(edition => edition.Printing)
                    .Select(edition => new ShelfEdition(edition.ToRecord(), plans.GetValueOrDefault(edition.Id)?.ToRecord()))])),
            filter.OnlyDue ? due.Length : filter.OnlyAsking ? totals.Asking : totals.Titles,
            totals with { Due = due.Length });
    }

    // A row for each title found, joined by name: over a navigation, a sum would become a query of its own for each row.
    private static async Task<ShelfTotals> TotalsAsync(PressRunDbContext db, IQueryable<TitleRow> found, Guid[] asking, CancellationToken cancel)
    {
        var sums = await found.Join(db.TitleSums, title => title.Id, sums => sums.TitleId, (title, sums) => sums).GroupBy(_ => 1).Select(titles => new
        {
            Asking = titles.Sum(title => title.Asks || asking.Contains(title.TitleId) ? 1 : 0),
            Planned = titles.Sum(title => title.Planned ? 1 : 0),
            OnHand = titles.Sum(title => title.PrintingsOnHand),
            Copies = titles.Sum(title => title.OnHand),
        }).SingleOrDefaultAsync(cancel);
        return new ShelfTotals(await found.CountAsync(cancel), sums?.Asking ?? 0, sums?.Planned ?? 0, sums?.OnHand ?? 0, sums?.Copies ?? 0);
    }

    /// <summary>The first printing by title that is not printed yet and whose plan has a part on one of some papers; null where there is none.</summary>
    /// <param name="press">The press.</param>
    /// <param name="stockIds">Ids of the papers.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public async Task<PrintingName?> PlannedOnAsync(PressId press, IReadOnlyCollection<string> stockIds, CancellationToken cancel = default) => stockIds.Count == 0 ? null : await database.ReadAsync(
        press,
        db => db.RunPlans.AsNoTracking()
            .Where(plan => plan.Chosen && plan.Edition.CopiesPrinted == null && !plan.Edition.Archived && !plan.Edition.Title.Archived
                && plan.Edition.Parts.Any(part => stockIds.Contains(plan.Stocks.Where(stock => stock.PartId == part.Id).Select(stock => stock.StockId).FirstOrDefault() ?? part.StockId)))
            .OrderBy(plan => plan.Edition.Title.Title).ThenBy(plan => plan.Edition.Printing)
            .Select(plan => new PrintingName(plan.Edition.Title.Title, plan.Edition.Title.Slug, plan.Edition.Printing))
            .FirstOrDefaultAsync(cancel),
        cancel);

    /// <summary>Titles that a search finds.</summary>
    internal static IQueryable<TitleRow> Found(PressRunDbContext db, ShelfFilter filter)
    {
        var titles = db.Titles.AsNoTracking().Where(title => title.Archived == filter.Archived);
        return SearchText.PrefixQuery(filter.Search) is { } words
            ? titles.Where(title => title.SearchWords.Matches(EF.Functions.ToTsQuery("simple", words)))
            : titles;
    }

    private static IQueryable<TitleRow> Asking(PressRunDbContext db, IQueryable<TitleRow> titles, Guid[] asking) =>
        titles.Where(title => asking.Contains(title.Id) || db.TitleSums.Any(sums => sums.TitleId == title.Id && sums.Asks));
}
