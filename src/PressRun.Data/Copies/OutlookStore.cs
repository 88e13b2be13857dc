using Microsoft.EntityFrameworkCore;
using PressRun.Data.Access;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Engine.Copies;

namespace PressRun.Data.Copies;

/// <summary>
/// How long the copies of titles last, kept as it was last reckoned. Whoever writes into a ledger marks its title, in the same transaction; the mark goes when the title is reckoned
/// anew, unless more was written in between. Days that pass without a line move the day on which copies run out further away, so that what is kept rather calls a title
/// due early.
/// </summary>
public sealed class OutlookStore
{
    private readonly PressDatabase database;

    internal OutlookStore(PressDatabase database) => this.database = database;

    /// <summary>Titles whose ledger has moved since they were reckoned.</summary>
    /// <param name="press">Whose.</param>
    /// <param name="most">At most so many.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public Task<List<MovedTitle>> MovedAsync(PressId press, int most, CancellationToken cancel = default) =>
        database.ReadAsync(
            press,
            db => db.TitleOutlooks.Where(row => row.Moved != row.Reckoned).OrderBy(row => row.TitleId).Take(most)
                .Select(row => new MovedTitle(row.TitleId, row.Moved)).ToListAsync(cancel),
            cancel);

    /// <summary>What moved of some titles, by title: lines of one day and kind in one, and all that came before a day as one count on the day before.</summary>
    /// <param name="press">Whose.</param>
    /// <param name="titleIds">The titles.</param>
    /// <param name="since">First day that is told by itself.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public async Task<ILookup<Guid, CopyMovement>> ByDayAsync(PressId press, IReadOnlyCollection<Guid> titleIds, DateOnly since, CancellationToken cancel = default)
    {
        var before = since.AddDays(-1);
        var sums = await database.ReadAsync(
            press,
            db => CopiesLedgerStore.WithoutPairs(db)
                .Join(db.Editions.Where(edition => titleIds.Contains(edition.TitleId)), row => row.EditionId, edition => edition.Id, (row, edition) => new
                {
                    edition.TitleId,
                    Day = row.Day < since ? before : row.Day,
                    Kind = row.Day < since ? MovementKind.Counted : row.Kind,
                    // A day on which copies came is one with copies to sell, also where as many went.
                    Came = row.Day >= since && row.Copies > 0,
                    row.Copies,
                })
                .GroupBy(row => new { row.TitleId, row.Day, row.Kind, row.Came })
                .Select(day => new { day.Key.TitleId, day.Key.Day, day.Key.Kind, Copies = day.Sum(row => (long)row.Copies) }).ToListAsync(cancel),
            cancel);
        return sums.ToLookup(day => day.TitleId, day => new CopyMovement(day.Day, 0, day.Kind, day.Copies, 0m));
    }

    /// <summary>The events that are ahead of some titles, by title: that of the plan by which the latest printing on the shelf goes. Titles without one are left out.</summary>
    public async Task<IReadOnlyDictionary<Guid, EventAhead>> EventsAsync(PressId press, IReadOnlyCollection<Guid> titleIds, CancellationToken cancel = default)
    {
        var planned = await database.ReadAsync(
            press,
            db => db.Editions
                .Where(edition => titleIds.Contains(edition.TitleId) && !edition.Archived
                    && !db.Editions.Any(later => later.TitleId == edition.TitleId && !later.Archived && later.Printing > edition.Printing))
                .Join(db.RunPlans.Where(plan => plan.Chosen && plan.Reprint != null), edition => edition.Id, plan => plan.EditionId, (edition, plan) => new { edition.TitleId, plan.Reprint })
                .ToListAsync(cancel),
            cancel);
        return planned.Where(plan => plan.Reprint!.Event is not null).ToDictionary(plan => plan.TitleId, plan => plan.Reprint!.Event!);
    }

