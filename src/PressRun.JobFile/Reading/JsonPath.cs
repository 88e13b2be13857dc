using System.Globalization;
using System.Text;

namespace PressRun.JobFile.Reading;

/// <summary>Where a value stands in a document, as a JSONPath (RFC 9535): <c>$.edition.parts[1].pages</c>,
/// <c>$.stocks['silk-cover'].weight</c>. Kept as a chain, so that nothing is written out until a problem needs it.</summary>
public sealed class JsonPath
{
    // As long as an id may be, so that every path into a file that means well is whole.
    private const int LongestName = 200;

    private readonly JsonPath? parent;
    private readonly string name;
    private readonly int index;

    private JsonPath(JsonPath? parent, string name, int index)
    {
        this.parent = parent;
        this.name = name;
        this.index = index;
    }

    /// <summary>The document itself: <c>$</c>.</summary>
    public static JsonPath Root { get; } = StartingAt("$");

    /// <summary>A path that goes on from a place already written out, such as <c>$.shops[2]</c>.</summary>
    public static JsonPath StartingAt(string place) => new(null, place, -1);

    /// <summary>The path of a member of the object at this path; of a key longer than an id may be, its beginning and an ellipsis.</summary>
    public JsonPath Member(string member) => new(this, Excerpt.Of(member, LongestName), -1);

    /// <summary>The path of an item, counted from 0, of the array at this path.</summary>
    public JsonPath Item(int item) => new(this, string.Empty, item);

    /// <summary>The path as text.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        Write(text);
        return text.ToString();
    }

    private void Write(StringBuilder text)
    {
        if (parent is null)
        {
            text.Append(name);
            return;
        }

        parent.Write(text);
        if (index >= 0)
        {
            text.Append(CultureInfo.InvariantCulture, $"[{index}]");
        }
        else if (IsShorthand(name))
        {
            text.Append('.').Append(name);
        }
        else
        {
            WriteQuoted(text, name);
        }
    }

    // member-name-shorthand of RFC 9535: a letter, an underscore or a character outside ASCII, then also digits.
    private static bool IsShorthand(string name)
    {
        if (name.Length == 0 || char.IsAsciiDigit(name[0]))
        {
            return false;
        }

        foreach (var letter in name)
        {
            if (letter < 0x80 && letter != '_' && !char.IsAsciiLetterOrDigit(letter))
            {
                return false;
            }
        }

        return true;
    }

    private static void WriteQuoted(StringBuilder text, string name)
    {
        text.Append("['");
        foreach (var letter in name)
        {
            _ = letter switch
            {
                '\'' or '\\' => text.Append('\\').Append(letter),
                < ' ' => text.Append(CultureInfo.InvariantCulture, $"\\u{(int)letter:x4}"),
                _ => text.Append(letter),
            };
        }

        text.Append("']");
    }
}
