using System.Globalization;
using Microsoft.EntityFrameworkCore;
using PressRun.Data.Conversions;
using PressRun.Engine.Costing;
using PressRun.Engine.Reprint;

namespace PressRun.Data.RunPlans;

/// <summary>What a plan must keep to be stored.</summary>
internal static class PlanRules
{
    /// <summary>Longest name of a plan.</summary>
    public const int MostName = 200;

    public static async Task<List<Problem>> CheckAsync(PressRunDbContext db, PlanRecord plan, CancellationToken cancel)
    {
        var problems = NameProblems(plan.Name);
        if (plan.Quantity is < 1 or > Job.MostCopies)
        {
            problems.Add(new Problem("$.quantity", plan.Quantity.ToString(CultureInfo.InvariantCulture), "A run is 1 to 1,000,000 copies."));
        }

        if (plan.Ladder is { } ladder
            && (ladder.From < 1 || ladder.To < ladder.From || ladder.Step < 1 || ladder.To > Job.MostCopies || ladder.Count > Job.MostQuantities))
        {
            problems.Add(new Problem(
                "$.ladder", $"{ladder.From} to {ladder.To} by {ladder.Step}", "A ladder rises from 1 or more by 1 or more, over at most 10,000 quantities."));
        }

        if (!await db.PriceLists.AnyAsync(list => list.Id == plan.PriceListId, cancel))
        {
            problems.Add(new Problem("$.priceList", plan.PriceListId.ToString(), "Choose one of the press's price lists."));
        }

        if (plan.Reprint is { } reprint)
        {
            problems.AddRange(Contract.Problems(
                json => ReprintShape.WriteMembers(json, reprint, Contract.NoCurrency), (element, path, found) => ReprintShape.Read(element, path, found)));
            problems.AddRange(DemandDistribution.Of(reprint.Request.Demand).Problems);
        }

        await StocksAsync(problems, db, plan, cancel);
        return problems;
    }

    /// <summary>What is wrong with a plan's name; empty where nothing is.</summary>
    public static List<Problem> NameProblems(string name) => !PlainText.Shows(name)
        ? [new Problem("$.name", name, "A plan needs a name.")]
        : name.Length > MostName || !PlainText.IsStill(name) ? [new Problem("$.name", null, $"Write a plan's name on one line, at most {MostName} characters.")] : [];

    private static async Task StocksAsync(List<Problem> problems, PressRunDbContext db, PlanRecord plan, CancellationToken cancel)
    {
        var parts = await db.Parts.Where(part => part.EditionId == plan.EditionId).Select(part => part.Id).ToListAsync(cancel);
        if (plan.SecondHalf is { } half && (!plan.Stocks.TryGetValue(half.PartId, out var first) || first == half.StockId))
        {
            problems.Add(new Problem("$.halves", half.StockId, "Name two papers for the part, one for each half of the run."));
        }

        var wanted = plan.Stocks.Values.Append(plan.SecondHalf?.StockId).OfType<string>().Distinct().ToList();
        var known = await db.Stocks.Where(stock => wanted.Contains(stock.Id)).Select(stock => stock.Id).ToListAsync(cancel);
        foreach (var (partId, stockId) in plan.Stocks)
        {
            if (!parts.Contains(partId))
            {
                problems.Add(new Problem("$.stocks", partId.ToString(), "Name a part of the plan's edition."));
            }

        }

        problems.AddRange(wanted.Except(known, StringComparer.Ordinal).Select(unknown => new Problem("$.stocks", unknown, "Choose one of the press's stocks.")));
    }
}
