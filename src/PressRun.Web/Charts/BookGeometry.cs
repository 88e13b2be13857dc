namespace PressRun.Web.Charts;

/// <summary>An outline of a drawing with what it is filled with.</summary>
/// <param name="Path">SVG path.</param>
/// <param name="Tint">As of a <see cref="PaperEdge"/>; -1 for the page that lies open.</param>
public readonly record struct BookOutline(string Path, int Tint);

/// <summary>A staple as a stroke.</summary>
public readonly record struct StapleStroke(double X1, double Y1, double X2, double Y2);

/// <summary>
/// A book drawn from its shape. Open: a spread with every piece's rim showing below it and at both fore-edges, outermost last.
/// Closed: the front, with the pieces' edges at fore-edge and foot.
/// </summary>
public sealed record BookGeometry(
    double Width,
    double Height,
    IReadOnlyList<BookOutline> Outlines,
    IReadOnlyList<StapleStroke> Staples,
    string Fold,
    IReadOnlyList<(double X, double Y, int Page)> PageNumbers)
{
    // Thickness is drawn larger than life, or papers could not be told apart: so many units a millimetre, within bounds.
    private const double RimPerMillimetre = 5;

    /// <summary>The open spread.</summary>
    /// <param name="shape">The book.</param>
    /// <param name="width">Of the drawing.</param>
    public static BookGeometry Open(BookShape shape, double width)
    {
        var edges = shape.EdgesDrawn(14);
        var rim = Math.Clamp(shape.Thickness * RimPerMillimetre * width / 320, width / 40, width / 11);
        var step = rim / Math.Max(1, edges.Count);
        var scale = (width - (2 * rim) - 2) / (2 * shape.Width);
        var (w, h) = (shape.Width * scale, shape.Height * scale);
        var (middle, top, sag) = (width / 2, 2.0, w * 0.055);
        var outlines = new List<BookOutline>();
        for (var i = 0; i < edges.Count; i++)
        {
            var outward = step * (edges.Count - i);
            outlines.Add(new BookOutline(Spread(middle, top + outward, w + (outward * 0.8), h, sag), edges[i].Tint));
        }

        outlines.Add(new BookOutline(Spread(middle, top, w, h, sag), -1));
        var staples = shape.Staples.Select(at => new StapleStroke(
            middle, top + sag + (h * at) - (h * 0.028), middle, top + sag + (h * at) + (h * 0.028)));
        var numbers = shape.CentrePages is var (left, right)
            ? new[] { (middle - (w * 0.86), top + (h * 0.955), left), (middle + (w * 0.86), top + (h * 0.955), right) }
            : [];
        var fold = $"M{Svg.Point(middle, top + sag)}V{Svg.N(top + sag + h)}";
        return new BookGeometry(width, top + h + sag + rim + 3, outlines, [.. staples], fold, numbers);
    }

    /// <summary>The closed book, its spine at the left.</summary>
    /// <param name="shape">The book.</param>
    /// <param name="width">Most that the drawing is wide.</param>
    /// <param name="height">Most that it is high.</param>
    public static BookGeometry Closed(BookShape shape, double width, double height)
    {
        var edges = shape.EdgesDrawn(width < 100 ? 4 : 12);
        var rim = Math.Clamp(shape.Thickness * RimPerMillimetre * width / 320, width / 20, width / 9);
        var step = rim / Math.Max(1, edges.Count);
        var scale = Math.Min((width - rim - 2) / shape.Width, (height - rim - 2) / shape.Height);
        var (w, h) = (shape.Width * scale, shape.Height * scale);
        var outlines = new List<BookOutline>();
        if (shape.Binding is Engine.Editions.Binding.Saddle or Engine.Editions.Binding.Perfect)
        {
            // The back of the cover closes the block from below.
            outlines.Add(new BookOutline(Leaf(1 + rim, 1 + rim, w, h), 0));
        }

        for (var i = edges.Count - 1; i >= 0; i--)
        {
            outlines.Add(new BookOutline(Leaf(1 + (step * i), 1 + (step * i), w, h), edges[i].Tint));
        }

        var inset = 1 + Math.Max(shape.StapleInset * w, shape.Binding == Engine.Editions.Binding.Saddle ? 0 : 1.5);
        var staples = shape.Staples.Select(at => new StapleStroke(inset, 1 + (h * at) - (h * 0.03), inset, 1 + (h * at) + (h * 0.03)));
        return new BookGeometry(w + rim + 2, h + rim + 2, outlines, [.. staples], "", []);
    }

    // Two pages that fall towards the fold, as pages of an open book do.
    private static string Spread(double middle, double top, double w, double h, double sag)
    {
        string Edge(double y, int side, bool back) => back
            ? $"C{Svg.Point(middle + (side * w * 0.55), y - (sag * 0.35))} {Svg.Point(middle + (side * w * 0.16), y - (sag * 0.1))} {Svg.Point(middle, y + sag)}"
            : $"C{Svg.Point(middle + (side * w * 0.16), y - (sag * 0.1))} {Svg.Point(middle + (side * w * 0.55), y - (sag * 0.35))} {Svg.Point(middle + (side * w), y + (sag * 0.25))}";
        return $"M{Svg.Point(middle - w, top + (sag * 0.25))}{Edge(top, -1, back: true)}{Edge(top, 1, back: false)}"
            + $"V{Svg.N(top + h + (sag * 0.25))}{Edge(top + h, 1, back: true)}{Edge(top + h, -1, back: false)}Z";
    }

    private static string Leaf(double x, double y, double w, double h) => $"M{Svg.Point(x, y)}h{Svg.N(w)}v{Svg.N(h)}h{Svg.N(-w)}z";
}
