using Microsoft.EntityFrameworkCore;
using PressRun.Data.Copies;
using PressRun.Data.Presses;

namespace PressRun.Data.Titles;

/// <summary>The shelf: titles with their printings and the plans these go by.</summary>
public sealed class ShelfQuery
{
    /// <summary>One copy in so many of the run left counts as running out (common practice).</summary>
    public const int LastCopies = 10;

    private const int MostTitles = 200;

    private readonly PressDatabase database;

    internal ShelfQuery(PressDatabase database) => this.database = database;

    /// <summary>Marks of what the titles of a press are judged by.</summary>
    /// <param name="press">The press.</param>
    /// <param name="by">The day by which copies may be gone.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public Task<ShelfMarks> MarksAsync(PressId press, DateOnly by, CancellationToken cancel = default) =>
        database.ReadAsync(press, db => ShelfMarksReading.ReadAsync(db, by, cancel), cancel);

    /// <summary>What the titles of a press are judged by, with its marks.</summary>
    /// <param name="press">The press.</param>
    /// <param name="by">The day by which copies may be gone.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public Task<ShelfStanding> StandingAsync(PressId press, DateOnly by, CancellationToken cancel = default) =>
        database.ReadMomentAsync(
            press,
            async db => new ShelfStanding(
                await ShelfMarksReading.ReadAsync(db, by, cancel), await PlannedAsync(db, cancel), await OutlookStore.RunningOutAsync(db, by, cancel)),
            cancel);

    /// <summary>Shows a stretch of the shelf.</summary>
    /// <param name="press">Whose shelf.</param>
    /// <param name="filter">What of it.</param>
    /// <param name="asking">Titles with a planned printing that needs a decision; those whose last copies are going and those whose planned printing
    /// goes by no plan are known from what is stored. Titles that the filter does not find do no harm.</param>
    /// <param name="due">Titles that are due to be ordered, likewise; they need a decision too.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public Task<ShelfPage> ShowAsync(
        PressId press, ShelfFilter filter, IReadOnlyCollection<Guid>? asking = null, IReadOnlyCollection<Guid>? due = null, CancellationToken cancel = default) =>
        database.ReadMomentAsync(press, db => ShowAsync(db, filter, [.. asking ?? [], .. due ?? []], [.. due ?? []], cancel), cancel);

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

    private static Task<List<PlannedPrinting>> PlannedAsync(PressRunDbContext db, CancellationToken cancel) =>
        db.RunPlans.Where(plan => plan.Chosen && plan.Edition.CopiesPrinted == null && !plan.Edition.Archived)
            .Select(plan => new PlannedPrinting(plan.Edition.TitleId, plan.Id, plan.Version, plan.Edition.Version)).ToListAsync(cancel);

    private static async Task<ShelfPage> ShowAsync(PressRunDbContext db, ShelfFilter filter, Guid[] asking, Guid[] due, CancellationToken cancel)
    {
        var titles = await ShelfReading.TitlesAsync(db, Stretch(db, filter, asking, due), filter.OnlyDue, cancel);
        var totals = await TotalsAsync(db, Found(db, filter), asking, due, cancel);
        return new ShelfPage(titles, filter.OnlyDue ? totals.Due : filter.OnlyAsking ? totals.Asking : totals.Titles, totals);
    }

    private static IQueryable<TitleRow> Stretch(PressRunDbContext db, ShelfFilter filter, Guid[] asking, Guid[] due)
    {
        var found = Found(db, filter);
        var ordered = filter switch
        {
            { OnlyDue: true } => found.Where(title => due.Contains(title.Id))
                .OrderBy(title => db.TitleOutlooks.Where(outlook => outlook.TitleId == title.Id).Select(outlook => outlook.RunsOutOn).FirstOrDefault()),
            { OnlyAsking: true } => found.Where(title => asking.Contains(title.Id) || db.TitleSums.Any(sums => sums.TitleId == title.Id && sums.Asks)).OrderBy(title => title.SearchText),
            _ => found.OrderBy(title => title.SearchText),
        };
        return ordered.ThenBy(title => title.Id).Skip(Math.Max(0, filter.Skip)).Take(Math.Clamp(filter.Take, 1, MostTitles));
    }

    // A row for each title found, joined by name: over a navigation, a sum would become a query of its own for each row.
    private static async Task<ShelfTotals> TotalsAsync(PressRunDbContext db, IQueryable<TitleRow> found, Guid[] asking, Guid[] due, CancellationToken cancel)
    {
        var totals = await found.GroupJoin(db.TitleSums, title => title.Id, sums => sums.TitleId, (title, kept) => new { title.Id, kept })
            .SelectMany(title => title.kept.DefaultIfEmpty(), (title, sums) => new { title.Id, sums })
            .GroupBy(_ => 1)
            .Select(titles => new ShelfTotals(
                titles.Count(),
                titles.Sum(title => title.sums!.Asks || asking.Contains(title.Id) ? 1 : 0),
                titles.Sum(title => title.sums!.Planned ? 1 : 0),
                titles.Sum(title => (int?)title.sums!.PrintingsOnHand) ?? 0,
                titles.Sum(title => (long?)title.sums!.OnHand) ?? 0,
                titles.Sum(title => due.Contains(title.Id) ? 1 : 0)))
            .SingleOrDefaultAsync(cancel);
        return totals ?? new ShelfTotals(0, 0, 0, 0, 0);
    }

    /// <summary>Titles that a search finds.</summary>
    private static IQueryable<TitleRow> Found(PressRunDbContext db, ShelfFilter filter)
    {
        var titles = db.Titles.AsNoTracking().Where(title => title.Archived == filter.Archived);
        return SearchText.PrefixQuery(filter.Search) is { } words
            ? titles.Where(title => title.SearchWords.Matches(EF.Functions.ToTsQuery("simple", words)))
            : titles;
    }
}
