using System.Text;
using Microsoft.AspNetCore.Components;
using PressRun.Engine.Ladder;

namespace PressRun.Web.Charts;

/// <summary>
/// The quantities next to the marker under a loupe, with a cost axis of their own, so that small drops are seen. It lies in a corner of the
/// picture that the line and the shaded bands leave free: from the top left or the bottom right inwards, else nowhere.
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

    // Parts of the plot's height.
    private static readonly double[] Heights = [0.42, 0.32];

    /// <summary>What is seen through it.</summary>
    /// <param name="title">Words in its corner.</param>
    public MarkupString Drawn(string title) => SvgText.Of(
    [
        SvgText.Box(SvgText.At("class", "glass"), Left, Top, Width, Height),
        .. Bands.Select(band => SvgText.Box(SvgText.At("class", "dear"), band.X, Top + 1, band.Width, Height - 2)),
        SvgText.Element("path", SvgText.At("d", Path)),
        .. Dots.Select(dot => SvgText.Dot("dot", dot.X, dot.Y)),
        SvgText.Dot("at", At.X, At.Y),
        SvgText.Words(null, Left + 5, Top + 14, "start", title),
    ]);

    /// <summary>The loupe over a drawing, or null where nothing would be gained or no corner is free.</summary>
    public static StaircaseLoupe? Of(CostCurve curve, IReadOnlyList<DearBand> bands, int quantity, StaircaseDrawing drawing)
    {
        var (from, to) = (Math.Max(curve.From, quantity - Reach), Math.Min(curve.To, quantity + Reach));
        if (curve.To - curve.From < 4 * Reach || to - from < 4 || Place(curve, drawing) is not var (left, top, width, height))
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

    // A lower one where a higher one would lie on the line, and further in where a corner is shaded.
    private static (double Left, double Top, double Width, double Height)? Place(CostCurve curve, StaircaseDrawing drawing)
    {
        var frame = drawing.Frame;
        var width = (frame.Right - frame.Left) * frame.LoupeWidth;
        foreach (var height in Heights.Select(part => (frame.Bottom - frame.Top) * part))
        {
            for (var aside = 0d; aside <= frame.Right - frame.Left - width; aside += Gap)
            {
                var (left, right) = (frame.Left + 1 + aside, frame.Right - width - aside);
                if (!IsShaded(left, width, drawing) && Covered(left, width, curve, drawing).Min(cost => drawing.Y(cost)) > frame.Top + height + Gap)
                {
                    return (left, frame.Top, width, height);
                }

                // The figures of what a copy costs hang below the line.
                const double figures = 34;
                if (!IsShaded(right, width, drawing) && Covered(right, width, curve, drawing).Max(cost => drawing.Y(cost)) + figures < frame.Bottom - height - Gap)
                {
                    return (right, frame.Bottom - height - Gap, width, height);
                }
            }
        }

        return null;
    }

    private static bool IsShaded(double left, double width, StaircaseDrawing drawing) =>
        drawing.Bands.Any(band => band.X < left + width && band.X + band.Width > left);

    // Costs over and a little beside the place.
    private static IEnumerable<decimal> Covered(double left, double width, CostCurve curve, StaircaseDrawing drawing)
    {
        var frame = drawing.Frame;
        int At(double x) => Math.Clamp(curve.From + (int)((curve.To - curve.From) * (x - frame.Left) / (frame.Right - frame.Left)), curve.From, curve.To);
        var (first, last) = (At(left - Gap), At(left + width + Gap));
        return Enumerable.Range(first, last - first + 1).Select(curve.At);
    }
}
