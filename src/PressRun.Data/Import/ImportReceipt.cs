using PressRun.Engine.Costing;

namespace PressRun.Data.Import;

/// <summary>What an import did, kept so that it can be taken back.</summary>
/// <typeparam name="T">What was brought in.</typeparam>
public sealed class ImportReceipt<T>
    where T : class
{
    private readonly List<T> added = [];
    private readonly List<LibraryItem<T>> replaced = [];

    /// <summary>Things that were not there before.</summary>
    public IReadOnlyList<T> Added => added;

    /// <summary>Things as they were before.</summary>
    public IReadOnlyList<LibraryItem<T>> Replaced => replaced;

    /// <summary>How many were there already, the same.</summary>
    public int Unchanged { get; internal set; }

    /// <summary>Version of every row that it wrote.</summary>
    internal uint Version { get; set; }

    internal void Add(T item) => added.Add(item);

    internal void Replace(LibraryItem<T> before) => replaced.Add(before);
}

/// <summary>A thing of a file breaks a rule that only the library knows; nothing was stored.</summary>
/// <param name="index">Which thing, from 0.</param>
/// <param name="problem">What would be right.</param>
public sealed class ImportRefusedException(int index, Problem problem) : Exception(problem.ToString())
{
    /// <summary>Which thing of the file, from 0.</summary>
    public int Index { get; } = index;

    /// <summary>What would be right.</summary>
    public Problem Problem { get; } = problem;
}
