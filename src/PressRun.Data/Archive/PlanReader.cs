using System.Text.Json;
using PressRun.Data.RunPlans;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.JobFile;
using PressRun.JobFile.Blocks;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Archive;

/// <summary>Reads run plans against the shops, the bench and the stocks that they refer to.</summary>
internal sealed class PlanReader(IReadOnlyList<ArchivedShop> shops, BenchRates bench, IReadOnlySet<string>? stockIds)
{
    private const string Rule = "Write a plan as { \"name\", \"shop\", \"date\", \"quantity\" } and, where they differ, ladder, stocks, halves, finishing, benchSteps, reprint and outlook.";
    private const string StocksRule = "Write other papers as an object: the part's name and the stock's id.";
    private const string NamesRule = "Write names as a list of texts.";

    private readonly HashSet<string> shopIds = [.. shops.Select(shop => shop.Id)];

    public ArchivedPlan? Read(JsonElement element, JsonPath path, IReadOnlyList<Part> parts, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var shopId = block.Text("shop", Need.Must, JobRules.Id);
        Keys.CheckKnown(shopId, shopIds, path.Member("shop"), "shop", problems);
        var date = Moments.Day(block, "date", Need.Must);
        var list = FindList(block, shopId, date);
        var (stocks, half) = ReadPapers(block, parts);
        var plan = new ArchivedPlan(
            block.Text("name", Need.Must, ArchiveWords.Name) ?? "",
            shopId ?? "",
            list?.ValidFrom ?? default,
            date ?? default,
            block.Count("quantity", JobRules.Copies, Need.Must) ?? 0,
            LadderBlock.ReadMember(block),
            block.Flag("chosen") ?? false,
            stocks,
            ReadNames(block, "finishing", list?.Finishing.Select(operation => operation.Name), "finishing operation of the list"),
            ReadNames(block, "benchSteps", bench.Steps.Select(step => step.Name), "bench step"),
            ReprintShape.ReadMembers(block))
        {
            SecondHalf = half,
        };
        block.Close();
        return plan;
    }

    // The list in force on the plan's date, unless the plan keeps another one and names its first day.
    private Shop? FindList(JsonBlock block, string? shopId, DateOnly? date)
    {
        var kept = block.Day("priceList", Need.May);
        var lists = shops.FirstOrDefault(shop => shop.Id == shopId)?.PriceLists;
        if (lists is null || date is null)
        {
            return null;
        }

        var list = kept is null
            ? lists.Where(candidate => candidate.ValidFrom <= date).MaxBy(candidate => candidate.ValidFrom)
            : lists.FirstOrDefault(candidate => candidate.ValidFrom == kept);
        if (list is null)
        {
            var name = kept is null ? "date" : "priceList";
            block.Problems.Add(
                block.Path.Member(name), FormattableString.Invariant($"{kept ?? date:yyyy-MM-dd}"),
                kept is null ? "The shop has no price list in force on this day." : "The shop has no price list from this day.");
        }

        return list;
    }

    // A part of which each half of the run has a paper stands among the plan's own papers with the first.
    private (Dictionary<string, string> Stocks, (string Part, string StockId)? Half) ReadPapers(JsonBlock plan, IReadOnlyList<Part> parts)
    {
        var stocks = ReadStocks(plan, parts);
        if (HalvesBlock.Read(plan, parts, stockIds) is not var (place, second))
        {
            return (stocks, null);
        }

        var part = parts[place];
        stocks.TryAdd(part.Name, part.StockId);
        if (stocks[part.Name] == second)
        {
            plan.Problems.Add(plan.Path.Member(HalvesBlock.Name).Member("second"), second, "Name two papers for the part, one for each half of the run.");
        }

        return (stocks, (part.Name, second));
    }

    private Dictionary<string, string> ReadStocks(JsonBlock plan, IReadOnlyList<Part> parts)
    {
        var stocks = new Dictionary<string, string>(StringComparer.Ordinal);
        if (plan.Block("stocks", Need.May, StocksRule) is not { } block)
        {
            return stocks;
        }

        var names = parts.Select(part => part.Name).ToHashSet(StringComparer.Ordinal);
        foreach (var (name, _) in block.Members)
        {
            Keys.CheckKnown(name, names, block.Path.Member(name), "part of the edition", block.Problems);
            if (block.Text(name, Need.Must, JobRules.Id) is { } stock)
            {
                Keys.CheckKnown(stock, stockIds, block.Path.Member(name), "stock", block.Problems);
                stocks[name] = stock;
            }
        }

        return stocks;
    }

    private static List<string>? ReadNames(JsonBlock block, string member, IEnumerable<string>? known, string what)
    {
        if (!block.Has(member))
        {
            block.Take(member, Need.May, NamesRule);
            return null;
        }

        var names = new List<string>();
        var choices = known?.ToHashSet(StringComparer.Ordinal);
        foreach (var (element, path) in block.Items(member, Need.May, NamesRule))
        {
            if (element.ValueKind != JsonValueKind.String)
            {
                block.Problems.Add(path, element, NamesRule);
                continue;
            }

            Keys.CheckKnown(element.GetString(), choices, path, what, block.Problems);
            names.Add(element.GetString()!);
        }

        return names;
    }
}
