using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PressRun.Web.Pdf;
using PressRun.Web.Shared.Faces;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Bindery.Drawn;

/// <summary>Pictures on the pages of a PDF.</summary>
public static class PdfPicture
{
    private const double MiddleOfLetters = 0.35;

    /// <summary>Points in a millimetre (a point is 1/72 inch).</summary>
    public const double PointsPerMillimetre = 72 / 25.4;

    /// <summary>A document with a page for each picture in millimetres, every page as large as its picture and everything on it at its true size.</summary>
    /// <param name="title">Title of the document.</param>
    /// <param name="pictures">At least one.</param>
    public static byte[] AtTrueSize(string title, IEnumerable<Picture> pictures)
    {
        PaperFonts.Provide();
        using var document = new PdfDocument();
        document.Info.Title = title;
        document.Language = Texts.Language.Name;
        foreach (var picture in pictures)
        {
            var page = document.AddPage();
            page.Width = XUnitPt.FromMillimeter(picture.Width);
            page.Height = XUnitPt.FromMillimeter(picture.Height);
            using var graphics = XGraphics.FromPdfPage(page);
            Draw(graphics, picture, 0, 0, PointsPerMillimetre);
        }

        return PdfFile.Of(document);
    }

    /// <summary>Draws a picture.</summary>
    /// <param name="graphics">The page.</param>
    /// <param name="picture">The picture.</param>
    /// <param name="left">Its left edge on the page, in points.</param>
    /// <param name="top">Its upper edge, in points.</param>
    /// <param name="scale">Points for one of its units.</param>
    public static void Draw(XGraphics graphics, Picture picture, double left, double top, double scale)
    {
        foreach (var mark in picture.Marks)
        {
            switch (mark)
            {
                case LineMark line:
                    graphics.DrawLine(PenOf(line.Pen), left + (line.X1 * scale), top + (line.Y1 * scale), left + (line.X2 * scale), top + (line.Y2 * scale));
                    break;
                case BoxMark box:
                    var look = PenLook.Of(box.Pen);
                    graphics.DrawRectangle(
                        look.Stroke is null ? null : PenOf(box.Pen), look.Fill is { } fill ? new XSolidBrush(Colour(fill)) : null,
                        left + (box.X * scale), top + (box.Y * scale), box.Width * scale, box.Height * scale);
                    break;
                case HeadMark head:
                    graphics.DrawPolygon(XBrushes.Black, [.. head.Corners.Select(corner => new XPoint(left + (corner.X * scale), top + (corner.Y * scale)))], XFillMode.Winding);
                    break;
                case TextMark text:
                    Write(graphics, text, left + (text.X * scale), top + (text.Y * scale), text.Size * scale);
                    break;
            }
        }
    }

    private static void Write(XGraphics graphics, TextMark text, double x, double y, double size)
    {
        var state = graphics.Save();
        graphics.RotateAtTransform(90 * text.QuarterTurns, new XPoint(x, y));
        // Small letters stand about a third of the size above their base line, so that words lie around their point.
        var face = PaperFonts.Sans(text.Words, size, text.Strong);
        face.Draw(graphics, text.Words, XBrushes.Black, x - (face.Width(graphics, text.Words) / 2), y + (size * MiddleOfLetters));
        graphics.Restore(state);
    }

    private static XPen PenOf(Pen pen)
    {
        var look = PenLook.Of(pen);
        var drawn = new XPen(Colour(look.Stroke!), look.Width * PointsPerMillimetre);
        if (look.Dash.Count > 0)
        {
            // Dashes are counted in widths of the pen.
            drawn.DashPattern = [.. look.Dash.Select(length => length / look.Width)];
        }

        return drawn;
    }

    private static XColor Colour(string hex) => XColor.FromArgb(Convert.FromHexString(hex[1..]) is [var red, var green, var blue] ? (255 << 24) | (red << 16) | (green << 8) | blue : 0);
}
