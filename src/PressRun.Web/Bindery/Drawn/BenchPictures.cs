using PressRun.Engine.Bench;
using PressRun.Engine.Editions;
using PressRun.Engine.Imposing;
using PressRun.Engine.Measures;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Bindery.Drawn;

/// <summary>Drawings of what lies on the table: piles, staples and cuts, in true proportion.</summary>
public static class BenchPictures
{
    private const double FaceWidth = 92;
    private const double Gap = 10;
    private const double Band = 12;
    private const double Long = 150;
    private const double Room = 16;

    /// <summary>
    /// A pile: both faces of its piece, beside each other or, where it is wide, one under the other; with their pages, over each which way is up, and the sign
    /// of its paper at the foot.
    /// </summary>
    /// <param name="pile">The pile.</param>
    /// <param name="sign">The place of its paper among the book's.</param>
    /// <param name="widest">The widest piece of the book, so that all piles are drawn to one scale.</param>
    public static Picture Pile(Pile pile, int sign, Length widest)
    {
        var piece = pile.Part.Piece;
        var under = piece.Width > 2m * piece.Height;
        var scale = (under ? (2 * FaceWidth) + Gap : FaceWidth) / (double)widest.Millimetres;
        var (width, height) = (scale * (double)piece.Width.Millimetres, scale * (double)piece.Height.Millimetres);
        var folds = pile.Folds.Select(fold => scale * (double)fold.Millimetres).ToList();
        var marks = new List<Mark>();
        Face(0, 0, pile.Outer, pile.Part.Part.Outside, folds);
        Face(under ? 0 : width + Gap, under ? height + Gap : 0, pile.Inner, pile.Part.Part.Inside, [.. folds.Select(fold => width - fold)]);
        return new Picture(
            under ? width : (2 * width) + Gap, under ? (2 * height) + Gap : height, marks, Say($"Pile {pile.Number}: outer face {PileWords.Outside(pile)}, inner face {PileWords.Inside(pile)}"));

        void Face(double left, double top, IReadOnlyList<int> pages, Ink ink, IReadOnlyList<double> at)
        {
            marks.Add(new BoxMark(Pen.Paper, left, top, width, height));
            marks.AddRange(PaperSign.In(sign, left, top + height - Band, width, Band));
            marks.AddRange(at.Select(fold => new LineMark(Pen.Fold, left + fold, top, left + fold, top + height)));
            foreach (var (place, page) in pages.Index())
            {
                var (x, y) = (left + (width * ((2 * place) + 1) / (2 * pages.Count)), top + ((height - Band) / 2));
                if (ink != Ink.None)
                {
                    marks.Add(new TextMark($"{page}", x, y + 4, 17, Strong: true));
                }

                marks.Add(new HeadMark(x, Math.Max(top + 6, y - 12), 8));
            }

            if (ink == Ink.None)
            {
                // Once for the whole face: beside each other such words would be too small to read.
                var unprinted = Words.Of(Ink.None);
                marks.Add(new TextMark(unprinted, left + (width / 2), top + ((height - Band) / 2) + 4, Math.Min(13, TextMark.LargestIn(width, unprinted))));
            }
        }
    }

    /// <summary>Where a set is stapled, before it is folded: the piece with the line of the stop and the staples on it.</summary>
    public static Picture Staples(Size piece, Length stop, IReadOnlyList<Length> fromHead, PressFormat format)
    {
        var scale = Scale(piece);
        var (width, height, line) = (scale(piece.Width), scale(piece.Height), scale(stop));
        var marks = new List<Mark> { new BoxMark(Pen.Paper, 0, Room, width, height), new HeadMark(width / 2, Room + 8, 9), new LineMark(Pen.Fold, line, Room, line, Room + height) };
        foreach (var at in fromHead.Select(scale))
        {
            marks.Add(new LineMark(Pen.Staple, line, Room + at - 6, line, Room + at + 6));
        }

        marks.AddRange(fromHead.Select(at => new TextMark($"{format.Length(at)}", line + 34, Room + scale(at), 10)));
        marks.Add(new LineMark(Pen.Page, 0, Room - 1, line, Room - 1));
        marks.Add(new TextMark($"{format.Length(stop)}", Math.Max(26, line / 2), Room - 8, 10));
        var staples = Words.Together([.. fromHead.Select(at => $"{format.Length(at)}")]);
        return new Picture(width, height + Room, marks, Say($"Staples {staples} from the head, the stop at {format.Length(stop)}"));
    }

