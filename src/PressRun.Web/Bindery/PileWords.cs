using PressRun.Engine.Bench;
using PressRun.Engine.Editions;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Bindery;

/// <summary>Words for piles, and which of them are told together.</summary>
public static class PileWords
{
    // A folded sheet names four pages that follow no rule one sees at a glance; a leaf has the next two.
    private const int FewLeaves = 4;
    private const int FewSheets = 8;

    // Beyond, the rule has to do: nobody looks for a pile in a longer list.
    private const int MostListed = 200;

    /// <summary>True where piles are so many that the first two and the last stand for all.</summary>
    public static bool IsLong(PileRun run) => run.Piles.Count > (IsLeaves(run) ? FewLeaves : FewSheets);

    /// <summary>True for leaves, whose rule one sees; the list of folded sheets is printed too.</summary>
    public static bool IsLeaves(PileRun run) => run.First.Outer.Count == 1;

    /// <summary>The piles that are drawn: all, or those that stand for them.</summary>
    public static IReadOnlyList<Pile> Drawn(PileRun run) => IsLong(run) ? [run.First, run.Piles[1], run.Last] : run.Piles;

    /// <summary>Pages of a face: <c>28 | 1</c>.</summary>
    public static string Pages(IReadOnlyList<int> pages) => pages.Count == 0 ? "blank" : string.Join(" | ", pages);

    /// <summary>Pages of its outer face, and whether they are printed.</summary>
    public static string Outside(Pile pile) => Face(pile.Outer, pile.Part.Part.Outside);

    /// <summary>Pages of its inner face, likewise.</summary>
    public static string Inside(Pile pile) => Face(pile.Inner, pile.Part.Part.Inside);

    private static string Face(IReadOnlyList<int> pages, Ink ink) => Pages(pages) + (ink == Ink.None && pages.Count > 0 ? " unprinted" : "");

    /// <summary>How the drawings of piles are read.</summary>
    public const string Key = "Each drawing shows the outer face first and then the inner one, as it looks when the piece is turned over like a page of a book. Page 1 is the front of the book, whether or not numbers are printed. Triangles point to the head; each paper has a pattern of its own at the foot.";

    /// <summary>How the piles of a long run go on.</summary>
    /// <param name="run">The run.</param>
    /// <param name="one">What one is called: a pile on the table, or a piece of a set that comes laid together.</param>
    /// <param name="format">How figures are written.</param>
    public static string GoesOn(PileRun run, string one, PressFormat format)
    {
        var (first, last) = (run.First, run.Last);
        var (from, to, count) = (format.Count(first.Number), format.Count(last.Number), format.Count(run.Piles.Count));
        return IsLeaves(run)
            ? $"{BenchWords.Capital(one)}s {from} to {to}: {count} leaves. {BenchWords.Capital(one)} {from} has page {first.Outer[0]} in front{(first.Inner.Count == 0 ? ", its back blank" : $" and page {first.Inner[0]} behind")}; each next {one} has the next {(first.Inner.Count == 0 ? "page" : "two")}, up to {(last.Inner.Count == 0 ? $"page {last.Outer[0]}" : $"pages {last.Outer[0]} and {last.Inner[0]}")} in {one} {to}."
            : $"{BenchWords.Capital(one)}s {from} to {to}: {count} folded sheets, each next one a sheet further in, from {Pages(first.Outer)} outside and {Pages(first.Inner)} inside to {Pages(last.Outer)} and {Pages(last.Inner)}.";
    }

    /// <summary>The piles of a long run that are listed one by one.</summary>
    public static IEnumerable<Pile> Listed(PileRun run) => run.Piles.Take(MostListed);

    /// <summary>The same in a line.</summary>
    public static string Every(PileRun run) => string.Join(" · ", Listed(run).Select(pile => $"{pile.Number}: {Pages(pile.Outer)} / {Pages(pile.Inner)}"));
}
