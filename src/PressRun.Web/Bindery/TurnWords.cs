using PressRun.Engine.Imposing;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Bindery;

/// <summary>How the shop is to turn the sheets over, in sentences.</summary>
public static class TurnWords
{
    private const int MostNamed = 6;

    /// <summary>What to ask for, for one part.</summary>
    public static string Of(TurnAdvice advice) => advice.Ask switch
    {
        null => Say($"“{Apart.Of(advice.PartName)}” is printed on one side, so it does not matter how its sheets are turned."),
        TurnEdge.Long => $"{Say($"“{Apart.Of(advice.PartName)}”: ask for both sides turned on the long edge, head to head.")} {OnTheShortEdge(advice.UpsideDown)}",
        _ => $"{Say($"“{Apart.Of(advice.PartName)}”: ask for both sides turned on the short edge, head to head.")} {OnTheLongEdge(advice.UpsideDown)}",
    };

    /// <summary>What a copy read like.</summary>
    public static string Of(FoldedBook book) => book.IsRight
        ? Say($"Folded and bound, it reads from page 1 to {book.Pages}: every page once, in order and upright.")
        : book.NotUpright.Count > 0
            ? SoTurned([.. book.NotUpright.Order()])
            : Say($"So turned, its pages come out of their order.");

    private static string OnTheShortEdge(IReadOnlyList<int> pages) => pages.Count == 0
        ? Say($"On the short edge its backs would not lie behind their fronts.")
        : Say(pages.Count, $"On the short edge page {Named(pages)} would stand on its head.", $"On the short edge pages {Named(pages)} would stand on their heads.");

    private static string OnTheLongEdge(IReadOnlyList<int> pages) => pages.Count == 0
        ? Say($"On the long edge its backs would not lie behind their fronts.")
        : Say(pages.Count, $"On the long edge page {Named(pages)} would stand on its head.", $"On the long edge pages {Named(pages)} would stand on their heads.");

    private static string SoTurned(IReadOnlyList<int> pages) =>
        Say(pages.Count, $"So turned, page {Named(pages)} would stand on its head.", $"So turned, pages {Named(pages)} would stand on their heads.");

    private static string Named(IReadOnlyList<int> pages)
    {
        var first = string.Join(", ", pages.Take(MostNamed));
        return pages.Count > MostNamed ? Say($"{first} and {pages.Count - MostNamed} more") : first;
    }
}
