using PressRun.Engine.Bench;
using PressRun.Engine.Editions;

namespace PressRun.Web.Charts;

/// <summary>A piece of a book as its edge shows: which part it belongs to, how thick it is and how it is tinted.</summary>
/// <param name="Part">Index of its part, from the outside in.</param>
/// <param name="Caliper">Millimetres.</param>
/// <param name="Tint">0 for the cover, then one for each further stock.</param>
public readonly record struct PaperEdge(int Part, double Caliper, int Tint);

/// <summary>What a drawing of a book needs to be true: its proportions, its papers in order and where it is stapled. Lengths in millimetres.</summary>
/// <param name="Binding">How it is held together.</param>
/// <param name="Width">Of a page.</param>
/// <param name="Height">Of a page.</param>
/// <param name="Thickness">Of a copy.</param>
/// <param name="Edges">One for each piece, from the outside in (loose and side-stapled: from the top down).</param>
/// <param name="Staples">From the head, in parts of the page's height.</param>
/// <param name="StapleInset">From the spine, in parts of the page's width; 0 on a fold.</param>
/// <param name="CentrePages">Numbers of the two pages at the middle of a nested book; null for others.</param>
/// <param name="CoverColour">As <c>#rrggbb</c>.</param>
public sealed record BookShape(
    Binding Binding,
    double Width,
    double Height,
    double Thickness,
    IReadOnlyList<PaperEdge> Edges,
    IReadOnlyList<double> Staples,
    double StapleInset,
    (int Left, int Right)? CentrePages,
    string CoverColour)
{
    /// <summary>Used where a title has no colour of its own.</summary>
    public const string PlainCover = "#8b5e4d";

    /// <summary>The shape of a book.</summary>
    /// <param name="block">Its pieces.</param>
    /// <param name="imposition">Its page order and staple places; null where only the outside is drawn.</param>
    /// <param name="coverColour">As <c>#rrggbb</c>; null or empty for a plain cover.</param>
    public static BookShape Of(BookBlock block, Imposition? imposition, string? coverColour)
    {
        var edition = block.Edition;
        var tints = new Dictionary<string, int>(StringComparer.Ordinal);
        var edges = new List<PaperEdge>();
        for (var part = 0; part < block.Parts.Count; part++)
        {
            var pieces = block.Parts[part];
            if (part > 0 && !tints.ContainsKey(pieces.Stock.Id))
            {
                tints.Add(pieces.Stock.Id, tints.Count + 1);
            }

            edges.AddRange(Enumerable.Repeat(
                new PaperEdge(part, (double)pieces.Stock.Caliper.Millimetres, part == 0 ? 0 : tints[pieces.Stock.Id]), pieces.Count));
        }

        var pieceHeight = (double)(edition.Page.Height + edition.Trim.Head + edition.Trim.Foot).Millimetres;
        var (width, height) = ((double)edition.Page.Width.Millimetres, (double)edition.Page.Height.Millimetres);
        return new BookShape(
            edition.Binding,
            width,
            height,
            (double)block.Thickness.Millimetres,
            edges,
            imposition is null ? [] : [.. imposition.StaplesFromHead.Select(staple => (double)staple.Millimetres / pieceHeight)],
            edition.Binding == Binding.Side && imposition?.StaplerStop is { } stop ? (double)stop.Millimetres / width : 0,
            edition.Binding == Binding.Saddle && imposition is { Pieces: [.., { Inner: [var left, var right] }] } ? (left, right) : null,
            string.IsNullOrEmpty(coverColour) ? PlainCover : coverColour);
    }

    /// <summary>
    /// The edges that a drawing of <paramref name="most"/> lines shows: all of them, or evenly chosen ones with the first of every part among
    /// them, in order.
    /// </summary>
    public IReadOnlyList<PaperEdge> EdgesDrawn(int most)
    {
        if (Edges.Count <= most)
        {
            return Edges;
        }

        var chosen = new SortedSet<int>();
        for (var part = 0; part <= Edges[^1].Part; part++)
        {
            chosen.Add(Edges.TakeWhile(edge => edge.Part < part).Count());
        }

        for (var i = 0; chosen.Count < most && i < most; i++)
        {
            chosen.Add(i * (Edges.Count - 1) / Math.Max(1, most - 1));
        }

        return [.. chosen.Where(index => index < Edges.Count).Select(index => Edges[index])];
    }
}
