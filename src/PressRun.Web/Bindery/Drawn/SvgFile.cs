using System.Globalization;
using System.Text;
using System.Xml;
using PressRun.Web.Charts;

namespace PressRun.Web.Bindery.Drawn;

/// <summary>A picture in millimetres as a file of its own, at its true size and with its look in itself.</summary>
public static class SvgFile
{
    private const string Space = "http://www.w3.org/2000/svg";

    /// <summary>The file.</summary>
    public static byte[] Of(Picture picture)
    {
        using var stream = new MemoryStream();
        using (var xml = XmlWriter.Create(stream, new XmlWriterSettings { Encoding = new UTF8Encoding(false), Indent = true }))
        {
            xml.WriteStartElement("svg", Space);
            xml.WriteAttributeString("width", Mm(picture.Width));
            xml.WriteAttributeString("height", Mm(picture.Height));
            xml.WriteAttributeString("viewBox", $"0 0 {N(picture.Width)} {N(picture.Height)}");
            xml.WriteElementString("title", Space, picture.Words);
            foreach (var mark in picture.Marks)
            {
                Write(xml, mark);
            }

            xml.WriteEndElement();
        }

        return stream.ToArray();
    }

    private static void Write(XmlWriter xml, Mark mark)
    {
        switch (mark)
        {
            case LineMark line:
                Element("line", [("x1", line.X1), ("y1", line.Y1), ("x2", line.X2), ("y2", line.Y2)], PenLook.Of(line.Pen));
                break;
            case BoxMark box:
                Element("rect", [("x", box.X), ("y", box.Y), ("width", box.Width), ("height", box.Height)], PenLook.Of(box.Pen));
                break;
            case HeadMark head:
                xml.WriteStartElement("polygon", Space);
                xml.WriteAttributeString("points", string.Join(' ', head.Corners.Select(corner => Svg.Point(corner.X, corner.Y))));
                xml.WriteEndElement();
                break;
            case TextMark text:
                xml.WriteStartElement("text", Space);
                xml.WriteAttributeString("x", N(text.X));
                xml.WriteAttributeString("y", N(text.Y));
                xml.WriteAttributeString("font-size", N(text.Size));
                xml.WriteAttributeString("font-family", "sans-serif");
                xml.WriteAttributeString("text-anchor", "middle");
                xml.WriteAttributeString("dominant-baseline", "central");
                xml.WriteAttributeString("transform", $"rotate({90 * text.QuarterTurns} {N(text.X)} {N(text.Y)})");
                xml.WriteString(text.Words);
                xml.WriteEndElement();
                break;
        }

        void Element(string name, (string Name, double Value)[] places, PenLook look)
        {
            xml.WriteStartElement(name, Space);
            foreach (var (attribute, value) in places)
            {
                xml.WriteAttributeString(attribute, N(value));
            }

            xml.WriteAttributeString("fill", look.Fill ?? "none");
            xml.WriteAttributeString("stroke", look.Stroke ?? "none");
            xml.WriteAttributeString("stroke-width", N(look.Width));
            if (look.Dash.Count > 0)
            {
                xml.WriteAttributeString("stroke-dasharray", string.Join(' ', look.Dash.Select(N)));
            }

            xml.WriteEndElement();
        }
    }

    // A thousandth of a millimetre: true to scale is not true to two decimals.
    private static string N(double millimetres) => millimetres.ToString("0.###", CultureInfo.InvariantCulture);

    private static string Mm(double millimetres) => N(millimetres) + "mm";
}
