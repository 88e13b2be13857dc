using PressRun.Data.Titles;

namespace PressRun.Data.Import.Tables;

/// <summary>Rows of a table that a person edits, where a step may have been written down anywhere.</summary>
public static class GatheredRows
{
    private const char Between = '\u001f';

    /// <summary>Rows in an order in which those of one thing stand together, each thing where its first row stands. A row whose first cell is empty stays
    /// with the row above it; one that repeats the first and leaves others empty goes to the last thing that they fit.</summary>
    /// <param name="shape">How the table is read.</param>
    /// <param name="rows">Rows that are not blank, as they were typed.</param>
    /// <param name="cells">A row's texts by column.</param>
    public static List<TRow> Gathered<TRow>(this ITableShape shape, IEnumerable<TRow> rows, Func<TRow, IReadOnlyList<string>> cells)
    {
        if (shape.Naming is not [var first, ..] naming)
        {
            return [.. rows];
        }

        var things = new List<(string[] Naming, List<TRow> Rows)>();
        var known = new Dictionary<string, List<TRow>>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            var texts = cells(row);
            if (string.IsNullOrWhiteSpace(texts[first]) && things.Count > 0)
            {
                things[^1].Rows.Add(row);
                continue;
            }

            var named = naming.Select(column => SearchText.Fold(texts[column])).ToArray();
            var key = string.Join(Between, named);
            if (!known.TryGetValue(key, out var thing))
            {
                var goesTo = named.Contains("") ? things.FindLastIndex(above => above.Naming.Zip(named).All(pair => pair.Second.Length == 0 || pair.First == pair.Second)) : -1;
                if (goesTo >= 0)
                {
                    things[goesTo].Rows.Add(row);
                    continue;
                }

                things.Add((named, known[key] = thing = []));
            }

            thing.Add(row);
        }

        return [.. things.SelectMany(thing => thing.Rows)];
    }
}
