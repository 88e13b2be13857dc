using System.Text.Json;
using PressRun.Data.Bench;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;
using PressRun.JobFile;
using PressRun.JobFile.Blocks;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Archive;

/// <summary>Reads a press archive and finds every problem in it, with its path, its value and the rule.</summary>
internal static class ArchiveReader
{
    private const string Rule = "Write a press as an object with schema, press, stocks, shops, mailers, postage, channels, bench, benchLimits, titles and quotes.";
    private const string SchemaRule = "Write \"" + PressArchive.Schema + "\".";
    private const string PressRule = "Write the press as { \"name\", \"currency\", \"units\", \"paperRegion\" }.";
    private const string ShopsRule = "Write shops as a list of { \"id\", \"name\", \"priceLists\" }.";
    private const string ListsRule = "Write a shop's price lists as a list, each with its validFrom.";
    private const string TitlesRule = "Write titles as a list of { \"id\", \"title\", \"by\", \"colour\", \"about\", \"editions\" }.";
    private const string ArchivedRule = "Write what is archived as { \"stocks\": [ids], \"mailers\": [ids], \"channels\": [ids], \"postage\": [ids with validFrom] }.";

    /// <summary>Reads an archive from an open document.</summary>
    public static Outcome<PressArchive> Read(JsonElement element)
    {
        var problems = new ProblemList();
        var archive = JsonBlock.Open(element, JsonPath.Root, problems, Rule) is { } block ? Read(block) : null;
        return problems.OutcomeOf(archive);
    }

    private static PressArchive? Read(JsonBlock block)
    {
        if (block.Text("schema", Need.Must, new TextRule(SchemaRule, 100, false)) is { } schema && schema != PressArchive.Schema)
        {
            block.Problems.Add(block.Path.Member("schema"), schema, SchemaRule);
        }

        var press = block.Block("press", Need.Must, PressRule) is { } settings ? ReadPress(settings) : null;
        var stocks = StockBlock.ReadAll(block, out var stockIds);
        var shops = block.List("shops", Need.May, ShopsRule, (element, path) => ReadShop(element, path, stockIds, block.Problems));
        CheckOnce(block, "shops", shops.Select(shop => shop.Id), "Another shop has this id already; ids must differ.");
        var mailers = MailBlock.ReadMailers(block, out var mailerIds);
        var postage = MailBlock.ReadServices(block);
        var channels = ChannelBlock.ReadAll(block, mailerIds);
        var channelIds = channels.Select(channel => channel.Id).ToHashSet(StringComparer.Ordinal);
        var bench = BenchBlock.ReadMember(block);
        var limits = BenchLimitsShape.ReadMember(block);
        var plans = new PlanReader(shops, bench, stockIds);
        var titles = block.List("titles", Need.May, TitlesRule, (element, path) => TitleReader.Read(element, path, stockIds, channelIds, plans, block.Problems));
        CheckOnce(block, "titles", titles.Select(title => title.Id), "Another title has this id already; ids must differ.");
        var quotes = new QuoteReader(titles, block.Problems);
        var frozen = block.List("quotes", Need.May, QuoteReader.Rule, quotes.Read);
        var archived = block.Block("archived", Need.May, ArchivedRule);
        var keptStocks = Keep(archived, "stocks", stocks, stock => stock.Id);
        var keptMailers = Keep(archived, "mailers", mailers, mailer => mailer.Id);
        var keptChannels = Keep(archived, "channels", channels, channel => channel.Id);
        var keptPostage = Keep(archived, "postage", postage, ServiceKey);
        archived?.Close();
        block.Close();
        if (press is null || !block.Problems.IsEmpty)
        {
            return null;
        }

        var archive = new PressArchive(press, keptStocks, shops, keptMailers, keptPostage, keptChannels, bench, titles, frozen) { Limits = limits };
        ArchiveRules.Check(archive, block.Path, block.Problems);
        return archive;
    }

    /// <summary>How a dated table of a service is named where it is archived: <c>letter 2026-01-01</c>.</summary>
    public static string ServiceKey(PostageService service) => FormattableString.Invariant($"{service.Id} {service.ValidFrom:yyyy-MM-dd}");

    private static ArchivedPress ReadPress(JsonBlock block)
    {
        var code = block.Text("currency", Need.Must, JobRules.Id) ?? "";
        if (code.Length > 0 && Currency.Find(code) is null)
        {
            block.Problems.Add(block.Path.Member("currency"), code, "Write the ISO 4217 code of a currency in capitals, such as \"USD\".");
        }

        var press = new ArchivedPress(
            block.Text("name", Need.Must, ArchiveWords.Name) ?? "",
            code,
            block.Choice("units", ArchiveWords.Units, Need.Must) ?? default,
            block.Choice("paperRegion", ArchiveWords.PaperRegions, Need.Must) ?? default,
            block.Flag("reclaimTax") ?? false);
        block.Close();
        return press;
    }

    private static ArchivedShop? ReadShop(JsonElement element, JsonPath path, IReadOnlySet<string>? stockIds, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, ShopsRule) is not { } block)
        {
            return null;
        }

        var id = block.Text("id", Need.Must, JobRules.Id) ?? "";
        var name = block.Text("name", Need.Must, ArchiveWords.Name) ?? "";
        var dates = new HashSet<DateOnly>();
        var lists = new List<Shop>();
        foreach (var (item, place) in block.Items("priceLists", Need.Must, ListsRule))
        {
            if (ShopBlock.ReadPriceList(item, place, name, stockIds, problems) is { } list)
            {
                lists.Add(list);
                Keys.CheckOnce(
                    dates, list.ValidFrom, place.Member("validFrom"), FormattableString.Invariant($"{list.ValidFrom:yyyy-MM-dd}"),
                    "Another list of this shop begins on this day; days must differ.", problems);
            }
        }

        var shop = new ArchivedShop(id, name, block.Flag("archived") ?? false, lists);
        block.Close();
        return shop;
    }

    private static List<Kept<T>> Keep<T>(JsonBlock? archived, string section, IReadOnlyList<T> items, Func<T, string> id)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        var known = items.Select(id).ToHashSet(StringComparer.Ordinal);
        foreach (var (element, path) in archived?.Items(section, Need.May, ArchivedRule) ?? [])
        {
            var word = element.ValueKind == JsonValueKind.String ? element.GetString()! : element.GetRawText();
            Keys.CheckKnown(word, known, path, "such thing", archived!.Problems);
            ids.Add(word);
        }

        return [.. items.Select(item => new Kept<T>(item, ids.Contains(id(item))))];
    }

    private static void CheckOnce(JsonBlock block, string section, IEnumerable<string> ids, string rule)
    {
        var taken = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (id, index) in ids.Select((id, index) => (id, index)))
        {
            Keys.CheckOnce(taken, id, block.Path.Member(section).Item(index).Member("id"), id, rule, block.Problems);
        }
    }
}
