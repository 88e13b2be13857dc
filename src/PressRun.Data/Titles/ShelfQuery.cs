using Microsoft.EntityFrameworkCore;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;

namespace PressRun.Data.Titles;

/// <summary>What of the shelf to show.</summary>
/// <param name="Search">Beginnings of words of title or maker; null or blank shows all.</param>
/// <param name="Skip">Titles to pass over.</param>
/// <param name="Take">Titles to show, at most 200.</param>
/// <param name="Archived">True shows the archived titles instead.</param>
public sealed record ShelfFilter(string? Search = null, int Skip = 0, int Take = 50, bool Archived = false);

/// <summary>A stretch of the shelf.</summary>
/// <param name="Titles">By title.</param>
/// <param name="Total">Titles that the search finds in all.</param>
public sealed record ShelfPage(IReadOnlyList<ShelfTitle> Titles, int Total);

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
    private const int MostTitles = 200;

    private readonly PressDatabase database;

    internal ShelfQuery(PressDatabase database) => this.database = database;

    /// <summary>Shows a stretch of the shelf.</summary>
    public Task<ShelfPage> ShowAsync(PressId press, ShelfFilter filter, CancellationToken cancel = default) =>
        database.ReadAsync(press, db => ShowAsync(db, filter, cancel), cancel);

    private static async Task<ShelfPage> ShowAsync(PressRunDbContext db, ShelfFilter filter, CancellationToken cancel)
    {
        var found = db.Titles.AsNoTracking().Where(title => title.Archived == filter.Archived);
        if (SearchText.PrefixQuery(filter.Search) is { } words)
        {
            found = found.Where(title => title.SearchWords.Matches(EF.Functions.ToTsQuery("simple", words)));
        }

        var total = await found.CountAsync(cancel);
        var titles = await found.OrderBy(title => title.SearchText).ThenBy(title => title.Id)
            .Skip(Math.Max(0, filter.Skip)).Take(Math.Clamp(filter.Take, 1, MostTitles)).ToListAsync(cancel);
        var titleIds = titles.ConvertAll(title => title.Id);
        var editions = await db.Editions.AsNoTracking().Whole()
            .Where(edition => titleIds.Contains(edition.TitleId) && !edition.Archived).ToListAsync(cancel);
        var editionIds = editions.ConvertAll(edition => edition.Id);
        var plans = await db.RunPlans.AsNoTracking().Whole()
            .Where(plan => plan.Chosen && editionIds.Contains(plan.EditionId)).ToDictionaryAsync(plan => plan.EditionId, cancel);
        var byTitle = editions.ToLookup(edition => edition.TitleId);
        return new ShelfPage(
            titles.ConvertAll(title => new ShelfTitle(
                title.ToRecord(),
                [.. byTitle[title.Id].OrderByDescending(edition => edition.Printing)
                    .Select(edition => new ShelfEdition(edition.ToRecord(), plans.GetValueOrDefault(edition.Id)?.ToRecord()))])),
            total);
    }
}
