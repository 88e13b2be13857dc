using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Bench;

/// <summary>Which pages lie where, and where to staple and cut. Page pairs, stop and cuts are common practice.</summary>
public static class Imposer
{
    /// <summary>The imposition of an edition.</summary>
    /// <param name="block">The edition as pieces.</param>
    /// <param name="stapleFromSpine">Distance of a side staple from the spine.</param>
    public static Imposition Impose(BookBlock block, Length stapleFromSpine)
    {
        var edition = block.Edition;
        var piece = block.Parts[0].Piece;
        return new Imposition(
            edition.Binding == Binding.Saddle ? Nested(block) : Flat(block),
            edition.Binding switch
            {
                Binding.Saddle => piece.Width * 0.5m,
                Binding.Side => stapleFromSpine,
                _ => null,
            },
            edition.Binding is Binding.Saddle or Binding.Side ? [piece.Height * 0.25m, piece.Height * 0.75m] : [],
            Cuts(edition));
    }

    // Sheet i of N pages from the outside: outer face N − 2(i − 1) and 2i − 1, inner face 2i and N − 2i + 1.
    private static List<ImposedPiece> Nested(BookBlock block)
    {
        var pages = 4 * block.PiecesPerCopy;
        var pieces = new List<ImposedPiece>();
        var pushOut = Length.Zero;
        foreach (var part in block.Parts)
        {
            for (var copy = 0; copy < part.Count; copy++)
            {
                var i = pieces.Count + 1;
                pieces.Add(new ImposedPiece(
                    i, part.Part.Name, [pages - (2 * (i - 1)), (2 * i) - 1], [2 * i, pages - (2 * i) + 1], pushOut, pushOut));
                pushOut += part.Stock.Caliper * block.FoldFactor;
            }
        }

        return pieces;
    }

    private static List<ImposedPiece> Flat(BookBlock block)
    {
        var pieces = new List<ImposedPiece>();
        var total = block.Parts.Sum(part => part.Part.Pages);
        var page = 1;
        for (var index = 0; index < block.Parts.Count; index++)
        {
            var part = block.Parts[index].Part;
            if (block.Edition.Binding == Binding.Perfect && index == 0)
            {
                Add(part, [total, 1], [2, total - 1]);
                page = 3;
                continue;
            }

            var oneSided = block.Edition.Binding == Binding.Loose && part.Inside == Ink.None;
            var last = page + part.Pages - 1;
            while (page <= last)
            {
                var inner = oneSided || page == last ? Array.Empty<int>() : [page + 1];
                Add(part, [page], inner);
                page += 1 + inner.Length;
            }
        }

        return pieces;

        void Add(Part part, IReadOnlyList<int> outer, IReadOnlyList<int> inner) =>
            pieces.Add(new ImposedPiece(pieces.Count + 1, part.Name, outer, inner, Length.Zero, Length.Zero));
    }

    private static List<Cut> Cuts(Edition edition)
    {
        var (page, trim) = (edition.Page, edition.Trim);
        var height = page.Height + trim.Head + trim.Foot;
        var cuts = new List<Cut>();
        Add(Edge.Spine, trim.Spine, page.Width + trim.ForeEdge);
        Add(Edge.Head, trim.Head, height - trim.Head);
        Add(Edge.ForeEdge, trim.ForeEdge, page.Width);
        Add(Edge.Foot, trim.Foot, height - trim.Head - trim.Foot);
        return cuts;

        void Add(Edge edge, Length trimmed, Length fence)
        {
            if (trimmed > Length.Zero)
            {
                cuts.Add(new Cut(edge, fence));
            }
        }
    }
}
