using Microsoft.EntityFrameworkCore;
using PressRun.Data.Shops;
using PressRun.Engine.Ladder;

namespace PressRun.Data.RunPlans;

/// <summary>Rows of a plan to its record and back.</summary>
internal static class PlanMapping
{
    /// <summary>Plans with all that their records hold, in one query.</summary>
    public static IQueryable<RunPlanRow> Whole(this IQueryable<RunPlanRow> plans) =>
        plans.Include(plan => plan.Stocks).Include(plan => plan.PriceList).AsSingleQuery();

    /// <summary>Many plans with all that their records hold; each price list is read once, however many plans go by it.</summary>
    public static async Task<List<RunPlanRow>> ToListWithListsAsync(this IQueryable<RunPlanRow> plans, PressRunDbContext db, CancellationToken cancel)
    {
        var rows = await plans.AsNoTracking().Include(plan => plan.Stocks).AsSingleQuery().ToListAsync(cancel);
        var listIds = rows.Select(plan => plan.PriceListId).Distinct().ToList();
        var lists = await db.PriceLists.AsNoTracking().Where(list => listIds.Contains(list.Id)).ToDictionaryAsync(list => list.Id, cancel);
        rows.ForEach(plan => plan.PriceList = lists[plan.PriceListId]);
        return rows;
    }

    public static PlanRecord ToRecord(this RunPlanRow row) => new(
        row.Id,
        row.EditionId,
        row.Name,
        row.PriceListId,
        row.PriceList.ShopId,
        row.Date,
        row.Quantity,
        row is { LadderFrom: { } from, LadderTo: { } to, LadderStep: { } step } ? new LadderRange(from, to, step) : null,
        row.Stocks.ToDictionary(stock => stock.PartId, stock => stock.StockId),
        row.Finishing,
        row.BenchSteps,
        row.Chosen,
        row.Version,
        row.Reprint)
    {
        SecondHalf = row.Stocks.Find(stock => stock.SecondStockId is not null) is { } half ? new PlanHalf(half.PartId, half.SecondStockId!) : null,
    };

    /// <summary>Takes everything from a record but its ids, its version and whether it is chosen.</summary>
    public static void Take(this RunPlanRow row, PlanRecord record)
    {
        (row.Name, row.PriceListId, row.Date, row.Quantity) = (record.Name, record.PriceListId, record.Date, record.Quantity);
        (row.LadderFrom, row.LadderTo, row.LadderStep) = (record.Ladder?.From, record.Ladder?.To, record.Ladder?.Step);
        (row.Finishing, row.BenchSteps) = (record.Finishing?.ToList(), record.BenchSteps?.ToList());
        row.Reprint = record.Reprint;
        row.Stocks.RemoveAll(stock => !record.Stocks.ContainsKey(stock.PartId));
        foreach (var (partId, stockId) in record.Stocks)
        {
            var stock = row.Stocks.Find(candidate => candidate.PartId == partId);
            if (stock is null)
            {
                stock = new PlanStockRow { PressId = row.PressId, PlanId = row.Id, PartId = partId };
                row.Stocks.Add(stock);
            }

            stock.StockId = stockId;
            stock.SecondStockId = record.SecondHalf is { } half && half.PartId == partId ? half.StockId : null;
        }
    }
}
