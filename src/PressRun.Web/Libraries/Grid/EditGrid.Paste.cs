using System.Text;
using Microsoft.JSInterop;

namespace PressRun.Web.Libraries.Grid;

/// <summary>What comes in from the clipboard. Numbers and texts are the browser's word, so none is believed beyond what the table has room for.</summary>
public sealed partial class EditGrid
{
    private const int LongestPaste = 2_000_000;

    // No name, note or figure is that long; what is cut there is refused by the rule of its column.
    private const int LongestCell = 4_000;

    private readonly StringBuilder received = new();

    /// <summary>Takes a piece of a pasted block.</summary>
    [JSInvokable]
    public void Receive(string piece)
    {
        if (received.Length + piece.Length <= LongestPaste)
        {
            received.Append(piece);
        }
    }

    /// <summary>Puts the received block in. A single cell fills the whole selection.</summary>
    [JSInvokable]
    public Task Paste(string row, int shownColumn, int selectedRows, int selectedColumns)
    {
        var block = CellBlock.Read(received.ToString());
        received.Clear();
        var columns = Shown.Skip(shownColumn).ToList();
        if (block.Count == 0 || columns.Count == 0 || IsReadOnly)
        {
            return Task.CompletedTask;
        }

        if (block is [[var only]])
        {
            block = Filled(only, Math.Clamp(selectedRows, 1, Document.Rows.Count), Math.Clamp(selectedColumns, 1, columns.Count));
        }

        var after = LeftOut(block, row, columns.Count);
        block = [.. block.Take(Document.RoomFrom(row)).Select(cells => cells.Zip(columns, (text, column) => Meant(column, text[..Math.Min(text.Length, LongestCell)])).ToList())];
        return ApplyAsync(() => Document.Put(row, columns, block, Say($"a pasted block")), after);
    }

    private static IReadOnlyList<IReadOnlyList<string>> Filled(string only, int rows, int columns) => [.. Enumerable.Repeat(Enumerable.Repeat(only, columns).ToArray(), rows)];

    private string? LeftOut(IReadOnlyList<IReadOnlyList<string>> block, string row, int columns)
    {
        var (over, below) = (block.Max(cells => cells.Count) - columns, block.Count - Document.RoomFrom(row));
        return below > 0 ? Say($"Pasted as far as there is room: a table takes {GridDocument.MostRows.ToString("N0", Manners.Culture)} rows. Longer ones come in as a file.")
            : over > 0 ? Say(over, $"Pasted; one column did not fit beside the table.", $"Pasted; {over} columns did not fit beside the table.")
            : null;
    }
}
