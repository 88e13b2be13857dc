using PressRun.Engine.Editions;
using PressRun.Engine.Imposing;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Bench;

/// <summary>A pile on the table: one piece of the book as often as there is one for every copy.</summary>
/// <param name="Number">In collating order, which is the order of the book from the outside in, from 1.</param>
/// <param name="Part">Its part with its paper.</param>
/// <param name="PartIndex">The part's place in the book, from 0.</param>
/// <param name="Outer">Pages of the outer face from left to right.</param>
/// <param name="Inner">Pages of the inner face from left to right; empty where it is blank.</param>
/// <param name="Pieces">How many come from the shop, overs and what repeated places give beyond them included.</param>
/// <param name="Sheets">Sheets that it is cut from, by their numbers.</param>
/// <param name="Folds">Distances of its folds from its left edge; empty where it is not folded.</param>
public sealed record Pile(
    int Number, PartPieces Part, int PartIndex, IReadOnlyList<int> Outer, IReadOnlyList<int> Inner, long Pieces, IReadOnlyList<int> Sheets, IReadOnlyList<Length> Folds)
{
    /// <summary>The part on the paper that the second half of the run has; null where all copies have it on the same.</summary>
    public PartPieces? SecondHalf { get; init; }
}

/// <summary>How the sheets of some parts are cut apart, all of them alike.</summary>
/// <param name="Sheet">One of them.</param>
/// <param name="Sheets">Their numbers.</param>
/// <param name="Cuts">In the order in which they are made; empty where a sheet is one piece.</param>
public sealed record ApartPlan(ImposedSheet Sheet, IReadOnlyList<int> Sheets, IReadOnlyList<ApartCut> Cuts);
