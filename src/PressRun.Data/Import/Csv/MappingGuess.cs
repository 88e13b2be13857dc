using System.Text.RegularExpressions;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;

namespace PressRun.Data.Import.Csv;

/// <summary>Guesses how a file is read into a table, from the words in its heads and from what stands below them. A person looks at the guess and
/// mends it before anything is stored.</summary>
public static partial class MappingGuess
{
    private const int HeadRowsLookedAt = 10;
    private const int RowsLookedAt = 50;
    private const int LeastFit = 30;
    private const int FitByCells = 40;
    // Longer texts are no numbers, and the pattern for them stays quick.
    private const int MostNumber = 60;
    private const double MostlyRight = 0.6;

    // The step of a price that stands before others and names none.
    private const string First = "1";

    /// <summary>The guess for a file.</summary>
    /// <param name="source">The file.</param>
    /// <param name="table">Columns of the table.</param>
    /// <param name="own">The person's own manners.</param>
    /// <param name="cancel">Stops it.</param>
    public static CsvMapping Of(CsvSource source, IReadOnlyList<Column> table, CellManners own, CancellationToken cancel = default) =>
        Of([.. source.Rows().Take(HeadRowsLookedAt + RowsLookedAt)], table, own, cancel);

    /// <summary>How well a guess covers what a table needs: the part of its required columns that have a source.</summary>
    public static double Covers(CsvMapping mapping, IReadOnlyList<Column> table)
    {
        var needed = Enumerable.Range(0, table.Count).Where(column => table[column].Required).ToList();
        var found = needed.Count(column => mapping.Columns.Any(source => source.Column == column));
        return needed.Count == 0 ? 0 : (double)found / needed.Count;
    }

    internal static CsvMapping Of(IReadOnlyList<CsvRow> rows, IReadOnlyList<Column> table, CellManners own, CancellationToken cancel = default)
    {
        if (rows.Count == 0)
        {
            return new CsvMapping(1, [], own.HasDecimalComma, new Dictionary<int, string>());
        }

        var head = HeadRow(rows, table, cancel);
        var below = rows.Where(row => row.Number > head.Number).Take(RowsLookedAt).ToList();
        var heads = head.Cells.Select(cell => new HeadWords(cell)).ToList();
        var comma = DecimalComma(below, Assign(heads, below, table, own, cancel), table, own);
        var draft = new CsvMapping(head.Number, [], comma, new Dictionary<int, string>());
        var guess = draft with { Columns = Assign(heads, below, table, draft.Manners(own), cancel) };
        return guess with { Everywhere = OfAllRows(guess, [.. rows.Where(row => row.Number <= head.Number)], table, guess.Manners(own)) };
    }

    // A sheet that no column names is the one that the heads or what stands above them name, or the only one there is.
    private static Dictionary<int, string> OfAllRows(CsvMapping guess, List<CsvRow> top, IReadOnlyList<Column> table, CellManners manners)
    {
        var said = new Dictionary<int, string>();
        foreach (var column in guess.NotSaid(table).Where(column => table[column] is { Key: StepColumns.SheetKey, Kind: ReferenceCell }))
        {
            var kind = table[column].Kind;
            var named = top.SelectMany(row => row.Cells).SelectMany(cell => NotInWords().Split(cell)).Where(word => word.Length > 0)
                .Select(word => kind.Read(word, manners)).Where(read => read.Rule is null).Select(read => kind.Write(read.Value!, manners)).Distinct().ToList();
            if ((named.Count, kind.Choices.Count) switch { (1, _) => named[0], (0, 1) => kind.Choices[0], _ => null } is { } one)
            {
                said[column] = one;
            }
        }

        return said;
    }

    // The first of the top rows that names the most columns.
    private static CsvRow HeadRow(IReadOnlyList<CsvRow> rows, IReadOnlyList<Column> table, CancellationToken cancel) =>
        rows.Take(HeadRowsLookedAt).Where(row => row.Cells.Any(cell => cell.Trim().Length > 0))
            .DefaultIfEmpty(rows[0])
            .MaxBy(row => row.Cells.Sum(cell => Named(cell, table, cancel) ? 1 : 0))!;

    private static bool Named(string cell, IReadOnlyList<Column> table, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        return table.Max(column => new HeadWords(cell).Fit(column)) >= LeastFit;
    }

