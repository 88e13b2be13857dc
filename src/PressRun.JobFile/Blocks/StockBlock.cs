using System.Text.Json;
using PressRun.Engine.Paper;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Blocks;

/// <summary>Reads papers.</summary>
public static class StockBlock
{
    private const string Rule = "Write a stock as an object with a weight and at least one of caliper, bulk and finish.";

    private const string ListRule = "Write stocks as an object whose keys are the stocks' ids.";

    /// <summary>Reads the member <c>stocks</c> of a block: an object whose keys are the ids. Required.</summary>
    /// <param name="block">The block that holds it.</param>
    /// <param name="ids">The ids found, also of stocks that have problems; null where the member itself is missing or wrong.</param>
    /// <param name="most">Most stocks.</param>
    /// <returns>The stocks in order; whole only where no problem was noted.</returns>
    public static IReadOnlyList<Stock> ReadAll(JsonBlock block, out IReadOnlySet<string>? ids, int most = int.MaxValue)
    {
        ids = null;
        if (block.Entries("stocks", Need.Must, ListRule, most) is not { } members)
        {
            return [];
        }

        ids = members.Members.Select(member => member.Name).ToHashSet(StringComparer.Ordinal);
        var stocks = new List<Stock>();
        foreach (var (id, value) in members.Members)
        {
            var path = members.Path.Member(id);
            Keys.CheckId(id, path, block.Problems);
            if (Read(value, path, id, block.Problems) is { } stock)
            {
                stocks.Add(stock);
            }
        }

        return stocks;
    }

    /// <summary>Reads one stock.</summary>
    /// <param name="element">Its object.</param>
    /// <param name="path">Where it stands.</param>
    /// <param name="id">Its id, which is its name where it has none.</param>
    /// <param name="problems">Where problems go.</param>
    /// <returns>Null where it is no object; whole only where no problem was noted.</returns>
    public static Stock? Read(JsonElement element, JsonPath path, string id, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, Rule) is not { } block)
        {
            return null;
        }

        var name = block.Text("name", Need.May, JobRules.Name) ?? id;
        var weight = block.Weight("weight") ?? default;
        var caliper = block.Length("caliper", JobRules.Thickness);
        var bulk = block.Number("bulk", JobRules.Bulk);
        var finish = block.Choice("finish", JobWords.Finishes);
        if (!block.Has("caliper") && !block.Has("bulk") && !block.Has("finish"))
        {
            problems.Add(path, (string?)null, "A stock needs a caliper, a bulk or a finish, so that its thickness is known.");
        }

        block.Close();
        return new Stock(id, name, weight, caliper, bulk, finish);
    }
}
