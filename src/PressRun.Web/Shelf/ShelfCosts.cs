using Microsoft.Extensions.Caching.Memory;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;
using PressRun.Web.Charts;

namespace PressRun.Web.Shelf;

/// <summary>A plan to be costed, as it stands.</summary>
/// <param name="PlanId">The plan.</param>
/// <param name="PlanVersion">Its row version.</param>
/// <param name="EditionVersion">Its edition's row version.</param>
public sealed record CostedPlan(Guid PlanId, uint PlanVersion, uint EditionVersion);

/// <summary>What the shelf says of a printing's costing.</summary>
/// <param name="UnitCost">Landed cost of a copy, not rounded; null where it cannot be worked out.</param>
/// <param name="IsPaidFor">False where it cannot be worked out, or is not paid for within its copies for sale.</param>
/// <param name="Shape">For the drawing, with a plain cover; null where it cannot be drawn.</param>
/// <param name="LeadDays">Days from an order to finished copies; 0 where it cannot be worked out.</param>
public sealed record ShelfCost(decimal? UnitCost, bool IsPaidFor, BookShape? Shape, int LeadDays);

/// <summary>Costs printings for the shelf, and remembers them: a search costs anew only what changed since. What is remembered goes by the versions of
/// all that a costing is made of, so that it can grow old but never be wrong.</summary>
public sealed class ShelfCosts(PlanStore plans) : IDisposable
{
    // About a kilobyte each.
    private const int Most = 20_000;

    private readonly MemoryCache known = new(new MemoryCacheOptions { SizeLimit = Most });

    /// <summary>What is known of plans, by their ids. A plan that was taken out in between is left out.</summary>
    /// <param name="press">Whose plans.</param>
    /// <param name="mark">Of all that they are costed by beside themselves, read before this.</param>
    /// <param name="wanted">The plans.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public async Task<IReadOnlyDictionary<Guid, ShelfCost>> OfAsync(PressId press, string mark, IReadOnlyList<CostedPlan> wanted, CancellationToken cancel)
    {
        var found = new Dictionary<Guid, ShelfCost>();
        var missing = new List<CostedPlan>();
        foreach (var plan in wanted)
        {
            if (known.Get<ShelfCost>(Key(plan)) is { } cost)
            {
                found[plan.PlanId] = cost;
            }
            else
            {
                missing.Add(plan);
            }
        }

        if (missing.Count > 0)
        {
            var sources = await plans.SourcesAsync(press, [.. missing.Select(plan => plan.PlanId)], cancel);
            foreach (var plan in missing.Where(plan => sources.ContainsKey(plan.PlanId)))
            {
                found[plan.PlanId] = known.Set(Key(plan), WorkOut(sources[plan.PlanId]), new MemoryCacheEntryOptions { Size = 1 });
            }
        }

        return found;

        (PressId Press, string Mark, CostedPlan Plan) Key(CostedPlan plan) => (press, mark, plan);
    }

    /// <inheritdoc/>
    public void Dispose() => known.Dispose();

    private static ShelfCost WorkOut(JobSource source)
    {
        if (PreparedJob.Prepare(source.Build()) is not { Succeeded: true, Value: var prepared })
        {
            return new ShelfCost(null, false, null, 0);
        }

        var answer = prepared.Estimate(source.Edition.CopiesPrinted ?? source.Plan.Quantity) is { Succeeded: true, Value: var estimate } ? estimate : null;
        return new ShelfCost(
            answer?.UnitCost,
            answer?.BreakEven is { WithinRun: true } or { NetPerCopy: null },
            BookShape.Of(prepared.Block, prepared.Impose(), BookShape.PlainCover),
            answer is null ? 0 : LeadTime.Days(source.PriceList.Order.LeadDays, answer));
    }
}
