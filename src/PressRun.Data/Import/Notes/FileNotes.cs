using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Tables;

namespace PressRun.Data.Import.Notes;

/// <summary>The notes of a file: what stands above its heads, and below its last row of the table.</summary>
/// <param name="Lines">The notes.</param>
/// <param name="LastRow">The last row of the table; the last there can be where nothing but rows follow the heads.</param>
public sealed record FileNotes(IReadOnlyList<NoteLine> Lines, int LastRow)
{
    private const int Most = 40;

    // A file of nothing but rows that lack something would else be searched for terms in each of them, which takes milliseconds a row.
    private const int MostBelow = 200;

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
        var below = new Queue<(NoteLine Line, bool InOneCell)>();
        var lastRow = mapping.HeadRow;
        var more = false;
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
            else if (Lacks(row, mapping, table))
            {
                below.Enqueue((line, row.Cells.Count(cell => !string.IsNullOrWhiteSpace(cell)) == 1));
                if (below.Count > MostBelow)
                {
                    (lastRow, more) = (below.Dequeue().Line.Row, more || lastRow == mapping.HeadRow);
                }
            }
            else
            {
                below.Clear();
                (lastRow, more) = (row.Number, false);
            }
        }

        var notes = below.Reverse().TakeWhile(row => IsNote(row.Line, row.InOneCell, manners)).Select(row => row.Line).Reverse().ToList();
        lastRow = notes.Count < below.Count ? below.ElementAt(below.Count - notes.Count - 1).Line.Row : lastRow;

        // Where no row is whole there is no telling notes from rows that are mapped wrongly: all of them are left to be read, and told of.
        return more || lastRow == mapping.HeadRow ? new FileNotes([.. above.Take(Most)], int.MaxValue)
            : new FileNotes([.. above.Concat(notes).Take(Most)], notes.Count == 0 ? int.MaxValue : lastRow);
    }

    // It leaves empty what each row of the table needs.
    private static bool Lacks(CsvRow row, CsvMapping mapping, IReadOnlyList<Column> table)
    {
        var told = mapping.Apply(row, table).ToList();
        return told.Count == 0 || told.TrueForAll(text => Enumerable.Range(0, table.Count).Any(column => table[column].Required && text.Cells[column].Length == 0));
    }

    // It has words in one cell alone, or says a term; commas in a sentence may have parted it into cells.
    private static bool IsNote(NoteLine line, bool inOneCell, CellManners manners) => (inOneCell && line.Text.Any(char.IsLetter)) || NoteTerms.Of([line], manners).Count > 0;

    private static string Text(CsvRow row, char separator) =>
        string.Join(separator == ',' ? "," : " ", row.Cells.Where(cell => !string.IsNullOrWhiteSpace(cell)).Select(cell => separator == ',' ? cell : cell.Trim())).Trim();
}
