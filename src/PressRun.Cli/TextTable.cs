using System.Text;

namespace PressRun.Cli;

/// <summary>Rows of text in aligned columns, words to the left and figures to the right.</summary>
/// <param name="headings">A heading for each column; one that starts with <c>&gt;</c> is of figures.</param>
internal sealed class TextTable(params string[] headings)
{
    private readonly List<string[]> rows = [[.. headings.Select(heading => heading.TrimStart('>'))]];

    /// <summary>Adds a row with a cell for each column.</summary>
    public void Add(params string[] cells) => rows.Add(cells);

    /// <summary>Writes heading and rows.</summary>
    public void Write(StringBuilder text)
    {
        var widths = headings.Select((_, column) => rows.Max(row => row[column].Length)).ToArray();
        foreach (var row in rows)
        {
            var line = new StringBuilder();
            for (var column = 0; column < headings.Length; column++)
            {
                var cell = row[column];
                line.Append(column == 0 ? string.Empty : "  ");
                line.Append(headings[column].StartsWith('>') ? cell.PadLeft(widths[column]) : cell.PadRight(widths[column]));
            }

            text.AppendLine(line.ToString().TrimEnd());
        }
    }
}
