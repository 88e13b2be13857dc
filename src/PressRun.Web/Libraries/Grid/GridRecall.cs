namespace PressRun.Web.Libraries.Grid;

/// <summary>Brings what the browser kept back into a table that was loaded anew.</summary>
public static class GridRecall
{
    // A new row's key is new on each page that is opened: what comes back must not be taken for another new row.
    private const string Back = "back-";

    /// <summary>The rows with what was typed: stored rows changed where they stand, new ones at the end.</summary>
    public static IReadOnlyList<GridRow> Merge(IReadOnlyList<GridRow> rows, GridDraft? draft, GridTyping? typing, int columnCount)
    {
        var typed = (draft?.Rows ?? []).Where(row => row.Cells.Count == columnCount).Select(row => row with { Key = KeyOf(row.Key) }).ToList();
        typing = typing is null ? null : typing with { Row = KeyOf(typing.Row) };
        var known = rows.Select(row => row.Key).ToHashSet(StringComparer.Ordinal);
        var byKey = typed.ToDictionary(row => row.Key, StringComparer.Ordinal);
        List<GridRow> merged = draft is { Whole: true } && typed.Count > 0
            ? typed
            : [.. rows.Where(row => !row.IsBlank).Select(row => byKey.GetValueOrDefault(row.Key, row)), .. typed.Where(row => !known.Contains(row.Key))];
        merged = [.. merged.Where(row => !row.IsBlank).DistinctBy(row => row.Key)];
        return typing is null || typing.Column < 0 || typing.Column >= columnCount ? merged : [.. WithTyping(merged, typing, columnCount)];
    }

    private static string KeyOf(string key) => key.StartsWith(GridDocument.NewKey, StringComparison.Ordinal) ? Back + key : key;

    private static IEnumerable<GridRow> WithTyping(List<GridRow> rows, GridTyping typing, int columnCount)
    {
        var found = false;
        foreach (var row in rows)
        {
            found |= row.Key == typing.Row;
            yield return row.Key == typing.Row ? row.With(typing.Column, typing.Text.Trim()) : row;
        }

        if (!found)
        {
            yield return new GridRow(typing.Row, [.. Enumerable.Repeat("", columnCount)]).With(typing.Column, typing.Text.Trim());
        }
    }
}
