using PressRun.Data;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Shops;
using PressRun.Engine.Costing;

namespace PressRun.Web.Libraries;

/// <summary>A line of a costing that is not the same at two dates.</summary>
/// <param name="Line">The line at either date, for its words.</param>
/// <param name="Before">What it came to.</param>
/// <param name="After">What it comes to.</param>
public sealed record RepricedLine(CostLine Line, decimal Before, decimal After);

/// <summary>A plan as it would be by the prices and the postage of another day.</summary>
/// <param name="Source">The plan as it stands.</param>
/// <param name="Plan">The plan as it would be saved.</param>
/// <param name="ListFrom">First day of the list it would go by.</param>
/// <param name="Before">The costing as it stands; null where it cannot be worked out.</param>
/// <param name="After">The costing as it would be; null where it cannot be worked out.</param>
/// <param name="Lines">Lines that change, in the order of the costing.</param>
/// <param name="Problems">What stands in the way of the new costing.</param>
public sealed record Repricing(
    JobSource Source, PlanRecord Plan, DateOnly ListFrom, Estimate? Before, Estimate? After, IReadOnlyList<RepricedLine> Lines, IReadOnlyList<Problem> Problems)
{
    /// <summary>True where the plan goes by that day already.</summary>
    public bool IsSame => Plan.PriceListId == Source.Plan.PriceListId && Plan.Date == Source.Plan.Date;
}

/// <summary>Works a plan out by the prices of another day, and saves it so where a person asks for it.</summary>
public sealed class RepriceService(PlanStore plans, PriceListStore lists)
{
    /// <summary>The plan by the list of its shop that is in force on a day, and the postage of that day.</summary>
    /// <returns>Null where the plan is gone; a sentence where its shop has no list that early.</returns>
    public async Task<(Repricing? Repricing, string? Problem)> TryAsync(PressId press, Guid plan, DateOnly on)
    {
        if (await plans.SourceAsync(press, plan) is not { } source)
        {
            return (null, "This plan has been taken out in between.");
        }

        if (await lists.InForceAsync(press, source.Plan.ShopId, on) is not { } list)
        {
            return (null, $"{source.PriceList.Name} has no price list that was in force on that day.");
        }

        // A plan that named none of the finishing takes all of it; one that did keeps what the new list still has.
        var changed = source.Plan with { PriceListId = list.Id, Date = on };
        var before = Estimated(source);
        var after = Estimated(source with { Plan = changed, PriceList = list.Prices });
        return (
            new Repricing(
                source,
                changed,
                list.Prices.ValidFrom,
                before.Succeeded ? before.Value : null,
                after.Succeeded ? after.Value : null,
                before.Succeeded && after.Succeeded ? Compared(before.Value, after.Value) : [],
                after.Problems),
            null);
    }

    /// <summary>Saves a plan as it was tried. Answers null when it is saved, otherwise what stands in the way.</summary>
    public async Task<string?> ApplyAsync(PressId press, Repricing repricing) => await plans.SaveAsync(press, repricing.Plan) switch
    {
        SaveResult<PlanRecord>.Saved => null,
        SaveResult<PlanRecord>.Refused refused => string.Join(" ", refused.Problems.Select(problem => problem.Rule)),
        SaveResult<PlanRecord>.Conflict => "Somebody else changed this plan in between. Look at it again before it gets other prices.",
        _ => "This plan has been taken out in between.",
    };

    private static Outcome<Estimate> Estimated(JobSource source)
    {
        var prepared = PreparedJob.Prepare(source.Build());
        return prepared.Succeeded ? prepared.Value.Estimate(source.Plan.Quantity) : Outcome<Estimate>.Refused(prepared.Problems);
    }

    // Steps that count each for its own give several lines for one thing; they are one here.
    private static List<RepricedLine> Compared(Estimate before, Estimate after)
    {
        var was = before.Lines.ToLookup(line => (line.Code, line.Subject));
        var becomes = after.Lines.ToLookup(line => (line.Code, line.Subject));
        return
        [
            .. was.Select(lines => lines.Key).Union(becomes.Select(lines => lines.Key)).OrderBy(key => key.Code)
                .Select(key => new RepricedLine(was[key].Concat(becomes[key]).First(), was[key].Sum(line => line.Amount), becomes[key].Sum(line => line.Amount)))
                .Where(line => line.Before != line.After),
        ];
    }
}
