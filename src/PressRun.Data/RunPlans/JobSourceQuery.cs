using Microsoft.EntityFrameworkCore;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;

namespace PressRun.Data.RunPlans;

/// <summary>Reads what plans need to be costed; the libraries once for all of them.</summary>
internal static class JobSourceQuery
{
    public static async Task<IReadOnlyDictionary<Guid, JobSource>> LoadAsync(
        PressRunDbContext db, IReadOnlyCollection<Guid> planIds, CancellationToken cancel)
    {
        var plans = await db.RunPlans.Where(plan => planIds.Contains(plan.Id)).ToListWithListsAsync(db, cancel);
        if (plans.Count == 0)
        {
            return new Dictionary<Guid, JobSource>();
        }

        var editionIds = plans.Select(plan => plan.EditionId).Distinct().ToList();
        var editions = (await db.Editions.AsNoTracking().Whole().Where(edition => editionIds.Contains(edition.Id)).ToListAsync(cancel))
            .ToDictionary(edition => edition.Id, edition => edition.ToRecord());
        var press = (await db.Presses.AsNoTracking().SingleAsync(row => row.Id == db.Press, cancel)).ToRecord();
        var shops = await db.Shops.AsNoTracking().ToDictionaryAsync(shop => shop.Id, shop => shop.Name, cancel);
        var stocks = await db.Stocks.AsNoTracking().InOrder().ToListAsync(cancel);
        var bench = await db.Benches.AsNoTracking().SingleOrDefaultAsync(cancel);
        var mailers = await db.Mailers.AsNoTracking().InOrder().ToListAsync(cancel);
        var services = await db.PostageServices.AsNoTracking().Where(service => !service.Archived).InOrder().ToListAsync(cancel);
        var channels = await db.Channels.AsNoTracking().Where(channel => !channel.Archived).InOrder().ToListAsync(cancel);
        var common = new
        {
            Stocks = stocks.ConvertAll(row => row.ToItem()),
            Mailers = mailers.ConvertAll(row => row.ToItem()),
            Services = services.ConvertAll(row => row.ToItem()),
            Channels = channels.ConvertAll(row => row.ToItem()),
        };
        return plans.ToDictionary(
            plan => plan.Id,
            plan => new JobSource(
                press,
                editions[plan.EditionId],
                plan.ToRecord(),
                plan.PriceList.Body with { Name = shops[plan.PriceList.ShopId] },
                common.Stocks,
                bench?.Rates ?? BenchRates.None,
                common.Mailers,
                common.Services,
                common.Channels));
    }
}
