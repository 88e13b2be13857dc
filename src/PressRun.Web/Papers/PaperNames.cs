using PressRun.Engine.Comparing;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Papers;

/// <summary>What a combination of papers is called.</summary>
public static class PaperNames
{
    /// <summary>Its papers alone, as the picture and a plan's name have room for: parts that all combinations have in common need no word.</summary>
    /// <param name="view">The plan.</param>
    /// <param name="tried">Places of the parts that papers are tried on; of none, all parts are named.</param>
    /// <param name="row">The combination.</param>
    public static string Short(PapersView view, IReadOnlyCollection<int> tried, PaperRow row) =>
        string.Join(" + ", Parts(tried, row).Select(part => view.StockName(row.StockIds[part])).Distinct());

    /// <summary>Its papers, and of several parts which is on which.</summary>
    /// <param name="view">The plan.</param>
    /// <param name="tried">Places of the parts that papers are tried on; of none, all parts are named.</param>
    /// <param name="row">The combination.</param>
    public static string Of(PapersView view, IReadOnlyCollection<int> tried, PaperRow row)
    {
        var parts = Parts(tried, row);
        return parts.Count < 2
            ? Short(view, tried, row)
            : string.Join(" + ", parts.GroupBy(part => row.StockIds[part], StringComparer.Ordinal).Select(paper =>
                Say($"{view.StockName(paper.Key)} for {Words.Together([.. paper.Select(part => Apart.Of(view.Source.Edition.Parts[part].Part.Name))])}")));
    }

    private static List<int> Parts(IReadOnlyCollection<int> tried, PaperRow row) => [.. tried.Count == 0 ? Enumerable.Range(0, row.StockIds.Count) : tried.Order()];
}
