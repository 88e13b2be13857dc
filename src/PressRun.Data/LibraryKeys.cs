namespace PressRun.Data;

/// <summary>How the things of a library are told apart.</summary>
/// <param name="Id">Its id; empty for a new one.</param>
/// <param name="Name">What a person knows it by; a new one gets its id from this.</param>
/// <param name="WithId">The same thing with an id.</param>
internal sealed record LibraryKeys<T>(Func<T, string> Id, Func<T, string> Name, Func<T, string, T> WithId)
{
    /// <summary>Which of several rows of one id it is; the same for all where there is one row an id.</summary>
    public Func<T, string> Table { get; init; } = _ => "";

    /// <summary>True where two things say the same; records with lists in them are no equal values by themselves.</summary>
    public Func<T, T, bool> Same { get; init; } = (left, right) => EqualityComparer<T>.Default.Equals(left, right);

    /// <summary>What only one row has.</summary>
    public (string Id, string Table) RowOf(T item) => (Id(item), Table(item));
}
