using PressRun.Data.RunPlans;
using PressRun.Data.Shops;
using PressRun.Data.Titles;
using PressRun.Web.Reprint;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.RunPlans;

/// <summary>Two versions of one plan as it is stored.</summary>
public static class PlanVersions
{
    /// <summary>True where both say the same, whatever their row versions.</summary>
    public static bool Same(PlanRecord first, PlanRecord second) =>
        first with { Stocks = second.Stocks, Finishing = second.Finishing, BenchSteps = second.BenchSteps, Version = second.Version } == second
        && first.Stocks.Count == second.Stocks.Count
        && first.Stocks.All(stock => second.Stocks.TryGetValue(stock.Key, out var other) && other == stock.Value)
        && Same(first.Finishing, second.Finishing)
        && Same(first.BenchSteps, second.BenchSteps);

    /// <summary>Every field in which two versions differ, in words.</summary>
    /// <param name="first">One version.</param>
    /// <param name="second">The other.</param>
    /// <param name="source">What the plan is costed from: its parts, papers, and the operations there are.</param>
    /// <param name="shops">The press's shops with their price lists.</param>
    /// <param name="format">How figures are written.</param>
    public static IReadOnlyList<(string What, string First, string Second)> Differences(
        PlanRecord first, PlanRecord second, JobSource source, IReadOnlyList<ShopRecord> shops, PressFormat format)
    {
        var differences = new List<(string, string, string)>();
        void Compare(string what, Func<PlanRecord, string> words)
        {
            if (words(first) is var one && words(second) is var two && one != two)
            {
                differences.Add((what, one, two));
            }
        }

        Compare(Say($"Called"), plan => plan.Name);
        Compare(Say($"Shop"), plan => shops.FirstOrDefault(shop => shop.Id == plan.ShopId)?.Name ?? plan.ShopId);
        Compare(Say($"Prices from"), plan => List(plan, shops) is { } list ? format.Day(list.ValidFrom) : Say($"another list"));
        Compare(Say($"Copies"), plan => format.Count(plan.Quantity));
        foreach (var part in source.Edition.Parts)
        {
            Compare(Say($"Paper of {part.Part.Name}"), plan => Paper(plan, part, source));
        }

        Compare(Say($"The shop does"), plan => Listed(plan.Finishing, source.PriceList.Finishing.Select(operation => operation.Name)));
        Compare(Say($"You do"), plan => Listed(plan.BenchSteps, source.Bench.Steps.Select(step => step.Name)));
        Compare(Say($"Postage as of"), plan => format.Day(plan.Date));
        Compare(Say($"Quantities shown"), plan => plan.Ladder is { } range ? Say($"{format.Count(range.From)} to {format.Count(range.To)}") : Say($"around the run"));
        Compare(Say($"Decided from"), plan => ReprintWords.Of(plan.Reprint, format));
        return differences;
    }

    private static bool Same(IReadOnlyList<string>? first, IReadOnlyList<string>? second) =>
        first is null ? second is null : second is not null && first.SequenceEqual(second, StringComparer.Ordinal);

    private static PriceListHead? List(PlanRecord plan, IReadOnlyList<ShopRecord> shops) =>
        shops.SelectMany(shop => shop.PriceLists).FirstOrDefault(list => list.Id == plan.PriceListId);

    private static string Paper(PlanRecord plan, EditionPart part, JobSource source)
    {
        var id = plan.Stocks.TryGetValue(part.Id, out var own) ? own : part.Part.StockId;
        return plan.SecondHalf is { } half && half.PartId == part.Id ? Say($"{Name(id)}, the second half on {Name(half.StockId)}") : Name(id);

        string Name(string stockId) => source.Stocks.FirstOrDefault(stock => stock.Id == stockId)?.Name ?? stockId;
    }

    private static string Listed(IReadOnlyList<string>? taken, IEnumerable<string> all) =>
        string.Join(", ", taken ?? [.. all]) is { Length: > 0 } words ? words : Say("what is done by somebody", $"nothing");
}
