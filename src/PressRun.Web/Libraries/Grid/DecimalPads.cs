using PressRun.Data.Import.Tables;

namespace PressRun.Web.Libraries.Grid;

/// <summary>How many digits each number of a column lacks behind its decimal mark, so that the marks stand under each other.</summary>
public sealed class DecimalPads
{
    private readonly char mark;
    private readonly int[] most;

    /// <summary>Looks at the rows of a table.</summary>
    public DecimalPads(IReadOnlyList<GridRow> rows, IReadOnlyList<Column> columns, bool decimalComma)
    {
        mark = decimalComma ? ',' : '.';
        most = new int[columns.Count];
        for (var column = 0; column < columns.Count; column++)
        {
            most[column] = columns[column].Kind.IsNumeric ? rows.Select(row => Decimals(row.Cells[column]) ?? 0).DefaultIfEmpty(0).Max() : 0;
        }
    }

    /// <summary>The unseen digits behind a text; none where it is no plain number.</summary>
    public string PadOf(int column, string text)
    {
        if (most[column] == 0 || Decimals(text) is not { } own)
        {
            return "";
        }

        return (own == 0 ? mark.ToString() : "") + new string('0', most[column] - own);
    }

    private int? Decimals(string text)
    {
        if (text.Length == 0 || text.Any(sign => !char.IsAsciiDigit(sign) && sign != mark))
        {
            return null;
        }

        var at = text.IndexOf(mark, StringComparison.Ordinal);
        return at < 0 ? 0 : text.Length - at - 1;
    }
}
