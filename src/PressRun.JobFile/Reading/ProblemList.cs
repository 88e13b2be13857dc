using System.Text.Json;
using PressRun.Engine.Costing;

namespace PressRun.JobFile.Reading;

/// <summary>The problems found so far while a document is read.</summary>
public sealed class ProblemList
{
    /// <summary>Most problems that are listed, so that a hostile document cannot ask for an endless answer.</summary>
    public const int Most = 500;

    private const int LongestValue = 120;
    private readonly List<Problem> problems = [];

    /// <summary>True where there is none.</summary>
    public bool IsEmpty => problems.Count == 0;

    /// <summary>True where no further problem would be listed.</summary>
    public bool IsFull => problems.Count > Most;

    /// <summary>The problems in the order found.</summary>
    public IReadOnlyList<Problem> Problems => problems;

    /// <summary>Notes a problem. Past <see cref="Most"/> problems one last entry says that there are more.</summary>
    /// <param name="path">Where.</param>
    /// <param name="value">What stands there, as text; null where nothing does.</param>
    /// <param name="rule">A sentence that says what would be right.</param>
    public void Add(JsonPath path, string? value, string rule)
    {
        if (problems.Count < Most)
        {
            problems.Add(new Problem(path.ToString(), value is null ? null : Shortened(value), rule));
        }
        else if (problems.Count == Most)
        {
            problems.Add(new Problem("$", null, "There are more problems than are listed here; mend these first."));
        }
    }

    /// <summary>Notes a problem with a value of the document.</summary>
    public void Add(JsonPath path, JsonElement value, string rule) =>
        Add(path, value.ValueKind == JsonValueKind.String ? value.GetString() : value.GetRawText(), rule);

    /// <summary>The value, where nothing stands in its way.</summary>
    public Outcome<T> OutcomeOf<T>(T? value)
        where T : class =>
        IsEmpty && value is not null ? Outcome<T>.Of(value) : Outcome<T>.Refused(problems);

    private static string Shortened(string value)
    {
        if (value.Length <= LongestValue)
        {
            return value;
        }

        // Not between the halves of a surrogate pair.
        var end = char.IsHighSurrogate(value[LongestValue - 1]) ? LongestValue - 1 : LongestValue;
        return value[..end] + "…";
    }
}
