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

    /// <summary>A plan by another list of its shop and the postage of another day. Of the shop's finishing that the plan names it keeps what the list still has.</summary>
    public static Repricing Of(JobSource source, PriceListRecord list, DateOnly on)
    {
        var changed = source.Plan with { PriceListId = list.Id, Date = on };
        var before = Estimated(source);
        var after = Estimated(source with { Plan = changed, PriceList = list.Prices });
        return new Repricing(
            source,
            changed,
            list.Prices.ValidFrom,
            before.Succeeded ? before.Value : null,
            after.Succeeded ? after.Value : null,
            before.Succeeded && after.Succeeded ? Compared(before.Value, after.Value) : [],
            after.Problems);
    }

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


/// <summary>Works a plan out by the prices of another day.</summary>
public sealed class RepriceService(PriceListStore lists)
{
    /// <summary>The plan by the list of its shop that is in force on a day, and the postage of that day.</summary>
    /// <returns>A sentence where its shop has no list that early.</returns>
    public async Task<(Repricing? Repricing, string? Problem)> TryAsync(JobSource source, DateOnly on) =>
        await lists.InForceAsync(source.Press.Id, source.Plan.ShopId, on) is { } list
            ? (Repricing.Of(source, list, on), null)
            : (null, Say($"{source.PriceList.Name} has no price list that was in force on that day."));
}
