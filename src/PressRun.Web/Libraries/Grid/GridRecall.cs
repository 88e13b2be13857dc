using PressRun.Data.Import.Tables;

namespace PressRun.Web.Libraries.Grid;

/// <summary>Brings what the browser kept back into a table that was loaded anew.</summary>
public static class GridRecall
{
    // A new row's key is new on each page that is opened: what comes back must not be taken for another new row.
    private const string Back = "back-";

    /// <summary>The rows with what was typed: stored rows changed where they stand, new steps below the others of their thing, other new ones at the end. What the browser kept may be of another
    /// version of the page: rows without a key or with other columns are left out.</summary>
    public static IReadOnlyList<GridRow> Merge(IReadOnlyList<GridRow> rows, GridDraft? draft, GridTyping? typing, IReadOnlyList<Column> columns)
    {
        var columnCount = columns.Count;
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

        // A row that was new when it was typed and has been stored since is that row: beside it, it would be another of the same id.
        foreach (var (key, stored) in StoredSince(rows, typed.FindAll(row => !known.Contains(row.Key)), columns))
        {
            if (typed.TrueForAll(row => row.Key != stored))
            {
                keys[key] = stored;
            }
        }

        typed = typed.ConvertAll(row => row with { Key = keys[row.Key] });
        var byKey = typed.ToDictionary(row => row.Key, StringComparer.Ordinal);
        List<GridRow> merged = draft is { Whole: true } && typed.Count > 0
            ? typed
            : Placed([.. rows.Where(row => !row.IsBlank).Select(row => byKey.GetValueOrDefault(row.Key, row))], typed.Where(row => !known.Contains(row.Key)), columns);
        merged = [.. merged.Where(row => !row.IsBlank)];
        return typing is null
            ? merged
            : [.. WithTyping(merged, typing with { Row = keys.GetValueOrDefault(typing.Row) ?? KeyOf(typing.Row, keys.Values) }, columnCount)];
    }

    private static IEnumerable<(string Key, string Stored)> StoredSince(IReadOnlyList<GridRow> rows, List<GridRow> added, IReadOnlyList<Column> columns)
    {
        var id = columns.ToList().FindIndex(column => column is { Key: "id", Role: ColumnRole.Kept });
        return id < 0 || HasSteps(columns)
            ? []
            : added.Where(row => row.Cells[id].Length > 0).DistinctBy(row => row.Cells[id])
                .Join(rows, row => row.Cells[id], row => row.Cells[id], (row, stored) => (row.Key, stored.Key));
    }

    // A step that was typed and not stored stands with its thing, as it did when it was typed; one without a name goes on with the row above it.
    private static List<GridRow> Placed(List<GridRow> merged, IEnumerable<GridRow> added, IReadOnlyList<Column> columns)
    {
        var name = columns.ToList().FindIndex(column => column is { OfThing: true, Role: ColumnRole.Shown });
        var after = merged.Count - 1;
        foreach (var row in added)
        {
            var beside = !HasSteps(columns) || name < 0 ? -1
                : string.IsNullOrWhiteSpace(row.Cells[name]) ? after
                : merged.FindLastIndex(other => string.Equals(other.Cells[name].Trim(), row.Cells[name].Trim(), StringComparison.OrdinalIgnoreCase));
            // Steps below a name that are left without one belong to it.
            while (beside >= 0 && beside + 1 < merged.Count && string.IsNullOrWhiteSpace(merged[beside + 1].Cells[name]))
            {
                beside++;
            }

            after = beside >= 0 ? beside + 1 : merged.Count;
            merged.Insert(after, row);
        }

        return merged;
    }

    private static bool HasSteps(IReadOnlyList<Column> columns) => columns.Any(column => column.Step != StepPart.None);

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
