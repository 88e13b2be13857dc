using System.Text;

namespace PressRun.Web.Libraries.Grid;

/// <summary>A block of cells as the clipboard carries it: rows parted by line ends, cells by tabs, and cells with either inside in quotation marks.</summary>
public static class CellBlock
{
    /// <summary>Most cells that are taken at once; longer tables come by file.</summary>
    public const int MostCells = 50_000;

    /// <summary>Reads a block. Cells past <see cref="MostCells"/> are left out.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Read(string text)
    {
        var rows = new List<IReadOnlyList<string>>();
        var row = new List<string>();
        var cell = new StringBuilder();
        var count = 0;
        for (var at = 0; at < text.Length && count < MostCells; at++)
        {
            if (text[at] == '"' && cell.Length == 0)
            {
                at = ReadQuoted(text, at, cell);
            }
            else if (text[at] is '\t' or '\n')
            {
                EndCell();
                if (text[at] == '\n')
                {
                    rows.Add(row);
                    row = [];
                }
            }
            else if (text[at] != '\r')
            {
                cell.Append(text[at]);
            }
        }

        if (cell.Length > 0 || row.Count > 0)
        {
            EndCell();
            rows.Add(row);
        }

        return rows;

        void EndCell()
        {
            row.Add(cell.ToString().Trim());
            cell.Clear();
            count++;
        }
    }

    // Reads "a ""quoted"" cell" where the closing mark ends the cell; gives where it ends. 5" x 7" is no such cell and stays as it is.
    private static int ReadQuoted(string text, int start, StringBuilder cell)
    {
        var inside = new StringBuilder();
        for (var at = start + 1; at < text.Length; at++)
        {
            if (text[at] != '"')
            {
                inside.Append(text[at] is '\n' or '\t' ? ' ' : text[at]);
            }
            else if (at + 1 < text.Length && text[at + 1] == '"')
            {
                inside.Append('"');
                at++;
            }
            else if (at + 1 == text.Length || text[at + 1] is '\t' or '\n' or '\r')
            {
                cell.Append(inside);
                return at;
            }
            else
            {
                break;
            }
        }

        cell.Append('"');
        return start;
    }
}
