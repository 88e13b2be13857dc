using System.Text;
using PressRun.Engine.Ladder;

namespace PressRun.Web.Charts;

/// <summary>
/// The quantities next to the marker under a loupe, with a cost axis of their own, so that small drops are seen. It lies in a corner of the
/// picture that the line leaves free: at the top left, else at the bottom right, else nowhere.
/// </summary>
public sealed record StaircaseLoupe(
    double Left,
    double Top,
    double Width,
    double Height,
    int From,
    int To,
    string Path,
    IReadOnlyList<StaircaseDot> Dots,
    StaircaseDot At,
    IReadOnlyList<(double X, double Width)> Bands)
{
    // Copies to each side of the marker.
    private const int Reach = 12;
    private const double Gap = 10;
    private const double Lettering = 20;

    /// <summary>The loupe over a drawing, or null where nothing would be gained or no corner is free.</summary>
    public static StaircaseLoupe? Of(CostCurve curve, IReadOnlyList<DearBand> bands, int quantity, StaircaseDrawing drawing)
    {
        var (from, to) = (Math.Max(curve.From, quantity - Reach), Math.Min(curve.To, quantity + Reach));
        if (curve.To - curve.From < 4 * Reach || to - from < 4 || Corner(curve, drawing) is not var (left, top, width, height))
        {
            return null;
        }

        var costs = Enumerable.Range(from, to - from + 1).Select(curve.At).ToList();
        var (least, most) = ((double)costs.Min(), (double)costs.Max());
        double X(int at) => left + Gap + ((width - (2 * Gap)) * (at - from) / (to - from + 1));
        double Y(decimal cost) => most <= least
            ? top + (height / 2)
            : top + height - Gap - ((height - Gap - Lettering) * ((double)cost - least) / (most - least));
        var path = new StringBuilder();
        for (var at = from; at <= to; at++)
        {
            path.Append('M').Append(Svg.Point(X(at), Y(curve.At(at)))).Append('H').Append(Svg.N(X(at + 1)));
        }

        return new StaircaseLoupe(
            left,
            top,
            width,
            height,
            from,
            to,
            path.ToString(),
            [.. costs.Select((cost, i) => new StaircaseDot(X(from + i), Y(cost), Open: false))],
            new StaircaseDot(X(quantity), Y(curve.At(quantity)), Open: false),
            [.. bands.Where(band => band.From <= to && band.To >= from)
                .Select(band => (X(Math.Max(from, band.From)), X(Math.Min(to, band.To) + 1) - X(Math.Max(from, band.From))))]);
    }

    private static (double Left, double Top, double Width, double Height)? Corner(CostCurve curve, StaircaseDrawing drawing)
    {
        var frame = drawing.Frame;
        var (width, height) = ((frame.Right - frame.Left) * frame.LoupeWidth, (frame.Bottom - frame.Top) * 0.42);
        var across = Math.Max(1, (int)((curve.To - curve.From) * (frame.LoupeWidth + 0.04)));
        var first = Enumerable.Range(curve.From, across).Max(curve.At);
        if (drawing.Y(first) > frame.Top + height + Gap)
        {
            return (frame.Left + 1, frame.Top, width, height);
        }

        // The figures of what a copy costs hang below the line.
        const double figures = 34;
        var last = Enumerable.Range(curve.To - across, across).Min(curve.At);
        return drawing.Y(last) + figures < frame.Bottom - height - Gap
            ? (frame.Right - width, frame.Bottom - height - Gap, width, height)
            : null;
    }
}
