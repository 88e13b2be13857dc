using PressRun.Data.Titles;

namespace PressRun.Data.Import.Tables;

/// <summary>Rows of a table that a person edits, where a step may have been written down anywhere.</summary>
public static class GatheredRows
{
    private const char Between = '\u001f';

    /// <summary>Rows in an order in which those of one thing stand together, each thing where its first row stands. A row whose first cell is empty stays
    /// with the row above it.</summary>
    /// <param name="shape">How the table is read.</param>
    /// <param name="rows">Rows that are not blank, as they were typed.</param>
    /// <param name="cells">A row's texts by column.</param>
    public static List<TRow> Gathered<TRow>(this ITableShape shape, IEnumerable<TRow> rows, Func<TRow, IReadOnlyList<string>> cells)
    {
        if (shape.Naming is not [var first, ..] naming)
        {
            return [.. rows];
        }

        var things = new List<List<TRow>>();
        var known = new Dictionary<string, List<TRow>>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            var texts = cells(row);
            if (string.IsNullOrWhiteSpace(texts[first]) && things.Count > 0)
            {
                things[^1].Add(row);
                continue;
            }

            var key = string.Join(Between, naming.Select(column => SearchText.Fold(texts[column])));
            if (!known.TryGetValue(key, out var thing))
            {
                things.Add(known[key] = thing = []);
            }

            thing.Add(row);
        }

        return [.. things.SelectMany(thing => thing)];
    }
}
