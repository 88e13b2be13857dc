namespace PressRun.Web.Libraries.Grid;

/// <summary>Brings what the browser kept back into a table that was loaded anew.</summary>
public static class GridRecall
{
    // A new row's key is new on each page that is opened: what comes back must not be taken for another new row.
    private const string Back = "back-";

    /// <summary>The rows with what was typed: stored rows changed where they stand, new ones at the end. What the browser kept may be of another
    /// version of the page: rows without a key or with other columns are left out.</summary>
    public static IReadOnlyList<GridRow> Merge(IReadOnlyList<GridRow> rows, GridDraft? draft, GridTyping? typing, int columnCount)
    {
        var known = rows.Where(row => !row.IsBlank).Select(row => row.Key).ToHashSet(StringComparer.Ordinal);
        var keys = known.ToDictionary(key => key, StringComparer.Ordinal);
        var typed = (draft?.Rows ?? []).Where(row => IsWhole(row, columnCount)).DistinctBy(row => row.Key).ToList();
        if (typing is not { Row.Length: > 0, Text: not null } || typing.Column < 0 || typing.Column >= columnCount)
        {
            typing = null;
        }

        if (typed.Count == 0 && typing is null)
        {
            return rows;
        }

        foreach (var key in typed.Select(row => row.Key).Where(key => !known.Contains(key)).Order(StringComparer.Ordinal))
        {
            keys[key] = KeyOf(key, keys.Values);
        }

        typed = typed.ConvertAll(row => row with { Key = keys[row.Key] });
        var byKey = typed.ToDictionary(row => row.Key, StringComparer.Ordinal);
        List<GridRow> merged = draft is { Whole: true } && typed.Count > 0
            ? typed
            : [.. rows.Where(row => !row.IsBlank).Select(row => byKey.GetValueOrDefault(row.Key, row)), .. typed.Where(row => !known.Contains(row.Key))];
        merged = [.. merged.Where(row => !row.IsBlank)];
        return typing is null
            ? merged
            : [.. WithTyping(merged, typing with { Row = keys.GetValueOrDefault(typing.Row) ?? KeyOf(typing.Row, keys.Values) }, columnCount)];
    }

    // A draft is read from text that anybody may have written: its members can be missing whatever their types say.
    private static bool IsWhole(GridRow? row, int columnCount) =>
        row is { Key.Length: > 0, Cells: not null } && row.Cells.Count == columnCount && row.Cells.All(cell => cell is not null);

    // Rows that came back before keep their keys, so a new one looks for a key that none of them has.
    private static string KeyOf(string key, ICollection<string> taken)
    {
        var free = key.StartsWith(GridDocument.NewKey, StringComparison.Ordinal) ? Back + key : key;
        while (taken.Contains(free))
        {
            free = Back + free;
        }

        return free;
    }

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
