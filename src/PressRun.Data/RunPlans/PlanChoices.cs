using Microsoft.EntityFrameworkCore;

namespace PressRun.Data.RunPlans;

/// <summary>
/// Keeps plans as they were when a shop or the bench begins to do more. A plan that names no operations takes all there are, so before one more
/// is stored, the plan names those that it took until then. Otherwise its cost would change without anyone changing the plan.
/// </summary>
internal static class PlanChoices
{
    /// <summary>Before operations are added to a price list: the plans that go by it name those it had.</summary>
    public static async Task KeepFinishingAsync(
        PressRunDbContext db, Guid priceListId, IEnumerable<string> before, IEnumerable<string> after, CancellationToken cancel)
    {
        var had = before.ToList();
        if (after.Except(had, StringComparer.Ordinal).Any())
        {
            await db.RunPlans.Where(plan => plan.PriceListId == priceListId && plan.Finishing == null)
                .ExecuteUpdateAsync(change => change.SetProperty(plan => plan.Finishing, had), cancel);
        }
    }

    /// <summary>Before steps are added to the bench: every plan of the press that names none names those it had.</summary>
    public static async Task KeepStepsAsync(PressRunDbContext db, IEnumerable<string> before, IEnumerable<string> after, CancellationToken cancel)
    {
        var had = before.ToList();
        if (after.Except(had, StringComparer.Ordinal).Any())
        {
            await db.RunPlans.Where(plan => plan.BenchSteps == null).ExecuteUpdateAsync(change => change.SetProperty(plan => plan.BenchSteps, had), cancel);
        }
    }
}
