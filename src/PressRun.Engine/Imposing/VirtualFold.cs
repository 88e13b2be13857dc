using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Imposing;

/// <summary>
/// Makes a copy of paper that exists only here: prints the sheets, turns them over as the shop does, cuts them apart, stacks, collates, folds and binds
/// what falls out, and reads the book. It looks at nothing but where pages were printed, so that it finds what a wrong setting or place would do.
/// </summary>
public static class VirtualFold
{
    /// <summary>Prints, cuts, binds and reads one copy.</summary>
    /// <param name="block">The book.</param>
    /// <param name="sheets">Its sheets, of every part.</param>
    /// <param name="turn">How the shop turns two-sided sheets over; null where each is turned as it asks for.</param>
    /// <param name="copy">Which copy, from 0: each is made of the next pieces of its piles.</param>
    public static FoldedBook Read(BookBlock block, IReadOnlyList<ImposedSheet> sheets, TurnEdge? turn = null, int copy = 0)
    {
        var piles = sheets.SelectMany(sheet => CutApart(sheet, turn)).GroupBy(piece => piece.Pile).OrderBy(pile => pile.Key)
            .Select(pile => pile.ElementAt(copy % pile.Count())).ToList();
        var leaves = block.Edition.Binding switch
        {
            Binding.Saddle => Nested(block, piles),
            Binding.Perfect => Wrapped(block, piles),
            _ => piles.SelectMany(piece => Flat(piece)),
        };
        return new FoldedBook([.. leaves], block.Edition.Parts.Sum(part => part.Pages));
    }

    /// <summary>How the shop must turn the sheets of each part over, and what the other setting would do.</summary>
    /// <param name="block">The book.</param>
    /// <param name="sheets">All different sheets of its run.</param>
    public static IReadOnlyList<TurnAdvice> Advise(BookBlock block, IReadOnlyList<ImposedSheet> sheets)
    {
        var read = Enum.GetValues<TurnEdge>().ToDictionary(turn => turn, turn => Read(block, sheets, turn));
        return [.. sheets.GroupBy(sheet => sheet.PartIndex).Select(part => Advice([.. part]))];

        TurnAdvice Advice(IReadOnlyList<ImposedSheet> part)
        {
            var sheet = part.FirstOrDefault(one => one.IsTwoSided, part[0]);
            var other = read[sheet.Turn == TurnEdge.Long ? TurnEdge.Short : TurnEdge.Long];
            return sheet.IsTwoSided
                ? new TurnAdvice(sheet.PartName, sheet.PartIndex, sheet.Turn, [.. other.Sides.Where(side => side.PartIndex == sheet.PartIndex && !side.IsUpright).Select(side => side.Page!.Value).Order()])
                : new TurnAdvice(sheet.PartName, sheet.PartIndex, null, []);
        }
    }

    // A printed page on a piece: where its middle lies and where its head points, both seen from the front through the paper.
    private readonly record struct Mark(int Page, Spot At, int QuarterTurns, bool Back);

    private sealed record CutPiece(int Pile, int PartIndex, Length Width, IReadOnlyList<Mark> Marks);

    // A sheet that is printed on one side cannot be turned over wrongly.
    private static IEnumerable<CutPiece> CutApart(ImposedSheet sheet, TurnEdge? turn)
    {
        var turned = sheet.IsTwoSided && turn is { } asked ? asked : sheet.Turn;
        var marks = sheet.Front.Pages.Select(page => new Mark(page.Page, page.Area.Middle, page.QuarterTurns, false))
            .Concat(sheet.Back.Pages.Select(page => new Mark(
                page.Page, Turning.Over(sheet.Sheet, turned, page.Area.Middle), Turning.Over(sheet.Sheet, turned, page.QuarterTurns), true)))
            .ToList();
        return sheet.Stacks.Where(stack => stack.Pile is not null).Select(stack => new CutPiece(
            stack.Pile!.Value, sheet.PartIndex, stack.Place.Turned ? stack.Place.Box.Height : stack.Place.Box.Width,
            [.. marks.Where(mark => stack.Place.Box.Holds(mark.At)).Select(mark => Righted(stack.Place, mark))]));
    }

    // The piece is laid with the head of its front upwards.
    private static Mark Righted(Place place, Mark mark) =>
        mark with { At = place.Lift(mark.At), QuarterTurns = place.Turned ? (mark.QuarterTurns + 3) % 4 : mark.QuarterTurns };

    // Folded sheets lie in one another: of each, the right half of the front is read on the way in and the left half on the way out.
    private static IEnumerable<ReadSide> Nested(BookBlock block, List<CutPiece> piles) =>
        piles.SelectMany(piece => Leaf(piece, FromRight(piece, piece.Width * 0.5m)))
            .Concat(Enumerable.Reverse(piles).SelectMany(piece => Leaf(piece, ToLeft(piece, block.Parts[piece.PartIndex].Piece.Width * 0.5m), outwards: true)));

    private static IEnumerable<ReadSide> Wrapped(BookBlock block, List<CutPiece> piles)
    {
        var (cover, joint) = (piles[0], (piles[0].Width - block.Spine) * 0.5m);
        return Leaf(cover, FromRight(cover, joint + block.Spine))
            .Concat(piles.Skip(1).SelectMany(Flat))
            .Concat(Leaf(cover, ToLeft(cover, joint), outwards: true));
    }

    private static IEnumerable<ReadSide> Flat(CutPiece piece) => Leaf(piece, [.. piece.Marks]);

    private static List<Mark> FromRight(CutPiece piece, Length fold) => [.. piece.Marks.Where(mark => mark.At.Across >= fold)];

    private static List<Mark> ToLeft(CutPiece piece, Length fold) => [.. piece.Marks.Where(mark => mark.At.Across < fold)];

    // A leaf on the way into the book shows its front first, one on the way out its back; who turns it sees what lies behind mirrored.
    private static IEnumerable<ReadSide> Leaf(CutPiece piece, List<Mark> marks, bool outwards = false)
    {
        yield return Side(outwards);
        yield return Side(!outwards);

        ReadSide Side(bool back) => marks.FindIndex(mark => mark.Back == back) is var found && found >= 0
            ? new ReadSide(marks[found].Page, back ? Turning.Mirrored(marks[found].QuarterTurns) : marks[found].QuarterTurns, piece.PartIndex, piece.Pile)
            : new ReadSide(null, 0, piece.PartIndex, piece.Pile);
    }
}
