using PressRun.Data;
using PressRun.Data.Import;
using PressRun.Data.Import.Csv;
using PressRun.Data.Import.Notes;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Data.Stocks;
using PressRun.Engine.Costing;
using PressRun.Engine.Paper;
using PressRun.Web.Libraries.Shops;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Libraries.Files;

/// <summary>Brings papers and their prices in from one file: papers that the press lacks go into its library, the prices into the list. Papers that it has stay as they are.</summary>
/// <param name="shape">How rows become offers.</param>
/// <param name="stocks">The library.</param>
/// <param name="press">Whose it is.</param>
/// <param name="open">The list.</param>
internal sealed class OfferImport(OfferShape shape, StockStore stocks, PressView press, OpenList open)
{
    private readonly CellManners own = LibraryManners.Of(press);
    private ImportReceipt<Stock>? receipt;

    /// <summary>Reads the file through without storing anything.</summary>
    public CsvPreview Preview(CsvSource source, CsvMapping mapping, IProgress<int> progress, CancellationToken cancel)
    {
        var preview = CsvReading.Preview(source, mapping, shape, own, progress, cancel);
        if (preview.ProblemCount > 0)
        {
            return preview;
        }

        var apart = new List<PaperApart>();
        Offers.Into(open.Prices, Read(source, mapping, cancel).Offers, open.View.Stocks, apart.Add);
        return preview with { Told = [.. apart.Select(Says)] };
    }

    /// <summary>The list as it would be, with the prices of papers that there are.</summary>
    public Shop Into(CsvSource source, CsvMapping mapping, CancellationToken cancel) =>
        Offers.Into(open.Prices, Read(source, mapping, cancel).Offers, open.View.Stocks, _ => { });

    /// <summary>Brings the file in, all of it or nothing.</summary>
    /// <param name="source">The file.</param>
    /// <param name="mapping">How it is read.</param>
    /// <param name="terms">Terms of its notes that were agreed to.</param>
    /// <param name="place">Which list it comes into.</param>
    /// <param name="progress">Told the number of the row.</param>
    /// <param name="cancel">Stops it.</param>
    public async Task<ImportDone> RunAsync(
        CsvSource source, CsvMapping mapping, IReadOnlyList<NotedTerm> terms, ListPlace place, IProgress<int> progress, CancellationToken cancel)
    {
        var (offers, problems) = Read(source, mapping, cancel);
        if (problems.Count > 0)
        {
            return new ImportDone(null, Say($"Nothing was brought in. Row {problems[0].Row}: {SayWhole(problems[0].Rule)}"));
        }

        var lacking = Offers.Lacking(offers.Select(offer => offer.Thing), open.View.Stocks);
        try
        {
            receipt = await stocks.ImportAsync(press.Record.Id, () => lacking.Select(paper => new LibraryItem<Stock>(paper, false, 0)), progress: progress, cancel: cancel);
        }
        catch (ImportRefusedException refusal)
        {
            return new ImportDone(null, Say($"Nothing was brought in. {lacking[refusal.Index].Name}: {SayWhole(refusal.Problem.Rule)}"));
        }

        var apart = 0;
        var problem = await open.ReopenAsync()
            ?? await open.StoreAsync(place.Dated(NotedTerm.Into(Offers.Into(open.Prices, offers, open.View.Stocks, _ => apart++), terms)), place.AsNew);
        if (problem is not null)
        {
            await TakeBackAsync();
            return new ImportDone(null, Say($"Nothing was brought in. {problem}"));
        }

        return new ImportDone(Came(place.Stored(press.Format, terms.Count), lacking.Count, apart), null);
    }

    /// <summary>Takes the papers back that were brought in last. Answers null when that is done, otherwise what stands in the way.</summary>
    public async Task<string?> TakeBackAsync()
    {
        if (receipt is null)
        {
            return null;
        }

        var inTheWay = await stocks.TakeBackAsync(press.Record.Id, receipt);
        receipt = inTheWay.Count == 0 ? null : receipt;
        return inTheWay.Count == 0 ? null : Say($"The prices are taken back; the papers stay. {SayWhole(inTheWay[0])}");
    }

    private static string Says(PaperApart paper) =>
        Say($"Row {paper.Row}, {paper.Paper}, prints at other prices than row {paper.LikeRow}. Printing is priced by the sheet, so it comes on a sheet of its own, {paper.Sheet}, of the same size. Steps count there by themselves.");

    private string Came(string stored, int papers, int apart)
    {
        var (newPapers, ownSheets) = (press.Format.Count(papers), press.Format.Count(apart));
        if (apart == 0)
        {
            return Say(papers, $"{stored}; {newPapers} paper is new in the library.", $"{stored}; {newPapers} papers are new in the library.");
        }

        var sheets = Say(apart, $"{ownSheets} paper has a sheet of its own for another print price", $"{ownSheets} papers have sheets of their own for another print price");
        return Say(papers, $"{stored}; {newPapers} paper is new in the library, {sheets}.", $"{stored}; {newPapers} papers are new in the library, {sheets}.");
    }

    private (IReadOnlyList<ReadThing<PaperOffer>> Offers, List<CellProblem> Problems) Read(CsvSource source, CsvMapping mapping, CancellationToken cancel)
    {
        var problems = new List<CellProblem>();
        return (CsvReading.Things(source, mapping, shape, own, problems.Add, cancel).ToList(), problems);
    }
}
