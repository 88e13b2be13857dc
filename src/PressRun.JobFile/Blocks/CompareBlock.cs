using System.Text.Json;
using PressRun.Engine.Comparing;
using PressRun.Engine.Editions;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Blocks;

/// <summary>The job file's <c>compare</c>: which papers to try on which parts.</summary>
public static class CompareBlock
{
    private const string Rule = "Write what to compare as { \"stocks\", \"halves\", \"quantities\" }.";
    private const string StocksRule = "Write stocks as an object: for each part by its name a list of stock ids to try.";
    private const string HalvesRule = "Write halves as a list of { \"part\", \"first\", \"second\" }.";
    private const string QuantitiesRule = "Write quantities as a list of whole numbers of copies.";

    /// <summary>Reads the block of a job.</summary>
    /// <param name="job">The whole job file.</param>
    /// <param name="edition">Its edition, whose parts are named; null where it could not be read.</param>
    /// <param name="stockIds">Its stocks; null where they could not be read.</param>
    /// <param name="quantity">The job's quantity, taken where none is named.</param>
    /// <returns>The request, or null where there is no such block.</returns>
    public static ComparisonRequest? ReadMember(JsonBlock job, Edition? edition, IReadOnlySet<string>? stockIds, int quantity)
    {
        if (job.Block("compare", Need.May, Rule) is not { } block)
        {
            return null;
        }

        var request = new ComparisonRequest(
            ReadChoices(block, edition, stockIds),
            block.List("halves", Need.May, HalvesRule, (element, path) => ReadHalves(element, path, edition, stockIds, block.Problems), JobRules.MostEntries),
            ReadQuantities(block, quantity));
        block.Close();
        return request;
    }

    private static List<StockChoice> ReadChoices(JsonBlock compare, Edition? edition, IReadOnlySet<string>? stockIds)
    {
        var choices = new List<StockChoice>();
        if (compare.Block("stocks", Need.May, StocksRule) is not { } block)
        {
            return choices;
        }

        foreach (var (name, _) in block.Members)
        {
            var part = PartNamed(name, edition, block.Path.Member(name), block.Problems);
            var ids = new List<string>();
            foreach (var (element, path) in block.Items(name, Need.Must, StocksRule, atLeastOne: true, most: JobRules.MostEntries))
            {
                if (ReadStockId(element, path, stockIds, block.Problems) is { } id)
                {
                    Keys.CheckOnce(ids.ToHashSet(StringComparer.Ordinal), id, path, id, "This stock stands twice in one list; keep one of them.", block.Problems);
                    ids.Add(id);
                }
            }

            if (part is { } index)
            {
                choices.Add(new StockChoice(index, ids));
            }
        }

        return choices;
    }

    private static HalvesChoice? ReadHalves(
        JsonElement element, JsonPath path, Edition? edition, IReadOnlySet<string>? stockIds, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, HalvesRule) is not { } block)
        {
            return null;
        }

        var name = block.Text("part", Need.Must, JobRules.Name);
        var part = name is null ? null : PartNamed(name, edition, path.Member("part"), problems);
        var halves = new HalvesChoice(part ?? 0, Stock("first"), Stock("second"));
        block.Close();
        return halves;

        string Stock(string half)
        {
            var id = block.Text(half, Need.Must, JobRules.Id);
            Keys.CheckKnown(id, stockIds, path.Member(half), "stock", problems);
            return id ?? string.Empty;
        }
    }

    private static List<int> ReadQuantities(JsonBlock compare, int quantity)
    {
        var quantities = new List<int>();
        foreach (var (element, path) in compare.Items("quantities", Need.May, QuantitiesRule, atLeastOne: true, most: JobRules.MostEntries))
        {
            if (JsonBlock.NumberOf(element, JobRules.Copies) is { } copies)
            {
                quantities.Add((int)copies);
            }
            else
            {
                compare.Problems.Add(path, element, JobRules.Copies.Sentence);
            }
        }

        return compare.Has("quantities") ? quantities : [quantity];
    }

    private static string? ReadStockId(JsonElement element, JsonPath path, IReadOnlySet<string>? stockIds, ProblemList problems)
    {
        if (element.ValueKind != JsonValueKind.String || element.GetString() is not { } id || !JobRules.Id.Holds(id))
        {
            problems.Add(path, element, JobRules.Id.Sentence);
            return null;
        }

        Keys.CheckKnown(id, stockIds, path, "stock", problems);
        return id;
    }

    private static int? PartNamed(string name, Edition? edition, JsonPath path, ProblemList problems) =>
        edition is null ? null : PartNames.Find(name, edition.Parts, path, problems);
}