    private static SourceColumn[] Assign(List<HeadWords> heads, List<CsvRow> below, IReadOnlyList<Column> table, CellManners manners, CancellationToken cancel)
    {
        var result = new SourceColumn[heads.Count];
        Array.Fill(result, SourceColumn.LeftOut);
        var price = IndexOf(table, StepPart.Price);
        var byMass = IndexOf(table, StepPart.UpTo) >= 0;
        for (var at = 0; at < heads.Count && price >= 0; at++)
        {
            if ((byMass ? heads[at].StepUpTo : heads[at].StepFrom) is { } step)
            {
                result[at] = new SourceColumn(price, UnitFor(heads[at], at, below, table[price]), step);
            }
        }

        var wide = result.Any(source => source.Step is not null);
        if (wide && !byMass && result.All(source => source.Step != First) && Array.FindIndex(result, source => source.Step is not null) is > 0 and var others
            && heads[others - 1].Fit(table[price]) >= LeastFit)
        {
            result[others - 1] = new SourceColumn(price, UnitFor(heads[others - 1], others - 1, below, table[price]), First);
        }

        var taken = new HashSet<int>(wide ? Enumerable.Range(0, table.Count).Where(column => table[column].Step != StepPart.None) : []);
        var fits = from at in Enumerable.Range(0, heads.Count)
                   where result[at].Step is null
                   let filled = below.Exists(row => at < row.Cells.Count && row.Cells[at].Trim().Length > 0)
                   from column in Enumerable.Range(0, table.Count)
                   let unit = UnitFor(heads[at], at, below, table[column])
                   let right = RightShare(at, below, table[column], manners, unit, cancel)
                   let fit = Fit(heads[at].Fit(table[column]), right, filled, right == 0 && AllNumbers(at, below, manners), table[column])
                   where fit >= LeastFit
                   orderby filled descending, fit descending, right descending, at
                   select (At: at, Column: column, Unit: unit);
        foreach (var (at, column, unit) in fits.ToList())
        {
            if (result[at].Column is null && taken.Add(column))
            {
                result[at] = new SourceColumn(column, unit);
            }
        }

        return result;
    }

    // A head that fits counts for less over cells that do not, unless they name what may not be there yet; cells that can be nothing else count
    // without a head.
    private static int Fit(int head, double right, bool filled, bool numbers, Column column)
    {
        if (head > 0)
        {
            // What is a number throughout names no sheet and no paper.
            if (column.Kind is ReferenceCell && numbers)
            {
                return 0;
            }

            return right >= MostlyRight || column.Kind is ReferenceCell ? head : head / 2;
        }

        return filled && right > 0.9 && column.Kind is WeightCell or ReferenceCell ? FitByCells : 0;
    }

    private static bool AllNumbers(int at, List<CsvRow> below, CellManners manners)
    {
        var cells = below.Where(row => at < row.Cells.Count && row.Cells[at].Trim().Length > 0).Select(row => row.Cells[at].Trim()).ToList();
        return cells.Count > 0 && cells.TrueForAll(cell => cell.Length <= MostNumber && NumberCells.TryParse(cell, manners.Culture, out _));
    }

    private static double RightShare(int at, List<CsvRow> below, Column column, CellManners manners, string? unit, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        var cells = below.Where(row => at < row.Cells.Count && row.Cells[at].Trim().Length > 0).Select(row => row.Cells[at].Trim()).ToList();
        return cells.Count == 0 ? 1 : (double)cells.Count(cell => column.Kind.Read(cell, manners, unit).Rule is null) / cells.Count;
    }

    private static string? UnitFor(HeadWords head, int at, List<CsvRow> below, Column column)
    {
        if (head.Unit is { } unit && column.Kind.Units.Contains(unit))
        {
            return unit;
        }

        return column.Kind switch
        {
            PercentCell when LooksLikeFractions(at, below) => PercentCell.Fraction,
            DayCell => DayCell.OrderOf(below.Where(row => at < row.Cells.Count).Select(row => row.Cells[at])),
            _ => null,
        };
    }

    private static bool LooksLikeFractions(int at, List<CsvRow> below)
    {
        var cells = below.Where(row => at < row.Cells.Count && row.Cells[at].Trim().Length > 0).Select(row => row.Cells[at].Trim()).ToList();
        return cells.Count > 0 && cells.All(cell => cell is "0" or "1" || SmallFraction().IsMatch(cell)) && cells.Any(cell => cell is not ("0" or "1"));
    }

    // A name that looks like a number says nothing of how numbers are written.
    private static bool DecimalComma(List<CsvRow> below, SourceColumn[] sources, IReadOnlyList<Column> table, CellManners own)
    {
        var commas = 0;
        var points = 0;
        var isText = sources.Select(source => source.Column is { } column && table[column].Kind is TextCell).ToList();
        foreach (var cell in below.SelectMany(row => row.Cells.Where((_, at) => at >= isText.Count || !isText[at])).Where(cell => cell.Length <= MostNumber))
        {
            var last = PlainNumber().Match(cell);
            if (last.Success)
            {
                commas += last.Groups["mark"].Value == "," ? 1 : 0;
                points += last.Groups["mark"].Value == "." ? 1 : 0;
            }
        }

        return commas == points ? own.HasDecimalComma : commas > points;
    }

    private static int IndexOf(IReadOnlyList<Column> table, StepPart part)
    {
        for (var column = 0; column < table.Count; column++)
        {
            if (table[column].Step == part)
            {
                return column;
            }
        }

        return -1;
    }

    // A number whose mark cannot group: not followed by exactly three digits, unless nothing but a zero stands before it.
    [GeneratedRegex(@"^[^\d]*(?:\d[\d.,' ]*(?<mark>[.,])(?:\d{1,2}|\d{4,})|0(?<mark>[.,])\d+)[^\d.,]*$", RegexOptions.ExplicitCapture)]
    private static partial Regex PlainNumber();

    [GeneratedRegex(@"[^\p{L}\p{N}]+")]
    private static partial Regex NotInWords();

    [GeneratedRegex(@"^0?[.,]\d+$")]
    private static partial Regex SmallFraction();
}
