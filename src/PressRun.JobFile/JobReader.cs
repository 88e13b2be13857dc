using System.Text.Json;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.JobFile.Blocks;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile;

/// <summary>Reads job files. Every problem of a file is found in one pass, each with its path, its value and the rule it breaks.</summary>
public static class JobReader
{
    /// <summary>The only schema there is.</summary>
    public const string Schema = "pressrun/job/1";

    private const string Rule = "Write a job file: an object with schema, date, currency, edition, stocks, shop and quantity.";
    private const string SchemaRule = "Write \"pressrun/job/1\".";
    private const string EditionRule = "Write the edition as an object with page, binding and parts.";
    private const string ShopRule = "Write the shop as an object with validFrom and either sheets, print and paper, or bookPrices.";

    private static readonly TextRule Currency = new("Write the ISO 4217 code of a currency in capitals, such as \"USD\".", 3, false);
    private static readonly TextRule SchemaName = new(SchemaRule, 100, false);

    /// <summary>Reads a job from a file's bytes.</summary>
    /// <param name="utf8">At most <see cref="JobRules.MostBytes"/> bytes.</param>
    public static Outcome<Job> Read(ReadOnlyMemory<byte> utf8)
    {
        var opened = JsonText.Open(utf8, JobRules.MostBytes);
        if (!opened.Succeeded)
        {
            return Outcome<Job>.Refused(opened.Problems);
        }

        using var document = opened.Value;
        return Read(document.RootElement);
    }

    /// <summary>Reads a job from an open document.</summary>
    /// <param name="element">From <see cref="JsonText.Open"/>.</param>
    public static Outcome<Job> Read(JsonElement element)
    {
        var problems = new ProblemList();
        var job = JsonBlock.Open(element, JsonPath.Root, problems, Rule) is { } block ? ReadJob(block) : null;
        return problems.OutcomeOf(job);
    }

    /// <summary>Reads a job and prepares it, so that every rule of the file and of the costing is checked.</summary>
    public static Outcome<PreparedJob> Prepare(JsonElement element)
    {
        var read = Read(element);
        return read.Succeeded ? PreparedJob.Prepare(read.Value) : Outcome<PreparedJob>.Refused(read.Problems);
    }

    private static Job? ReadJob(JsonBlock block)
    {
        ReadSchema(block);
        var date = block.Day("date", Need.Must) ?? default;
        var currency = ReadCurrency(block);
        var stocks = StockBlock.ReadAll(block, out var stockIds, JobRules.MostEntries);
        var edition = block.Block("edition", Need.Must, EditionRule) is { } open ? EditionBlock.ReadWithTitle(open, stockIds) : null;
        var shop = block.Take("shop", Need.Must, ShopRule) is { } element
            ? ShopBlock.Read(element, block.Path.Member("shop"), stockIds, block.Problems)
            : null;
        var bench = BenchBlock.ReadMember(block);
        var mailers = MailBlock.ReadMailers(block, out var mailerIds, JobRules.MostEntries);
        var postage = MailBlock.ReadServices(block, JobRules.MostEntries);
        var channels = ChannelBlock.ReadAll(block, mailerIds, JobRules.MostChannels);
        var freeCopies = block.Count("freeCopies", JobRules.CopiesOrNone) ?? 0;
        var reclaimTax = block.Flag("reclaimTax") ?? false;
        var quantity = block.Count("quantity", JobRules.Copies, Need.Must) ?? 0;
        var ladder = LadderBlock.ReadMember(block);
        var compare = CompareBlock.ReadMember(block, edition, stockIds, quantity);
        var reprint = ReprintBlock.ReadMember(block);
        var half = HalvesBlock.ReadMember(block, edition, stockIds);
        block.Close();
        if (currency is null || edition is null || shop is null)
        {
            return null;
        }

        CheckSheets(block, edition, shop);
        return new Job(date, currency, edition, stocks, shop, bench, mailers, postage, channels, freeCopies, reclaimTax, quantity, ladder, compare, reprint) { SecondHalf = half };
    }

    private static void ReadSchema(JsonBlock block)
    {
        if (block.Text("schema", Need.Must, SchemaName) is { } schema && schema != Schema)
        {
            block.Problems.Add(block.Path.Member("schema"), schema, SchemaRule);
        }
    }

    private static Engine.Measures.Currency? ReadCurrency(JsonBlock block)
    {
        if (block.Text("currency", Need.Must, Currency) is not { } code)
        {
            return null;
        }

        if (Engine.Measures.Currency.Find(code) is { } currency)
        {
            return currency;
        }

        block.Problems.Add(block.Path.Member("currency"), code, Currency.Sentence);
        return null;
    }

    // A part may name a sheet; whether it is one of the shop's can be told only when both are read.
    private static void CheckSheets(JsonBlock block, Edition edition, Shop shop)
    {
        if (shop.Sheets.Count == 0 && shop.BookPrices.Count == 0)
        {
            // Then the sheets themselves were refused.
            return;
        }

        var ids = shop.Sheets.Select(sheet => sheet.Id).ToHashSet(StringComparer.Ordinal);
        var parts = block.Path.Member("edition").Member("parts");
        for (var index = 0; index < edition.Parts.Count; index++)
        {
            Keys.CheckKnown(edition.Parts[index].SheetId, ids, parts.Item(index).Member("sheet"), "sheet", block.Problems);
        }
    }
}
