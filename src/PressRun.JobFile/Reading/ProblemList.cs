using System.Globalization;
using System.Text.Json;
using PressRun.Engine.Costing;

namespace PressRun.JobFile.Reading;

/// <summary>The problems found so far while a document is read.</summary>
public sealed class ProblemList
{
    /// <summary>Most problems that are listed, so that a hostile document cannot ask for an endless answer.</summary>
    public const int Most = 100;

    private readonly List<Problem> problems = [];
    private int unlisted;

    /// <summary>True where there is none.</summary>
    public bool IsEmpty => problems.Count == 0;

    /// <summary>True where no further problem would be listed, so that its sentence need not be made up.</summary>
    public bool IsFull => problems.Count == Most;

    /// <summary>The problems in the order found. Past <see cref="Most"/> of them one last entry says how many more there are.</summary>
    public IReadOnlyList<Problem> Problems => unlisted == 0
        ? problems
        : [.. problems, new Problem("$", null, string.Create(CultureInfo.InvariantCulture, $"{unlisted} more problems are not listed here; mend these first."))];

    /// <summary>Notes a problem.</summary>
    /// <param name="path">Where.</param>
    /// <param name="value">What stands there, as text; null where nothing does.</param>
    /// <param name="rule">A sentence that says what would be right.</param>
    public void Add(JsonPath path, string? value, string rule)
    {
        if (IsFull)
        {
            unlisted++;
        }
        else
        {
            problems.Add(new Problem(path.ToString(), value is null ? null : Excerpt.Of(value), rule));
        }
    }

    /// <summary>Notes a problem with a value of the document.</summary>
    public void Add(JsonPath path, JsonElement value, string rule) =>
        Add(path, IsFull ? null : value.ValueKind == JsonValueKind.String ? value.GetString() : value.GetRawText(), rule);

    /// <summary>The value, where nothing stands in its way.</summary>
    public Outcome<T> OutcomeOf<T>(T? value)
        where T : class =>
        IsEmpty && value is not null ? Outcome<T>.Of(value) : Outcome<T>.Refused(Problems);
}
