using System.Xml.Linq;
using Microsoft.AspNetCore.Components;

namespace PressRun.Web.Charts;

/// <summary>Parts of a drawing as one text. A page that is open holds each element and attribute that it has drawn by itself; of many dots that is more than the dots are worth.</summary>
internal static class SvgText
{
    /// <summary>Elements as one text, with whatever they say encoded.</summary>
    public static MarkupString Of(IEnumerable<XElement> elements) => new(string.Concat(elements.Select(element => element.ToString(SaveOptions.DisableFormatting))));

    /// <summary>An element with its attributes and what is in it.</summary>
    public static XElement Element(string name, params object[] content) => new(name, content);

    /// <summary>A straight line.</summary>
    public static XElement Stroke(string look, double x1, double y1, double x2, double y2) =>
        Element("line", At("class", look), At("x1", x1), At("y1", y1), At("x2", x2), At("y2", y2));

    /// <summary>A circle; its radius may be the look's.</summary>
    public static XElement Dot(string look, double x, double y, double? radius = null)
    {
        var dot = Element("circle", At("class", look), At("cx", x), At("cy", y));
        if (radius is { } r)
        {
            dot.Add(At("r", r));
        }

        return dot;
    }

    /// <summary>A rectangle.</summary>
    public static XElement Box(XAttribute look, double x, double y, double width, double height) =>
        Element("rect", look, At("x", x), At("y", y), At("width", width), At("height", height));

    /// <summary>Words in a picture.</summary>
    /// <param name="look">Class; null for that of what they stand in.</param>
    /// <param name="x">Where the anchor lies.</param>
    /// <param name="y">The words' foot.</param>
    /// <param name="anchor">start, middle or end.</param>
    /// <param name="words">The words.</param>
    public static XElement Words(string? look, double x, double y, string anchor, string words)
    {
        var text = Element("text", At("x", x), At("y", y), At("text-anchor", anchor), words);
        if (look is not null)
        {
            text.Add(At("class", look));
        }

        return text;
    }

    /// <summary>A coordinate or a length.</summary>
    public static XAttribute At(string name, double coordinate) => new(name, Svg.N(coordinate));

    /// <summary>Another attribute.</summary>
    public static XAttribute At(string name, string text) => new(name, text);
}
