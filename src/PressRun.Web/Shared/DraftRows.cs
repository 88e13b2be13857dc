using System.Text.Json;

namespace PressRun.Web.Shared;

/// <summary>A list of rows as one draft: a list of lists of texts, as the browser writes it (see <c>drafts.js</c>).</summary>
public static class DraftRows
{
    /// <summary>The rows as text.</summary>
    public static string Write(IEnumerable<IReadOnlyList<string>> rows) => JsonSerializer.Serialize(rows);

    /// <summary>The rows of a draft; null where it is no list of rows with so many fields.</summary>
    public static IReadOnlyList<IReadOnlyList<string>>? Read(string text, int fields)
    {
        try
        {
            return JsonSerializer.Deserialize<string[][]>(text) is { } rows && rows.All(row => row is not null && row.Length == fields && row.All(field => field is not null))
                ? rows
                : null;
        }
        catch (JsonException)
        {
            // What cannot be read is no draft that could be shown.
            return null;
        }
    }
}
