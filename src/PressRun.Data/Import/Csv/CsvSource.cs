using System.Buffers;
using System.Text;
using System.Text.Unicode;
using CsvHelper;

namespace PressRun.Data.Import.Csv;

/// <summary>A row of a file.</summary>
/// <param name="Number">Its number as a spreadsheet counts it, from 1.</param>
/// <param name="Cells">Its cells, formulas restored.</param>
public sealed record CsvRow(int Number, IReadOnlyList<string> Cells);

/// <summary>A CSV file at hand: commas, semicolons, tabs or bars, in UTF-8, UTF-16 or the old western code page. It is read row by row and never held whole.</summary>
public sealed class CsvSource
{
    /// <summary>Largest file, in bytes.</summary>
    public const long MostBytes = 32L * 1024 * 1024;

    /// <summary>Most rows.</summary>
    public const int MostRows = 200_000;

    /// <summary>Most columns of a row.</summary>
    public const int MostColumns = 200;

    private const int LongestRow = 256 * 1024;
    private const int WesternCodePage = 1252;

    private static readonly char[] Separators = [';', '\t', ',', '|'];

    private readonly Func<Stream> open;
    private readonly Encoding? encoding;

    private CsvSource(Func<Stream> open, char separator, Encoding? encoding)
    {
        this.open = open;
        this.encoding = encoding;
        Separator = separator;
    }

    /// <summary>What parts the cells.</summary>
    public char Separator { get; }

    /// <summary>Looks at a file.</summary>
    /// <exception cref="CsvRefusedException">It is too large or no table of text.</exception>
    public static CsvSource Open(string path) => Open(() => new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read));

    /// <summary>Looks at a file.</summary>
    /// <param name="open">Opens it anew, at its beginning.</param>
    /// <param name="cancel">Stops looking.</param>
    /// <exception cref="CsvRefusedException">It is too large or no table of text.</exception>
    public static CsvSource Open(Func<Stream> open, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(open);
        using var stream = open();
        if (stream.Length > MostBytes)
        {
            throw new CsvRefusedException($"The file is larger than {MostBytes / 1024 / 1024} MB. Part it, and import the parts one after the other.");
        }

        var encoding = EncodingOf(stream);
        return new CsvSource(open, SeparatorOf(open, encoding, cancel), encoding);
    }

    /// <summary>The rows from the first on; each enumeration reads the file anew.</summary>
    /// <exception cref="CsvRefusedException">A row, or the file, goes past a limit.</exception>
    public IEnumerable<CsvRow> Rows()
    {
        using var stream = open();
        using var reader = CsvReader.Create(
            stream,
            new CsvReaderOptions { Separator = Separator, HasHeader = false, Encoding = encoding, MaxRecordSize = LongestRow, SkipEmptyLines = false },
            leaveOpen: true);
        for (var number = 1; Next(reader, number); number++)
        {
            if (number > MostRows)
            {
                throw new CsvRefusedException($"The file has more than {MostRows:N0} rows. Part it, and import the parts one after the other.");
            }

            if (reader.FieldCount > MostColumns)
            {
                throw new CsvRefusedException($"Row {number} has more than {MostColumns} columns.");
            }

            var cells = new string[reader.FieldCount];
            for (var cell = 0; cell < cells.Length; cell++)
            {
                cells[cell] = Formulas.Restore(reader.GetString(cell));
            }

            yield return new CsvRow(number, cells);
        }
    }

    private static bool Next(CsvReader reader, int number)
    {
        try
        {
            return reader.Read();
        }
        catch (FormatException)
        {
            throw new CsvRefusedException($"The file cannot be read from row {number} on: look for a quotation mark that opens and does not close.");
        }
    }

    // Not UTF-8 and without a byte order mark: what older spreadsheets in the west save.
    private static Encoding? EncodingOf(Stream stream)
    {
        var mark = new byte[4];
        var marked = stream.Read(mark) >= 2 && (mark is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..]);
        if (marked)
        {
            return null;
        }

        stream.Position = 0;
        return IsUtf8(stream) ? null : CodePagesEncodingProvider.Instance.GetEncoding(WesternCodePage);
    }

    private static bool IsUtf8(Stream stream)
    {
        var buffer = ArrayPool<byte>.Shared.Rent(64 * 1024);
        var target = new char[buffer.Length];
        try
        {
            var kept = 0;
            int read;
            while ((read = stream.Read(buffer, kept, buffer.Length - kept)) > 0)
            {
                var all = buffer.AsSpan(0, kept + read);
                var status = Utf8.ToUtf16(all, target, out var taken, out _, replaceInvalidSequences: false, isFinalBlock: false);
                if (status == OperationStatus.InvalidData)
                {
                    return false;
                }

                if (all.Contains((byte)0))
                {
                    throw new CsvRefusedException("This is no text file. Save the table as CSV, in UTF-8 where there is a choice.");
                }

                kept = all.Length - taken;
                all[taken..].CopyTo(buffer);
            }

            return kept == 0;
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(buffer);
        }
    }

    // The separator that parts the first rows into the same number of cells, most of them; quoted cells are taken as the reader takes them.
    private static char SeparatorOf(Func<Stream> open, Encoding? encoding, CancellationToken cancel)
    {
        const int looked = 20;
        var best = (Separator: ',', Score: 0);
        foreach (var separator in Separators)
        {
            cancel.ThrowIfCancellationRequested();
            var counts = new CsvSource(open, separator, encoding).Rows().Take(looked).Select(row => row.Cells.Count).ToList();
            var common = counts.Where(count => count > 1).GroupBy(count => count).OrderByDescending(group => group.Count()).FirstOrDefault();
            var score = common is null ? 0 : common.Count() * common.Key;
            if (score > best.Score)
            {
                best = (separator, score);
            }
        }

        return best.Separator;
    }
}

/// <summary>A file that is not read at all; the message is a sentence for the person who chose it.</summary>
public sealed class CsvRefusedException : Exception
{
    /// <summary>With a sentence that says what would be right.</summary>
    public CsvRefusedException(string message)
        : base(message)
    {
    }

    /// <summary>With a sentence and the cause.</summary>
    public CsvRefusedException(string message, Exception cause)
        : base(message, cause)
    {
    }

    /// <summary>Without a sentence of its own.</summary>
    public CsvRefusedException()
    {
    }
}
