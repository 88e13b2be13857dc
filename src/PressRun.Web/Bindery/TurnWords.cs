using PressRun.Engine.Imposing;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Bindery;

/// <summary>How the shop is to turn the sheets over, in sentences.</summary>
public static class TurnWords
{
    private const int MostNamed = 6;

    /// <summary>What the shop's setting is called.</summary>
    public static string Of(TurnEdge edge) => edge == TurnEdge.Long ? "long edge" : "short edge";

    /// <summary>What to ask for, for one part.</summary>
    public static string Of(TurnAdvice advice) => advice.Ask switch
    {
        null => $"“{Apart.Of(advice.PartName)}” is printed on one side, so it does not matter how its sheets are turned.",
        { } ask => $"“{Apart.Of(advice.PartName)}”: ask for both sides turned on the {Of(ask)}, head to head. On the {Of(ask == TurnEdge.Long ? TurnEdge.Short : TurnEdge.Long)} {Pages(advice.UpsideDown)}.",
    };

    /// <summary>What a copy read like.</summary>
    public static string Of(FoldedBook book) => book.IsRight
        ? $"Folded and bound, it reads from page 1 to {book.Pages}: every page once, in order and upright."
        : book.NotUpright.Count > 0
            ? $"So turned, {Pages([.. book.NotUpright.Order()])}."
            : "So turned, its pages come out of their order.";

    private static string Pages(IReadOnlyList<int> pages) => pages.Count switch
    {
        0 => "its backs would not lie behind their fronts",
        1 => $"page {pages[0]} would stand on its head",
        <= MostNamed => $"pages {string.Join(", ", pages)} would stand on their heads",
        _ => $"pages {string.Join(", ", pages.Take(MostNamed))} and {pages.Count - MostNamed} more would stand on their heads",
    };
}
