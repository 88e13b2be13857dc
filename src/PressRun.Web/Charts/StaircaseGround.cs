using System.Xml.Linq;
using Microsoft.AspNetCore.Components;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Charts;

/// <summary>What of a staircase stays as it is whichever quantity is chosen.</summary>
/// <param name="Under">Grid, shaded bands, ticks, the line and its marks.</param>
/// <param name="Over">The dots at its jumps, which lie over the small figures.</param>
public sealed record StaircaseGround(MarkupString Under, MarkupString Over)
{
    /// <summary>Draws it.</summary>
    /// <param name="drawing">The staircase.</param>
    /// <param name="hatch">Id of the hatching's pattern, one of its own on the page.</param>
    /// <param name="format">How amounts are written.</param>
    public static StaircaseGround Of(StaircaseDrawing drawing, string hatch, PressFormat format)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentNullException.ThrowIfNull(format);
        return new StaircaseGround(
            SvgText.Of([Hatching(hatch), .. CostAxis(drawing, format), .. Bands(drawing, hatch), .. Ticks(drawing), .. Line(drawing)]),
            SvgText.Of(drawing.Dots.Select(dot => SvgText.Dot($"dot{(dot.Open ? " open" : null)}", dot.X, dot.Y, 3.5))));
    }

    private static XElement Hatching(string hatch) => SvgText.Element(
        "defs",
        SvgText.Element(
            "pattern",
            SvgText.At("id", hatch),
            SvgText.At("width", 6),
            SvgText.At("height", 6),
            SvgText.At("patternUnits", "userSpaceOnUse"),
            SvgText.At("patternTransform", "rotate(45)"),
            SvgText.Stroke("hatch", 0, 0, 0, 6)));

    private static IEnumerable<XElement> CostAxis(StaircaseDrawing drawing, PressFormat format)
    {
        var frame = drawing.Frame;
        return drawing.CostMarks.SelectMany(mark => new[]
        {
            SvgText.Stroke("grid", frame.Left, drawing.Y(mark), frame.Right, drawing.Y(mark)),
            SvgText.Words("axis", frame.Left - 8, drawing.Y(mark) + 4, "end", format.Number((decimal)mark, 2)),
        });
    }

    private static IEnumerable<XElement> Bands(StaircaseDrawing drawing, string hatch)
    {
        var frame = drawing.Frame;
        XElement Full(ShadedBand band, XAttribute look) => SvgText.Box(look, band.X, frame.Top, band.Width, frame.Bottom - frame.Top);
        return drawing.Bands.SelectMany(band => new[]
        {
            Full(band, SvgText.At("class", "dear")),
            Full(band, SvgText.At("fill", $"url(#{hatch})")),
            SvgText.Words("key", band.KeyX, frame.Top - 7, "middle", band.Key.ToString()),
        });
    }

    private static IEnumerable<XElement> Ticks(StaircaseDrawing drawing) =>
        drawing.QuantityMarks.Select(drawing.X).Select(x => SvgText.Stroke("tick", x, drawing.Frame.Bottom, x, drawing.Frame.Bottom + 4));

    private static IEnumerable<XElement> Line(StaircaseDrawing drawing) =>
    [
        SvgText.Element("path", SvgText.At("class", "line"), SvgText.At("d", drawing.Path)),
        .. drawing.UnitCosts.Select(mark => SvgText.Dot("mark", mark.X, mark.Y, 2.5)),
    ];
}
