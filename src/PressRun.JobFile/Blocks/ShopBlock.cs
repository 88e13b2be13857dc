using System.Text.Json;
using PressRun.Engine.Costing;
using PressRun.Engine.Sheets;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Blocks;

/// <summary>Reads a shop by one of its price lists.</summary>
public static class ShopBlock
{
    private const string Rule = "Write a price list as an object with validFrom and either sheets, print and paper, or bookPrices.";
    private const string EitherRule = "A price list needs sheets, print and paper, unless it has bookPrices.";
    private const string SetUpRule = "Write set-up charges as { \"order\", \"edition\", \"part\" }.";
    private const string FinishingRule = "Write finishing as a list of { \"name\", \"per\", \"each\", \"minimum\" }.";
    private const string QuantitiesRule = "Write the quantities the shop sells as a list of whole numbers, rising.";

    /// <summary>Reads the job file's own shop, which has its name in itself.</summary>
    /// <param name="element">Its object.</param>
    /// <param name="path">Where it stands.</param>
    /// <param name="stockIds">Ids that prices may refer to; null where that cannot be told.</param>
    /// <param name="problems">Where problems go.</param>
    /// <returns>Null where it is no object; whole only where no problem was noted.</returns>
    public static Shop? Read(JsonElement element, JsonPath path, IReadOnlySet<string>? stockIds, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var name = block.Text("name", Need.May, JobRules.Name) ?? string.Empty;
        return ReadList(block, name, stockIds);
    }

    /// <summary>Reads a price list that stands under its shop and so has no name in itself.</summary>
    /// <param name="element">Its object.</param>
    /// <param name="path">Where it stands.</param>
    /// <param name="shopName">Name of the shop.</param>
    /// <param name="stockIds">Ids that prices may refer to; null where that cannot be told.</param>
    /// <param name="problems">Where problems go.</param>
    /// <returns>Null where it is no object; whole only where no problem was noted.</returns>
    public static Shop? ReadPriceList(JsonElement element, JsonPath path, string shopName, IReadOnlySet<string>? stockIds, ProblemList problems) =>
        JsonBlock.Open(element, path, problems, Rule) is { } block ? ReadList(block, shopName, stockIds) : null;

    private static Shop ReadList(JsonBlock block, string name, IReadOnlySet<string>? stockIds)
    {
        var validFrom = block.Day("validFrom", Need.Must) ?? default;
        var bookPrices = PriceBlock.ReadBooks(block, stockIds);
        var need = HasBookPrices(block) ? Need.May : Need.Must;
        var sheets = SheetBlock.ReadAll(block, need, EitherRule, out var sheetIds);
        var shop = new Shop(
            name,
            validFrom,
            sheets,
            PriceBlock.ReadPrint(block, need, sheetIds),
            PriceBlock.ReadPaper(block, need, sheetIds, stockIds),
            bookPrices,
            ReadQuantities(block),
            ReadSetUp(block),
            block.List("finishing", Need.May, FinishingRule, (item, place) => ReadFinishing(item, place, block.Problems), JobRules.MostEntries),
            block.Choice("collates", JobWords.Collating) ?? Collating.Never,
            block.Choice("layout", JobWords.Layouts) ?? Layout.Best,
            block.Number("spoilage", JobRules.RateBelowOne) ?? 0m,
            block.Choice("delivers", JobWords.Delivered),
            OrderBlock.ReadMember(block));
        block.Close();
        return shop;
    }

    // Whatever is wrong with book prices that are there is said beside them, and not as sheets that are missing.
    private static bool HasBookPrices(JsonBlock block) =>
        block.Take("bookPrices", Need.May, Rule) is { } list && (list.ValueKind != JsonValueKind.Array || list.GetArrayLength() > 0);

    private static SetUp ReadSetUp(JsonBlock shop)
    {
        if (shop.Block("setup", Need.May, SetUpRule) is not { } block)
        {
            return default;
        }

        var setUp = new SetUp(Charge("order"), Charge("edition"), Charge("part"));
        block.Close();
        return setUp;

        decimal Charge(string name) => block.Number(name, JobRules.Amount) ?? 0m;
    }

    private static Finishing? ReadFinishing(JsonElement element, JsonPath path, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, FinishingRule) is not { } block)
        {
            return null;
        }

        var finishing = new Finishing(
            block.Text("name", Need.May, JobRules.Name) ?? string.Empty,
            block.Choice("per", JobWords.FinishingUnits, Need.Must) ?? default,
            block.Number("each", JobRules.Amount) ?? 0m,
            block.Number("minimum", JobRules.Amount) ?? 0m);
        block.Close();
        return finishing;
    }

    private static List<int> ReadQuantities(JsonBlock shop)
    {
        var quantities = new List<int>();
        foreach (var (element, path) in shop.Items("quantities", Need.May, QuantitiesRule, most: Job.MostQuantities))
        {
            if (JsonBlock.NumberOf(element, JobRules.SoldQuantity) is not { } quantity)
            {
                shop.Problems.Add(path, element, JobRules.SoldQuantity.Sentence);
                continue;
            }

            if (quantities.Count > 0 && quantity <= quantities[^1])
            {
                shop.Problems.Add(path, element, "Quantities must rise: write more than the one before.");
            }

            quantities.Add((int)quantity);
        }

        return quantities;
    }
}
