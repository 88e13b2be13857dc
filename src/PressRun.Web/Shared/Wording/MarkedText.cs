using System.Collections.Concurrent;
using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace PressRun.Web.Shared.Wording;

/// <summary>A text with elements and gaps, as a page renders it. Elements are the text's own; what fills a gap never becomes one.</summary>
internal static partial class MarkedText
{
    // As many as the app has texts; a translation adds its own.
    private static readonly ConcurrentDictionary<string, XElement> Parsed = new(StringComparer.Ordinal);

    /// <summary>The text with its gaps filled.</summary>
    /// <exception cref="System.Xml.XmlException">The text is not well formed.</exception>
    public static RenderFragment Of(string text, object?[] gaps) => builder =>
    {
        var place = 0;
        foreach (var node in Parsed.GetOrAdd(text, words => XElement.Parse($"<t>{words}</t>", LoadOptions.PreserveWhitespace)).Nodes())
        {
            Add(builder, node, gaps, ref place);
        }
    };

    private static void Add(RenderTreeBuilder builder, XNode node, object?[] gaps, ref int place)
    {
        if (node is XText words)
        {
            foreach (var part in Gap().Split(words.Value).Where(part => part.Length > 0))
            {
                Add(builder, part, gaps, ref place);
            }
        }
        else if (node is XElement element)
        {
            builder.OpenElement(place++, element.Name.LocalName);
            foreach (var attribute in element.Attributes())
            {
                builder.AddAttribute(place++, attribute.Name.LocalName, Texts.Filled(attribute.Value, gaps));
            }

            foreach (var inner in element.Nodes())
            {
                Add(builder, inner, gaps, ref place);
            }

            builder.CloseElement();
        }
    }

    private static void Add(RenderTreeBuilder builder, string part, object?[] gaps, ref int place)
    {
        switch (part[0] == '{' ? gaps[int.Parse(part.AsSpan(1, part.Length - 2), CultureInfo.InvariantCulture)] : part)
        {
            case RenderFragment fragment:
                builder.AddContent(place++, fragment);
                break;
            case Shown shown:
                builder.OpenComponent<Figure>(place++);
                builder.AddComponentParameter(place++, nameof(Figure.Of), shown);
                builder.CloseComponent();
                break;
            case var words:
                builder.AddContent(place++, Convert.ToString(words, CultureInfo.CurrentCulture));
                break;
        }
    }

    // The capture keeps each gap among the parts.
    [GeneratedRegex(@"(\{\d+\})")]
    private static partial Regex Gap();
}
