using System.Globalization;
using System.Text.Json;

namespace PressRun.Web.Shared;

/// <summary>A list of rows as one draft: a list of lists of texts, as the browser writes it (see <c>drafts.js</c>).</summary>
public static class DraftRows
{
    /// <summary>The rows as text.</summary>
    public static string Write(IEnumerable<IReadOnlyList<string>> rows) => JsonSerializer.Serialize(rows);

    /// <summary>The rows as text, after a row that says over what they are to be kept.</summary>
    public static string Write(IEnumerable<IReadOnlyList<string>> rows, uint over) => Write(rows.Prepend([over.ToString(CultureInfo.InvariantCulture)]));

    /// <summary>The rows of a draft; null where it is no list of rows with so many fields.</summary>
    public static IReadOnlyList<IReadOnlyList<string>>? Read(string text, int fields)
    {
        try
        {
            return JsonSerializer.Deserialize<string[][]>(text) is { } rows && AreRows(rows, fields)
                ? rows
                : null;
        }
        catch (JsonException)
        {
            // What cannot be read is no draft that could be shown.
            return null;
        }
    }

    /// <summary>The rows of a draft that says over what they are to be kept; null where it is none.</summary>
    public static (uint Over, IReadOnlyList<IReadOnlyList<string>> Rows)? ReadOver(string text, int fields)
    {
        try
        {
            return JsonSerializer.Deserialize<string[][]>(text) is [[{ } over], .. var rows] && uint.TryParse(over, NumberStyles.None, CultureInfo.InvariantCulture, out var version)
                && AreRows(rows, fields)
                    ? (version, rows)
                    : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static bool AreRows(string[][] rows, int fields) => rows.All(row => row is not null && row.Length == fields && row.All(field => field is not null));
}