    /// <summary>What is cut off and in which order: the block with its spine at the left.</summary>
    /// <param name="untrimmed">The block before any cut.</param>
    /// <param name="cuts">The cuts of a step, each with its number over the whole book.</param>
    /// <param name="trim">How much comes off.</param>
    /// <param name="format">How figures are written.</param>
    public static Picture Cuts(Size untrimmed, IReadOnlyList<(int Number, Cut Cut)> cuts, Trim trim, PressFormat format)
    {
        // What is bound has lost its spine's trim before.
        var block = cuts.Any(cut => cut.Cut.Edge == Edge.Spine) ? untrimmed : untrimmed with { Width = untrimmed.Width - trim.Spine };
        var scale = Scale(block);
        var (width, height) = (scale(block.Width), scale(block.Height));
        var marks = new List<Mark> { new BoxMark(Pen.Paper, Room, Room, width, height), new LineMark(Pen.Staple, Room, Room, Room, Room + height), new TextMark(BenchWords.Of(Edge.Spine), Room - 9, Room + (height / 2), 10, 3) };
        foreach (var (number, cut) in cuts)
        {
            // A trim is a few millimetres: drawn wider than it is, or nobody would see it.
            var (x1, y1, x2, y2) = cut.Edge switch
            {
                Edge.Spine => (Room + Wide(trim.Spine), 4d, Room + Wide(trim.Spine), height + Room + 12),
                Edge.Head => (4d, Room + Wide(trim.Head), width + Room + 12, Room + Wide(trim.Head)),
                Edge.ForeEdge => (Room + width - Wide(trim.ForeEdge), 4d, Room + width - Wide(trim.ForeEdge), height + Room + 12),
                _ => (4d, Room + height - Wide(trim.Foot), width + Room + 12, Room + height - Wide(trim.Foot)),
            };
            marks.Add(new LineMark(Pen.Trim, x1, y1, x2, y2));
            marks.Add(new TextMark($"{number}", cut.Edge is Edge.Spine or Edge.ForeEdge ? x2 : x2 + 7, cut.Edge is Edge.Spine or Edge.ForeEdge ? y2 + 7 : y2, 13, Strong: true));
        }

        return new Picture(width + (2 * Room) + 6, height + (2 * Room) + 6, marks, Say($"Cuts in order: {string.Join(", ", cuts.Select(cut => Say($"{BenchWords.Of(cut.Cut.Edge)} with the fence at {format.Length(cut.Cut.Fence)}")))}"));

        double Wide(Length length) => Math.Max(8, scale(length));
    }

    /// <summary>A side of a finished copy as its reader meets it.</summary>
    public static Picture Side(ReadSide side, Size page)
    {
        var scale = Scale(page);
        var (width, height) = (scale(page.Width), scale(page.Height));
        var marks = new List<Mark> { new BoxMark(Pen.Paper, 0, 0, width, height) };
        if (side.Page is { } number)
        {
            var down = side.QuarterTurns == 2 ? height - 18 : 18;
            marks.Add(new TextMark($"{number}", width / 2, height / 2, 46, side.QuarterTurns, Strong: true, Wrong: !side.IsUpright));
            marks.Add(new HeadMark(width / 2, down, 14, side.QuarterTurns));
        }

        return new Picture(width, height, marks, side.Page is null ? Say($"A blank side") : side.IsUpright ? Say($"Page {side.Page}") : Say($"Page {side.Page}, on its head"));
    }

    private static Func<Length, double> Scale(Size size)
    {
        var scale = Long / (double)Math.Max(size.Width.Millimetres, size.Height.Millimetres);
        return length => scale * (double)length.Millimetres;
    }
}
