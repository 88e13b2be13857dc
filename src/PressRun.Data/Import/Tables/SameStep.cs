namespace PressRun.Data.Import.Tables;

/// <summary>A row of a thing that has been read.</summary>
/// <param name="Row">Its text.</param>
/// <param name="Values">Its values by column.</param>
/// <param name="Right">True where each cell is right by itself.</param>
internal readonly record struct ReadRow(TextRow Row, object?[] Values, bool Right);

/// <summary>Rows of one thing that stand at one step: twice the same, or two that contradict each other.</summary>
/// <param name="columns">Columns of the table.</param>
/// <param name="inFile">True for somebody's file, where a row said twice counts once and rows have numbers.</param>
internal sealed class SameStep(IReadOnlyList<Column> columns, bool inFile)
{
    private readonly int place = columns.ToList().FindIndex(column => column.Step is StepPart.From or StepPart.UpTo);
    private readonly int price = columns.ToList().FindIndex(column => column.Step == StepPart.Price);

    /// <summary>The rows, each step once.</summary>
    /// <param name="rows">Rows of one thing, right one by one.</param>
    /// <param name="same">Told of a row that says what one above says.</param>
    /// <param name="refuse">Told of a row that contradicts one above.</param>
    public List<ReadRow> Once(List<ReadRow> rows, Action<int, int> same, Action<TextRow, int, string> refuse)
    {
        if (place < 0 || rows.Count == 1)
        {
            return rows;
        }

        var kept = new List<ReadRow>();
        foreach (var row in rows)
        {
            var first = kept.Find(other => Equals(PlaceOf(other), PlaceOf(row)));
            if (first.Values is null)
            {
                kept.Add(row);
            }
            else if (Differing(first, row) is { } column)
            {
                refuse(row.Row, column, Contradiction(first.Row, row.Row, column));
            }
            else if (inFile)
            {
                same(row.Row.Number, first.Row.Number);
            }
            else
            {
                refuse(row.Row, place, "This says what a row above says already: take one of the two out.");
            }
        }

        return kept;
    }

    // A step without a first unit begins at one.
    private object PlaceOf(ReadRow row) => row.Values[place] ?? 1m;

    private int? Differing(ReadRow first, ReadRow again)
    {
        var differing = Enumerable.Range(0, columns.Count)
            .Where(column => columns[column].Role != ColumnRole.Hint && column != place && !Equals(first.Values[column], again.Values[column])).ToList();
        return differing.Count == 0 ? null : differing.Contains(price) ? price : differing[0];
    }

    private string Contradiction(TextRow first, TextRow again, int column)
    {
        var rows = inFile ? $"Rows {first.Number} and {again.Number} say" : "A row above and this one say";
        var (one, other) = (Said(first.Cells[column]), Said(again.Cells[column]));
        return column == price
            ? $"{rows} {one} and {other} for the same. Keep one of them, or write under {columns[place].Title} what sets them apart."
            : $"{rows} the same but for {columns[column].Title}: {one} and {other}. Keep one of them.";
    }

    private static string Said(string cell) => cell.Trim() is { Length: > 0 } text ? text : "nothing";
}
