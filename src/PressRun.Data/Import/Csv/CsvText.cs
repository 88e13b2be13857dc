using System.Text;
using CsvHelper;
using PressRun.Data.Import.Tables;

namespace PressRun.Data.Import.Csv;

/// <summary>Writes tables as CSV (RFC 4180), formulas defused. Where the decimal mark is a comma, semicolons part the cells, as spreadsheets there
/// expect it.</summary>
public static class CsvText
{
    /// <summary>Writes a head and rows.</summary>
    public static async Task WriteAsync(
        Stream stream, IReadOnlyList<Column> columns, IAsyncEnumerable<string[]> rows, CellManners manners, CancellationToken cancel = default)
    {
        await using var writer = CsvWriter.Create(
            stream,
            new CsvWriterOptions { Separator = manners.HasDecimalComma ? ';' : ',', Injection = CsvInjection.None, WriteByteOrderMark = true },
            leaveOpen: true);
        await writer.WriteRecordAsync([.. columns.Select(column => Formulas.Defuse(column.FileHead(manners)))], cancel);
        await foreach (var row in rows.WithCancellation(cancel))
        {
            await writer.WriteRecordAsync(Array.ConvertAll(row, Formulas.Defuse), cancel);
        }

        await writer.FlushAsync(cancel);
    }

    /// <summary>A small table as text.</summary>
    public static async Task<string> OfAsync(IReadOnlyList<Column> columns, IEnumerable<string[]> rows, CellManners manners)
    {
        using var stream = new MemoryStream();
        await WriteAsync(stream, columns, rows.ToAsyncEnumerable(), manners);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    /// <summary>The head of a column in a file: its key, which is the same for everyone, with the unit of numbers without one.</summary>
    public static string FileHead(this Column column, CellManners manners) =>
        column.Kind.UnitOf(manners) is { } unit && column.Kind.Units.Count > 0 ? $"{column.Key} ({unit})" : column.Key;
}
