using Microsoft.EntityFrameworkCore;
using PressRun.Data.Shops;

namespace PressRun.Data.RunPlans;

/// <summary>Plans are called by their shop until they get a name of their own: such a name follows the shop's. Frozen quotes keep theirs.</summary>
internal static class PlanNames
{
    // What the program adds to the shop's name stands behind this: "Willow Prints, half on Cream and half on White".
    private const string Parting = ", ";

    /// <summary>Gives the plans of a shop its new name, where they are called by the old one.</summary>
    public static async Task FollowAsync(PressRunDbContext db, ShopRow shop, string name, CancellationToken cancel)
    {
        var (old, longer) = (shop.Name, shop.Name + Parting);
        foreach (var plan in await db.RunPlans.Where(plan => plan.PriceList.ShopId == shop.Id && (plan.Name == old || plan.Name.StartsWith(longer))).ToListAsync(cancel))
        {
            var called = name + plan.Name[old.Length..];
            plan.Name = called.Length > PlanRules.MostName ? called[..PlanRules.MostName] : called;
        }
    }
}
