using System.Text.Json;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Blocks;

/// <summary>Reads print, paper and whole-book prices.</summary>
internal static class PriceBlock
{
    private const string PrintRule = "Write print prices as a list of { \"ink\", \"sheet\", \"steps\", \"rule\" }.";
    private const string PaperRule = "Write paper prices as a list of { \"stock\", \"sheet\", \"steps\", \"rule\" }.";
    private const string BookRule = "Write book prices as a list of { \"binding\", \"pagesFrom\", \"pagesTo\", \"stocks\", \"steps\" }.";
    // A price for each stock on each of a few sheets.
    private const int MostPaperPrices = 2_000;
    private const string StocksRule = "Write the stocks of the parts, from the outside in, as a list of their ids.";

    /// <summary>Print prices; ink and sheet together must differ.</summary>
    public static IReadOnlyList<PrintPrice> ReadPrint(JsonBlock shop, Need need, IReadOnlySet<string>? sheetIds)
    {
        var taken = new HashSet<(Ink Ink, string SheetId)>();
        return shop.List("print", need, PrintRule, (element, path) =>
        {
            if (JsonBlock.Open(element, path, shop.Problems, PrintRule) is not { } block)
            {
                return null;
            }

            var ink = block.Choice("ink", JobWords.PrintedInks, Need.Must);
            var sheet = ReadSheetId(block, sheetIds);
            if (ink is { } known && sheet is not null)
            {
                var both = $"{JobWords.Inks.Of(known)} on {sheet}";
                Keys.CheckOnce(taken, (known, sheet), path, both, "This ink has a price for this sheet already; keep one of them.", shop.Problems);
            }

            var price = new PrintPrice(ink ?? default, sheet ?? string.Empty, Steps.ReadPrices(block), ReadRule(block));
            block.Close();
            return price;
        }, JobRules.MostEntries);
    }

    /// <summary>Paper prices; stock and sheet together must differ.</summary>
    public static IReadOnlyList<PaperPrice> ReadPaper(JsonBlock shop, Need need, IReadOnlySet<string>? sheetIds, IReadOnlySet<string>? stockIds)
    {
        var taken = new HashSet<(string StockId, string SheetId)>();
        return shop.List("paper", need, PaperRule, (element, path) =>
        {
            if (JsonBlock.Open(element, path, shop.Problems, PaperRule) is not { } block)
            {
                return null;
            }

            var stock = block.Text("stock", Need.Must, JobRules.Id);
            Keys.CheckKnown(stock, stockIds, path.Member("stock"), "stock", shop.Problems);
            var sheet = ReadSheetId(block, sheetIds);
            if (stock is not null && sheet is not null)
            {
                Keys.CheckOnce(
                    taken, (stock, sheet), path, $"{stock} on {sheet}", "This stock has a price for this sheet already; keep one of them.", shop.Problems);
            }

            var price = new PaperPrice(stock ?? string.Empty, sheet ?? string.Empty, Steps.ReadPrices(block), ReadRule(block));
            block.Close();
            return price;
        }, MostPaperPrices);
    }

    /// <summary>Whole-book prices; several may fit one book, the first of them wins.</summary>
    public static IReadOnlyList<BookPrice> ReadBooks(JsonBlock shop, IReadOnlySet<string>? stockIds) =>
        shop.List("bookPrices", Need.May, BookRule, (element, path) =>
        {
            if (JsonBlock.Open(element, path, shop.Problems, BookRule) is not { } block)
            {
                return null;
            }

            var binding = block.Choice("binding", JobWords.Bindings, Need.Must) ?? default;
            var from = block.Count("pagesFrom", JobRules.Pages);
            var to = block.Count("pagesTo", JobRules.Pages);
            if (to < from)
            {
                var written = block.Take("pagesTo", Need.May, BookRule)!.Value;
                shop.Problems.Add(path.Member("pagesTo"), written, "The most pages must not be fewer than the fewest, pagesFrom.");
            }

            var price = new BookPrice(binding, from ?? 1, to ?? Job.MostPages, ReadStockIds(block, stockIds), Steps.ReadBooks(block));
            block.Close();
            return price;
        }, JobRules.MostEntries);

    private static List<string>? ReadStockIds(JsonBlock block, IReadOnlySet<string>? known)
    {
        var ids = new List<string>();
        foreach (var (element, path) in block.Items("stocks", Need.May, StocksRule, most: JobRules.MostEntries))
        {
            if (element.ValueKind == JsonValueKind.String && element.GetString() is { } id && JobRules.Id.Holds(id))
            {
                Keys.CheckKnown(id, known, path, "stock", block.Problems);
                ids.Add(id);
            }
            else
            {
                block.Problems.Add(path, element, JobRules.Id.Sentence);
            }
        }

        return block.Has("stocks") ? ids : null;
    }

    private static string? ReadSheetId(JsonBlock block, IReadOnlySet<string>? sheetIds)
    {
        var sheet = block.Text("sheet", Need.Must, JobRules.Id);
        Keys.CheckKnown(sheet, sheetIds, block.Path.Member("sheet"), "sheet", block.Problems);
        return sheet;
    }

    private static StepRule ReadRule(JsonBlock block) => block.Choice("rule", JobWords.StepRules) ?? StepRule.AllUnits;
}
