using System.Collections.Concurrent;
using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

// A text that is looked up has its parts always in the same order, so counting them numbers them as places in code do.
#pragma warning disable ASP0006

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
        foreach (var node in Parsed.GetOrAdd(text, words => XElement.Parse($"<t>{words}</t>", LoadOptions.PreserveWhitespace)).Nodes())
        {
            Add(builder, node, gaps);
        }
    };

    // Places are numbered by the code, as in a loop of a page: each kind of part has its own.
    private static void Add(RenderTreeBuilder builder, XNode node, object?[] gaps)
    {
        if (node is XText words)
        {
            foreach (var part in Gap().Split(words.Value).Where(part => part.Length > 0))
            {
                Add(builder, part, gaps);
            }
        }
        else if (node is XElement element)
        {
            builder.OpenElement(0, element.Name.LocalName);
            builder.AddMultipleAttributes(1, element.Attributes().Select(attribute => KeyValuePair.Create(attribute.Name.LocalName, (object)Texts.Filled(attribute.Value, gaps))));
            foreach (var inner in element.Nodes())
            {
                Add(builder, inner, gaps);
            }

            builder.CloseElement();
        }
    }

    private static void Add(RenderTreeBuilder builder, string part, object?[] gaps)
    {
        switch (part[0] == '{' ? gaps[int.Parse(part.AsSpan(1, part.Length - 2), CultureInfo.InvariantCulture)] : part)
        {
            case RenderFragment fragment:
                builder.AddContent(2, fragment);
                break;
            case Shown shown:
                builder.OpenComponent<Figure>(3);
                builder.AddComponentParameter(4, nameof(Figure.Of), shown);
                builder.CloseComponent();
                break;
            case var words:
                builder.AddContent(5, Convert.ToString(words, CultureInfo.CurrentCulture));
                break;
        }
    }

    // The capture keeps each gap among the parts.
    [GeneratedRegex(@"(\{\d+\})")]
    private static partial Regex Gap();
}
