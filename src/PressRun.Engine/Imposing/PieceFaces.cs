using PressRun.Engine.Bench;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Imposing;

/// <summary>A page on a face of a piece that stands upright.</summary>
/// <param name="Page">Its number, from 1.</param>
/// <param name="Area">What is left of it when the book is trimmed, as seen on its own face.</param>
/// <param name="Bleed">As far as art may run: to the edge of the piece, and to the fold.</param>
/// <param name="Shift">How far its art moves towards the spine, so that the outer margin stays.</param>
/// <param name="SpineLeft">True where the spine is at its left.</param>
internal sealed record PageOnPiece(int Page, Box Area, Box Bleed, Length Shift, bool SpineLeft);

/// <summary>The two faces of a piece before trimming, each as seen by who looks at it.</summary>
/// <param name="Outer">Pages of the outer face.</param>
/// <param name="Inner">Pages of the inner face.</param>
/// <param name="Folds">Distances of the folds from the left edge of the outer face.</param>
internal sealed record PieceFaces(IReadOnlyList<PageOnPiece> Outer, IReadOnlyList<PageOnPiece> Inner, IReadOnlyList<Length> Folds)
{
    /// <summary>The faces of a piece.</summary>
    /// <param name="block">The book.</param>
    /// <param name="size">The piece before trimming.</param>
    /// <param name="piece">The pages it carries.</param>
    public static PieceFaces Of(BookBlock block, Size size, ImposedPiece piece)
    {
        var (page, trim) = (block.Edition.Page, block.Edition.Trim);
        if (block.Edition.Binding is Binding.Saddle)
        {
            // Inside a thick book so much of a leaf lies around the fold that less of it stands in front of the knife.
            var shift = piece.Shift < page.Width ? piece.Shift : page.Width;
            return Spread(size, trim, page.Width, shift, size.Width * 0.5m, size.Width * 0.5m, piece);
        }

        return piece.Outer.Count == 2
            ? Spread(size, trim, page.Width, Length.Zero, trim.ForeEdge + page.Width, size.Width - trim.ForeEdge - page.Width, piece)
            : new PieceFaces(
                [.. piece.Outer.Select(number => Leaf(number, trim.Spine, spineLeft: true))],
                [.. piece.Inner.Select(number => Leaf(number, trim.ForeEdge, spineLeft: false))],
                []);

        PageOnPiece Leaf(int number, Length left, bool spineLeft) => new(
            number, new Box(left, trim.Head, page.Width, page.Height), new Box(Length.Zero, Length.Zero, size.Width, size.Height), Length.Zero, spineLeft);
    }

    // Two pages beside each other on both faces: the left one ends at the first fold, the right one begins at the second.
    private static PieceFaces Spread(Size size, Trim trim, Length width, Length shift, Length first, Length second, ImposedPiece piece)
    {
        var (seen, height) = (width - shift, size.Height - trim.Head - trim.Foot);
        return new PieceFaces(Face(piece.Outer), Face(piece.Inner), first == second ? [first] : [first, second]);

        PageOnPiece[] Face(IReadOnlyList<int> pages) =>
        [
            new(pages[0], new Box(first - seen, trim.Head, seen, height), new Box(Length.Zero, Length.Zero, first, size.Height), shift, SpineLeft: false),
            new(pages[1], new Box(second, trim.Head, seen, height), new Box(second, Length.Zero, size.Width - second, size.Height), shift, SpineLeft: true),
        ];
    }
}
