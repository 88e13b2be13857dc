using PressRun.Data.RunPlans;
using PressRun.Data.Shops;
using PressRun.Engine.Costing;

namespace PressRun.Web.Libraries.Files;

/// <summary>A plan that comes to cost another sum.</summary>
/// <param name="Source">The plan as it stands.</param>
/// <param name="Before">What its run costs; null where that cannot be worked out.</param>
/// <param name="After">What it would cost; null where that could not be worked out any more.</param>
public sealed record ChangedPlan(JobSource Source, decimal? Before, decimal? After);

/// <summary>What a changed price list does to the plans that go by it.</summary>
/// <param name="Plans">How many go by it.</param>
/// <param name="NotLooked">How many of them were not looked at, because they are too many.</param>
/// <param name="Changed">Those that come to cost another sum, in the order of their titles.</param>
public sealed record PlanChanges(int Plans, int NotLooked, IReadOnlyList<ChangedPlan> Changed)
{
    /// <summary>So many plans are looked at.</summary>
    public const int MostLooked = 200;

    /// <summary>How many there are beside those that are named, changed or not looked at.</summary>
    /// <param name="named">So many are named at most.</param>
    public int Beside(int named) => Math.Max(0, Changed.Count - named) + NotLooked;

    /// <summary>Works plans out by their list as it would be, on their own day and postage.</summary>
    /// <param name="plans">How many go by the list.</param>
    /// <param name="looked">Those that are looked at.</param>
    /// <param name="list">The list as it would be.</param>
    public static PlanChanges Of(int plans, IReadOnlyList<JobSource> looked, Shop list) => new(
        plans,
        plans - looked.Count,
        [
            .. looked.Select(source => (Source: source, Priced: Repricing.Of(source, new PriceListRecord(source.Plan.PriceListId, source.Plan.ShopId, list, 0), source.Plan.Date)))
                .Select(plan => new ChangedPlan(plan.Source, plan.Priced.Before?.Totals.LandedCost, plan.Priced.After?.Totals.LandedCost))
                .Where(plan => plan.Before != plan.After),
        ]);
}
