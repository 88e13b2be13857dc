using System.Globalization;
using PressRun.Data.Import.Tables;
using PressRun.Data.Titles;

namespace PressRun.Data.Import.Csv;

/// <summary>What a column of a file means.</summary>
/// <param name="Column">Column of the table; null where it is left out.</param>
/// <param name="Unit">Unit of its numbers, where the table's own does not hold.</param>
/// <param name="Step">Where each price in it stands among the steps, as the table's step column writes it; null where the file has a row a step.</param>
public sealed record SourceColumn(int? Column, string? Unit = null, string? Step = null)
{
    /// <summary>A column that is left out.</summary>
    public static SourceColumn LeftOut { get; } = new(Column: null);
}

/// <summary>What a word of a file means.</summary>
/// <param name="Column">Column of the table in which it stands.</param>
/// <param name="Word">The word.</param>
/// <param name="Means">What the table's column would say for it.</param>
public sealed record WordMeaning(int Column, string Word, string Means);

/// <summary>How a file is read into a table.</summary>
/// <param name="HeadRow">Number of the row that holds the heads; rows above it are passed over.</param>
/// <param name="Columns">What each column of the file means.</param>
/// <param name="DecimalComma">True where 1,5 is one and a half.</param>
/// <param name="Everywhere">Text of cells that the file has no column for, by column of the table: every row gets it.</param>
public sealed record CsvMapping(
    int HeadRow, IReadOnlyList<SourceColumn> Columns, bool DecimalComma, IReadOnlyDictionary<int, string> Everywhere)
{
    /// <summary>What words of the file mean that the table does not know.</summary>
    public IReadOnlyList<WordMeaning> Meanings { get; init; } = [];

    /// <summary>Number of the last row of the table; rows below it are notes and passed over.</summary>
    public int LastRow { get; init; } = int.MaxValue;

    /// <summary>The same with what a word means.</summary>
    /// <param name="column">Column of the table in which it stands.</param>
    /// <param name="word">The word; signs, case and accents do not count.</param>
    /// <param name="means">What it means; empty where nothing is said of it any more.</param>
    public CsvMapping WithMeaning(int column, string word, string means)
    {
        var others = Meanings.Where(meaning => meaning.Column != column || Folded(meaning.Word) != Folded(word));
        return this with { Meanings = means.Length == 0 ? [.. others] : [.. others, new WordMeaning(column, word, means)] };
    }

    /// <summary>Columns of a table that its rows need and that the file has no column for, or of which they need one: what can be said once for all
    /// rows. Steps differ from row to row and are not among them.</summary>
    public IReadOnlyList<int> NotSaid(IReadOnlyList<Column> table) =>
    [
        .. Enumerable.Range(0, table.Count).Where(column =>
            table[column] is { Step: StepPart.None } asked && (asked.Required || asked.OneOf is not null) && Columns.All(source => source.Column != column)),
    ];

    /// <summary>The manners of the file, for a person's own.</summary>
    public CellManners Manners(CellManners own)
    {
        if (own.HasDecimalComma == DecimalComma)
        {
            return own;
        }

        var culture = (CultureInfo)own.Culture.Clone();
        (culture.NumberFormat.NumberDecimalSeparator, culture.NumberFormat.NumberGroupSeparator) = DecimalComma ? (",", ".") : (".", ",");
        return own with { Culture = culture };
    }

    /// <summary>The rows of the table that a row of the file becomes: one, or one for each step that has a column of its own.</summary>
    public IEnumerable<TextRow> Apply(CsvRow row, IReadOnlyList<Column> table)
    {
        var cells = new string[table.Count];
        var units = new string?[table.Count];
        for (var column = 0; column < cells.Length; column++)
        {
            cells[column] = "";
        }

        var blank = true;
        var steps = new List<(SourceColumn Source, string Price)>();
        // A price without a step beside others that have one is the first: it holds from one on.
        var first = Columns.Any(source => source.Step is not null) && table.Any(column => column.Step == StepPart.From) ? "1" : null;
        for (var at = 0; at < Math.Min(Columns.Count, row.Cells.Count); at++)
        {
            var source = Columns[at];
            if (source.Column is not { } column)
            {
                continue;
            }

            var text = row.Cells[at].Trim();
            blank &= text.Length == 0;
            if ((source.Step ?? (table[column].Step == StepPart.Price ? first : null)) is { } step)
            {
                steps.Add((source with { Step = step }, text));
            }
            else
            {
                (cells[column], units[column]) = (Meant(column, text), source.Unit);
            }
        }

        if (blank)
        {
            return [];
        }

        foreach (var (column, text) in Everywhere)
        {
            cells[column] = cells[column].Length == 0 ? text : cells[column];
        }

        return steps.Count == 0 ? [new TextRow(row.Number, cells, units)] : Steps(row.Number, cells, units, steps, table);
    }

    /// <summary>Where a problem of the table stands in the file: the letter of its column with its head; null where the file has no such column.</summary>
    public string? PlaceOf(int column, IReadOnlyList<string> heads)
    {
        for (var at = 0; at < Columns.Count; at++)
        {
            if (Columns[at].Column == column)
            {
                return at < heads.Count ? $"{Letter(at)}, {heads[at].Trim()}" : Letter(at);
            }
        }

        return null;
    }

    /// <summary>The letter of a column as spreadsheets have it: A to Z, then AA.</summary>
    public static string Letter(int column)
    {
        const int letters = 26;
        return column < letters ? ((char)('A' + column)).ToString() : Letter((column / letters) - 1) + (char)('A' + (column % letters));
    }

    // A word of signs alone is what it is.
    private static string Folded(string word) => SearchText.Fold(word) is { Length: > 0 } folded ? folded : word;

    private string Meant(int column, string text) =>
        Meanings.Count == 0 || text.Length == 0 ? text : Meanings.FirstOrDefault(meaning => meaning.Column == column && Folded(meaning.Word) == Folded(text))?.Means ?? text;

    private static IEnumerable<TextRow> Steps(
        int number, string[] cells, string?[] units, List<(SourceColumn Source, string Price)> steps, IReadOnlyList<Column> table)
    {
        var place = table.ToList().FindIndex(column => column.Step is StepPart.From or StepPart.UpTo);
        foreach (var (source, price) in steps.Where(step => step.Price.Length > 0))
        {
            var (stepCells, stepUnits) = ((string[])cells.Clone(), (string?[])units.Clone());
            (stepCells[place], stepCells[source.Column!.Value]) = (source.Step!, price);
            stepUnits[source.Column!.Value] = source.Unit;
            yield return new TextRow(number, stepCells, stepUnits);
        }
    }
}