    /// <summary>Keeps what was reckoned of titles; null where there is nothing to say. It says no more than the ledger does, so whoever may read may have
    /// it reckoned: readers find the shelf as others do, whoever comes first.</summary>
    public Task<bool> KeepAsync(PressId press, IReadOnlyList<(MovedTitle Title, TitleOutlook? Outlook)> reckoned, CancellationToken cancel = default) =>
        database.WriteAsync(
            press,
            async db =>
            {
                foreach (var (title, outlook) in reckoned.OrderBy(one => one.Title.TitleId))
                {
                    await db.TitleOutlooks.Where(row => row.TitleId == title.TitleId && row.Moved == title.Moved).ExecuteUpdateAsync(
                        row => row.SetProperty(now => now.Reckoned, title.Moved)
                            .SetProperty(now => now.AsOf, outlook == null ? default : outlook.AsOf)
                            .SetProperty(now => now.OnHand, outlook == null ? 0L : outlook.OnHand)
                            .SetProperty(now => now.Days10, outlook == null ? 0d : outlook.Days10)
                            .SetProperty(now => now.Days50, outlook == null ? 0d : outlook.Days50)
                            .SetProperty(now => now.Days90, outlook == null ? 0d : outlook.Days90)
                            .SetProperty(now => now.RunsOutOn, outlook == null ? null : outlook.RunsOutOn),
                        cancel);
                }

                return true;
            },
            cancel,
            PressRole.Reader);

    /// <summary>The outlooks of some titles as they are kept; titles that have none are left out.</summary>
    public async Task<IReadOnlyDictionary<Guid, TitleOutlook>> OfTitlesAsync(PressId press, IReadOnlyCollection<Guid> titleIds, CancellationToken cancel = default) =>
        await database.ReadAsync(
            press,
            db => db.TitleOutlooks.Where(row => row.RunsOutOn != null && titleIds.Contains(row.TitleId))
                .ToDictionaryAsync(row => row.TitleId, row => new TitleOutlook(row.AsOf, row.OnHand, row.Days10, row.Days50, row.Days90, row.Moved), cancel),
            cancel);

    /// <summary>Titles with a printing on the shelf whose copies may be gone by a day, the first to go first.</summary>
    internal static async Task<List<RunningOut>> RunningOutAsync(PressRunDbContext db, DateOnly until, CancellationToken cancel)
    {
        var printings = await (
            from outlook in db.TitleOutlooks.Where(row => row.RunsOutOn <= until)
            join edition in db.Editions.Where(row => !row.Archived) on outlook.TitleId equals edition.TitleId
            join plan in db.RunPlans.Where(row => row.Chosen) on edition.Id equals plan.EditionId into plans
            from plan in plans.DefaultIfEmpty()
            orderby outlook.RunsOutOn, outlook.TitleId, edition.Printing descending
            select new
            {
                outlook.TitleId,
                RunsOutOn = outlook.RunsOutOn!.Value,
                Plan = plan == null ? null : new PlannedPrinting(outlook.TitleId, plan.Id, plan.Version, edition.Version),
            }).ToListAsync(cancel);
        return
        [
            .. printings.GroupBy(printing => (printing.TitleId, printing.RunsOutOn))
                .Select(title => new RunningOut(title.Key.TitleId, title.Key.RunsOutOn, title.Select(printing => printing.Plan).FirstOrDefault(plan => plan is not null))),
        ];
    }

    /// <summary>Has the title of a printing reckoned anew, since another event may be ahead of it; one that has no ledger has no outlook either.</summary>
    internal static Task<int> MarkAsync(PressRunDbContext db, Guid editionId, CancellationToken cancel) =>
        db.TitleOutlooks.Where(row => db.Editions.Any(edition => edition.Id == editionId && edition.TitleId == row.TitleId))
            .ExecuteUpdateAsync(row => row.SetProperty(now => now.Moved, now => now.Moved + 1), cancel);

    /// <summary>Marks the titles of some editions, into whose ledgers is written.</summary>
    internal static Task MarkAsync(PressRunDbContext db, IReadOnlyCollection<Guid> editionIds, CancellationToken cancel) =>
        db.Database.ExecuteSqlAsync(
            $"""
            INSERT INTO title_outlooks (press_id, title_id, moved, reckoned, as_of, on_hand, days10, days50, days90)
            SELECT DISTINCT press_id, title_id, 1, 0, DATE '0001-01-01', 0, 0, 0, 0 FROM editions WHERE press_id = {db.Press.Value} AND id = ANY({editionIds.ToArray()}) ORDER BY title_id
            ON CONFLICT (press_id, title_id) DO UPDATE SET moved = title_outlooks.moved + 1
            """,
            cancel);
}
