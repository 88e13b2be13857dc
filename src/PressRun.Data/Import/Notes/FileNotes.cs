using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Tables;

namespace PressRun.Data.Import.Notes;

/// <summary>The notes of a file: what stands above its heads, and below its last row of the table.</summary>
/// <param name="Lines">The notes.</param>
/// <param name="LastRow">The last row of the table; the last there can be where nothing but rows follow the heads.</param>
public sealed record FileNotes(IReadOnlyList<NoteLine> Lines, int LastRow)
{
    private const int Most = 40;

    /// <summary>None.</summary>
    public static FileNotes None { get; } = new([], int.MaxValue);

    /// <summary>Looks for notes.</summary>
    /// <param name="source">The file.</param>
    /// <param name="mapping">What its columns mean.</param>
    /// <param name="table">Columns of the table.</param>
    /// <param name="own">The person's own manners.</param>
    /// <param name="cancel">Stops it.</param>
    public static FileNotes Of(CsvSource source, CsvMapping mapping, IReadOnlyList<Column> table, CellManners own, CancellationToken cancel = default)
    {
        var manners = mapping.Manners(own);
        var above = new List<NoteLine>();
        var below = new List<NoteLine>();
        var lastRow = mapping.HeadRow;
        foreach (var row in source.Rows())
        {
            cancel.ThrowIfCancellationRequested();
            var line = new NoteLine(row.Number, Text(row, source.Separator));
            if (line.Text.Length == 0 || row.Number == mapping.HeadRow)
            {
                continue;
            }

            if (row.Number < mapping.HeadRow)
            {
                above.Add(line);
            }
            else if (IsNote(row, line, mapping, table, manners))
            {
                below.Add(line);
            }
            else
            {
                below.Clear();
                lastRow = row.Number;
            }
        }

        // Where no row is whole there is no telling notes from rows that are mapped wrongly: all of them are left to be read, and told of.
        return lastRow == mapping.HeadRow ? new FileNotes([.. above.Take(Most)], int.MaxValue)
            : new FileNotes([.. above.Concat(below).Take(Most)], below.Count == 0 ? int.MaxValue : lastRow);
    }

    // A row that leaves empty what each row needs, and has words in one cell alone, or says a term; commas in a sentence may have parted it into cells.
    private static bool IsNote(CsvRow row, NoteLine line, CsvMapping mapping, IReadOnlyList<Column> table, CellManners manners)
    {
        var told = mapping.Apply(row, table).ToList();
        var lacks = told.Count == 0 || told.TrueForAll(text => Enumerable.Range(0, table.Count).Any(column => table[column].Required && text.Cells[column].Length == 0));
        return lacks && ((row.Cells.Count(cell => !string.IsNullOrWhiteSpace(cell)) == 1 && line.Text.Any(char.IsLetter)) || NoteTerms.Of([line], manners).Count > 0);
    }

    private static string Text(CsvRow row, char separator) =>
        string.Join(separator == ',' ? "," : " ", row.Cells.Where(cell => !string.IsNullOrWhiteSpace(cell)).Select(cell => separator == ',' ? cell : cell.Trim())).Trim();
}
