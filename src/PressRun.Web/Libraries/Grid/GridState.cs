namespace PressRun.Web.Libraries.Grid;

/// <summary>What a table says of its rows after an edit was looked at and, where it was right, saved.</summary>
/// <param name="Problems">What would be right, by row and column.</param>
/// <param name="Notes">Something about a whole row, by row.</param>
/// <param name="Unsaved">Rows whose text is not stored.</param>
public sealed record GridState(
    IReadOnlyDictionary<(string Row, int Column), string> Problems, IReadOnlyDictionary<string, string> Notes, IReadOnlySet<string> Unsaved)
{
    /// <summary>Nothing to say: all is stored.</summary>
    public static GridState Clean { get; } =
        new(new Dictionary<(string, int), string>(), new Dictionary<string, string>(), new HashSet<string>());
}

/// <summary>Something worked out from a row, shown beside its cells and not edited.</summary>
/// <param name="Head">Its head.</param>
/// <param name="Text">What it is for a row; empty where there is nothing to say.</param>
public sealed record GridExtra(string Head, Func<GridRow, string> Text);

/// <summary>Rows that are typed and not stored, as the browser keeps them.</summary>
/// <param name="Whole">True where they are all rows of the table, not only the unsaved ones.</param>
/// <param name="Rows">The rows.</param>
public sealed record GridDraft(bool Whole, IReadOnlyList<GridRow> Rows);

/// <summary>What is being typed in one cell, as the browser keeps it.</summary>
/// <param name="Row">Key of the row.</param>
/// <param name="Column">The column.</param>
/// <param name="Text">As typed.</param>
public sealed record GridTyping(string Row, int Column, string Text);
