using PressRun.Engine.Costing;

namespace PressRun.Data;

/// <summary>What became of a save. Match on the nested types.</summary>
/// <typeparam name="T">The record that was saved.</typeparam>
public abstract record SaveResult<T>
    where T : class
{
    private SaveResult()
    {
    }

    /// <summary>It is stored; a kill from here on does not lose it.</summary>
    /// <param name="Now">As it stands, with the row version for the next save.</param>
    public sealed record Saved(T Now) : SaveResult<T>;

    /// <summary>Somebody else saved in between; nothing was stored.</summary>
    /// <param name="Theirs">What stands now. Saving again with its version overwrites it.</param>
    public sealed record Conflict(T Theirs) : SaveResult<T>;

    /// <summary>It is not there (any more), or belongs to another press.</summary>
    public sealed record Gone : SaveResult<T>;

    /// <summary>It breaks a rule; nothing was stored.</summary>
    /// <param name="Problems">What would be right, by path into the record.</param>
    public sealed record Refused(IReadOnlyList<Problem> Problems) : SaveResult<T>;
}

/// <summary>What became of a deletion.</summary>
public abstract record DeleteResult
{
    private DeleteResult()
    {
    }

    /// <summary>It is gone.</summary>
    public sealed record Deleted : DeleteResult;

    /// <summary>It is in use, and stays; archiving hides it without breaking what uses it.</summary>
    /// <param name="Where">What uses it, in words, such as <c>Tidepool Almanac, printing 2: cover</c>.</param>
    public sealed record InUse(IReadOnlyList<string> Where) : DeleteResult;

    /// <summary>Somebody saved it after it was read, and it stays: what goes for good has been seen as it is.</summary>
    public sealed record Changed : DeleteResult;

    /// <summary>It was not there.</summary>
    public sealed record Gone : DeleteResult;
}

/// <summary>A thing in one of the press's libraries, as the engine knows it.</summary>
/// <typeparam name="T">Stock, mailer, service, channel.</typeparam>
/// <param name="Item">The thing.</param>
/// <param name="Archived">True where it is kept for old jobs and offered no more.</param>
/// <param name="Version">Row version that a save must carry; 0 for a new one.</param>
public sealed record LibraryItem<T>(T Item, bool Archived, uint Version)
    where T : class;
