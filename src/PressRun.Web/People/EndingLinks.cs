using System.Globalization;
using PressRun.Web.Shared;

namespace PressRun.Web.People;

/// <summary>Says which links to quotes end with the right of whoever made them, before it is taken from them.</summary>
public static class EndingLinks
{
    /// <summary>Which open links end with whoever is taken out; null for none.</summary>
    /// <param name="linksTo">Numbers of the quotes that the links lead to, one for each.</param>
    public static string? TakenOut(IReadOnlyList<int> linksTo) => linksTo.Count == 0 ? null : Say(linksTo.Count,
        $"One open link that they made ends too, to {Quotes(linksTo)}. Its reader needs a new one.",
        $"{linksTo.Count} open links that they made end too, to {Quotes(linksTo)}. Their readers need new ones.");

    /// <summary>Which open links end with somebody's becoming a reader; null for none.</summary>
    /// <param name="linksTo">As above.</param>
    public static string? AsReader(IReadOnlyList<int> linksTo) => linksTo.Count == 0 ? null : Say(linksTo.Count,
        $"Making them a reader ends one open link of theirs, to {Quotes(linksTo)}.",
        $"Making them a reader ends {linksTo.Count} open links of theirs, to {Quotes(linksTo)}.");

    /// <summary>Which open links end with whoever leaves, said to them; null for none.</summary>
    /// <param name="linksTo">As above.</param>
    public static string? Left(IReadOnlyList<int> linksTo) => linksTo.Count == 0 ? null : Say(linksTo.Count,
        $"One open link that you made ends with it, to {Quotes(linksTo)}. Its reader needs a new one.",
        $"{linksTo.Count} open links that you made end with it, to {Quotes(linksTo)}. Their readers need new ones.");

    private static string Quotes(IReadOnlyList<int> numbers)
    {
        var told = numbers.Distinct().Select(number => number.ToString("N0", CultureInfo.CurrentCulture)).ToList();
        return Say(told.Count, $"quote {Words.Together(told)}", $"quotes {Words.Together(told)}");
    }
}
