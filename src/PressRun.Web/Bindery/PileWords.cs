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
    public static string Pages(IReadOnlyList<int> pages) => pages.Count == 0 ? Say("side of a piece", $"blank") : string.Join(" | ", pages);

    /// <summary>Pages of its outer face, and whether they are printed.</summary>
    public static string Outside(Pile pile) => Face(pile.Outer, pile.Part.Part.Outside);

    /// <summary>Pages of its inner face, likewise.</summary>
    public static string Inside(Pile pile) => Face(pile.Inner, pile.Part.Part.Inside);

    private static string Face(IReadOnlyList<int> pages, Ink ink) => ink == Ink.None && pages.Count > 0 ? Say($"{Pages(pages)} unprinted") : Pages(pages);

    /// <summary>How the drawings of piles are read.</summary>
    public static string Key => Say($"Each drawing shows the outer face first and then the inner one, as it looks when the piece is turned over like a page of a book. Page 1 is the front of the book, whether or not numbers are printed. Triangles point to the head; each paper has a pattern of its own at the foot.");

    /// <summary>How the piles of a long run go on.</summary>
    /// <param name="run">The run.</param>
    /// <param name="piles">True where they are piles on the table; else they are pieces of a set that comes laid together.</param>
    /// <param name="format">How figures are written.</param>
    public static string GoesOn(PileRun run, bool piles, PressFormat format) => IsLeaves(run) ? $"{Leaves(run, piles, format)} {EachNext(run, piles, format)}" : Folded(run, piles, format);

    private static string Leaves(PileRun run, bool piles, PressFormat format)
    {
        var (from, to, leaves) = (format.Count(run.First.Number), format.Count(run.Last.Number), format.Count(run.Piles.Count));
        return piles ? Say($"Piles {from} to {to}: {leaves} leaves.") : Say($"Pieces {from} to {to}: {leaves} leaves.");
    }

    // Which are together have as many pages each: the back of the first is blank where the last one's is.
    private static string EachNext(PileRun run, bool piles, PressFormat format)
    {
        var (first, last, from, to) = (run.First, run.Last, format.Count(run.First.Number), format.Count(run.Last.Number));
        return (piles, first.Inner.Count == 0) switch
        {
            (true, true) => Say($"Pile {from} has page {first.Outer[0]} in front, its back blank; each next pile has the next page, up to page {last.Outer[0]} in pile {to}."),
            (true, false) =>
                Say($"Pile {from} has page {first.Outer[0]} in front and page {first.Inner[0]} behind; each next pile has the next two, up to pages {last.Outer[0]} and {last.Inner[0]} in pile {to}."),
            (false, true) => Say($"Piece {from} has page {first.Outer[0]} in front, its back blank; each next piece has the next page, up to page {last.Outer[0]} in piece {to}."),
            _ =>
                Say($"Piece {from} has page {first.Outer[0]} in front and page {first.Inner[0]} behind; each next piece has the next two, up to pages {last.Outer[0]} and {last.Inner[0]} in piece {to}."),
        };
    }

    private static string Folded(PileRun run, bool piles, PressFormat format)
    {
        var (from, to, sheets) = (format.Count(run.First.Number), format.Count(run.Last.Number), format.Count(run.Piles.Count));
        var (outside, inside, lastOutside, lastInside) = (Pages(run.First.Outer), Pages(run.First.Inner), Pages(run.Last.Outer), Pages(run.Last.Inner));
        return piles
            ? Say($"Piles {from} to {to}: {sheets} folded sheets, each next one a sheet further in, from {outside} outside and {inside} inside to {lastOutside} and {lastInside}.")
            : Say($"Pieces {from} to {to}: {sheets} folded sheets, each next one a sheet further in, from {outside} outside and {inside} inside to {lastOutside} and {lastInside}.");
    }

    /// <summary>The piles of a long run that are listed one by one.</summary>
    public static IEnumerable<Pile> Listed(PileRun run) => run.Piles.Take(MostListed);

    /// <summary>The same in a line.</summary>
    public static string Every(PileRun run) => string.Join(" · ", Listed(run).Select(pile => $"{pile.Number}: {Pages(pile.Outer)} / {Pages(pile.Inner)}"));
}
