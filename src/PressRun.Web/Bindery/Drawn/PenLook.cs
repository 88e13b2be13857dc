namespace PressRun.Web.Bindery.Drawn;

/// <summary>How a pen looks outside the app's own pages: on paper, where colours may turn grey, lines differ by their dashes too.</summary>
/// <param name="Stroke">As <c>#rrggbb</c>; null for none.</param>
/// <param name="Fill">Likewise.</param>
/// <param name="Width">In millimetres.</param>
/// <param name="Dash">Strokes and gaps in millimetres; empty for a whole line.</param>
public sealed record PenLook(string? Stroke, string? Fill, double Width, IReadOnlyList<double> Dash)
{
    private const string Ink = "#24211d";

    /// <summary>The look of a pen.</summary>
    public static PenLook Of(Pen pen) => pen switch
    {
        Pen.Paper => new(Ink, "#ffffff", 0.2, []),
        Pen.Piece => new(Ink, null, 0.3, []),
        Pen.Page => new("#8b8374", null, 0.15, []),
        Pen.Bleed => new(null, "#efe9dc", 0, []),
        Pen.Fold => new("#2c664b", null, 0.25, [2, 1.5]),
        Pen.Trim => new("#96392c", null, 0.25, [6, 1, 1, 1]),
        Pen.Staple => new(Ink, null, 1, []),
        // Thin, or a pattern closes up where it is drawn small.
        _ => new("#5d574d", null, 0.1, []),
    };
}
