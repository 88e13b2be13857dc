namespace PressRun.Engine.Costing;

/// <summary>Something in a job that a person can mend.</summary>
/// <param name="Path">Where, as a JSONPath (RFC 9535) into the job file: <c>$.edition.parts[1].pages</c>.</param>
/// <param name="Value">What stands there, as text; null where nothing does.</param>
/// <param name="Rule">A sentence that says what would be right.</param>
public sealed record Problem(string Path, string? Value, string Rule)
{
    /// <summary>Path, value and rule in one line.</summary>
    public override string ToString() => Value is null ? $"{Path}: {Rule}" : $"{Path} is {Value}: {Rule}";
}

/// <summary>Either an answer or the problems that stand in its way.</summary>
/// <typeparam name="T">Type of the answer.</typeparam>
public sealed class Outcome<T>
    where T : class
{
    private readonly T? value;

    private Outcome(T? value, IReadOnlyList<Problem> problems)
    {
        this.value = value;
        Problems = problems;
    }

    /// <summary>True where there is an answer.</summary>
    public bool Succeeded => value is not null;

    /// <summary>The answer.</summary>
    /// <exception cref="InvalidOperationException">There are problems instead; ask <see cref="Succeeded"/> first.</exception>
    public T Value => value ?? throw new InvalidOperationException("No answer: " + string.Join("; ", Problems));

    /// <summary>What stands in the way; empty where there is an answer.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>An answer.</summary>
    /// <param name="value">The answer.</param>
    public static Outcome<T> Of(T value) => new(value, []);

    /// <summary>No answer, because of these problems (at least one).</summary>
    /// <param name="problems">At least one.</param>
    public static Outcome<T> Refused(params IReadOnlyList<Problem> problems) => new(null, problems);
}
