namespace PressRun.Data.Import.Tables;

/// <summary>What a column is for.</summary>
public enum ColumnRole
{
    /// <summary>Shown and changed.</summary>
    Shown,

    /// <summary>Kept beside the row (its id, whether it is archived): in files, and not on screen.</summary>
    Kept,

    /// <summary>Only read in somebody's file, where it tells apart what a name alone does not; never written or shown.</summary>
    Hint,
}

/// <summary>Which part of a step a column holds, so that a file with a column for each step can be read.</summary>
public enum StepPart
{
    /// <summary>None.</summary>
    None,

    /// <summary>The first unit that the price holds for.</summary>
    From,

    /// <summary>The last mass that the price holds for.</summary>
    UpTo,

    /// <summary>The price.</summary>
    Price,
}

/// <summary>A column of a table.</summary>
/// <param name="Key">Its name in files, and in the paths of problems.</param>
/// <param name="Title">Its head on screen.</param>
/// <param name="Kind">What its cells hold.</param>
public sealed record Column(string Key, string Title, CellKind Kind)
{
    /// <summary>True where each row needs it.</summary>
    public bool Required { get; init; }

    /// <summary>What a row that leaves it empty means, as it would be written; null where nothing is meant.</summary>
    public string? Otherwise { get; init; }

    /// <summary>Plain words for what belongs in it; null where its head says it.</summary>
    public string? About { get; init; }

    /// <summary>What several columns give between them, so that each row needs one of them; null where it stands for itself.</summary>
    public string? OneOf { get; init; }

    /// <summary>What it is for.</summary>
    public ColumnRole Role { get; init; }

    /// <summary>True where it belongs to the thing itself, and is repeated on each row of a thing with several steps.</summary>
    public bool OfThing { get; init; }

    /// <summary>Which part of a step it holds.</summary>
    public StepPart Step { get; init; }

    /// <summary>Words in the heads of other people's files that mean it, the plainest first.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>The head with the unit of numbers without one.</summary>
    public string Head(CellManners manners) => Kind.UnitOf(manners) is { } unit ? $"{Title} ({unit})" : Title;
}
