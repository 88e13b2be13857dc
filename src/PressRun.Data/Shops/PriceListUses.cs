using Microsoft.EntityFrameworkCore;
using PressRun.Data.RunPlans;

namespace PressRun.Data.Shops;

/// <summary>Which plans go by a price list.</summary>
internal static class PriceListUses
{
    public static Task<IReadOnlyList<string>> OfShopAsync(PressRunDbContext db, string shopId, CancellationToken cancel) =>
        TellAsync(db.RunPlans.Where(plan => plan.PriceList.ShopId == shopId), cancel);

    public static Task<IReadOnlyList<string>> OfListAsync(PressRunDbContext db, Guid listId, CancellationToken cancel) =>
        TellAsync(db.RunPlans.Where(plan => plan.PriceListId == listId), cancel);

    /// <summary>Plans by title, printing, and the order in which they were made.</summary>
    public static IQueryable<RunPlanRow> InOrder(IQueryable<RunPlanRow> plans) =>
        plans.OrderBy(plan => plan.Edition.Title.SearchText).ThenBy(plan => plan.Edition.Printing).ThenBy(plan => plan.Position);

    private static async Task<IReadOnlyList<string>> TellAsync(IQueryable<RunPlanRow> plans, CancellationToken cancel)
    {
        var uses = await InOrder(plans)
            .Select(plan => new { plan.Edition.Title.Title, plan.Edition.Printing, plan.Name }).ToListAsync(cancel);
        return uses.ConvertAll(use => $"{use.Title}, printing {use.Printing}: plan {use.Name}");
    }
}
