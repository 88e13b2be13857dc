using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Tables;
using PressRun.JobFile;

namespace PressRun.Web.Quotes;

/// <summary>The lines of a quote as a table for a spreadsheet.</summary>
public static class QuoteCsv
{
    private static readonly TextCell Cell = new(JobRules.Name);

    // The app never reads such a file again, so that its words are those of whoever saves it.
    private static Column[] Columns => [Headed(Say($"What")), Headed(Say($"How many")), Headed(Say($"each")), Headed(Say($"amount"))];

    private static Column Headed(string words) => new(words, words, Cell);

    /// <summary>The lines, and the sum that they add up to as the last row, in the words and with the decimal mark of the viewer; what looks like a formula is defused.</summary>
    public static Task<string> OfAsync(QuoteView view)
    {
        var format = view.Format;
        var rows = view.Figures.Lines.Select(line => new[] { QuoteWords.Of(line), Plain(line.Quantity), format.ForFile(line.Each), format.ForFile(line.Amount) });
        var back = QuoteTotals.TaxBack(view) is { } tax ? [[QuoteTotals.TaxBackWords, "1", format.ForFile(tax), format.ForFile(tax)]] : Array.Empty<string[]>();
        string[] sum = [Say($"all of it"), Plain(view.Quote.Quantity), format.ForFile(view.Figures.UnitCost), format.ForFile(view.Figures.Landed)];
        return CsvText.OfAsync(Columns, [.. rows, .. back, sum], new CellManners(format.Culture, view.Facts.Units, format.Currency.MinorDigits));

        // Without marks between thousands, which not every spreadsheet reads back.
        string Plain(decimal number) => number.ToString("0.############################", format.Culture);
    }
}
