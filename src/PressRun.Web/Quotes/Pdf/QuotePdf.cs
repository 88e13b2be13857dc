using System.Globalization;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Engine.Quoting;
using PressRun.Web.RunPlans;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Quotes.Pdf;

/// <summary>A quote on paper.</summary>
public static class QuotePdf
{
    private const double Column = 62;

    /// <summary>Sets a quote.</summary>
    /// <param name="view">The quote; figures are written as its viewer reads them.</param>
    /// <param name="allLines">True for every line of the cost, false for the totals.</param>
    public static byte[] Of(QuoteView view, bool allLines)
    {
        var (facts, quote, format) = (view.Facts, view.Quote, view.Format);
        var name = $"Quote {format.Count(quote.Number)}";
        using var sheet = new PdfSheet($"{name}, {facts.Title}", facts.Press, quote.MadeAt, facts.Units == UnitSystem.Imperial);
        sheet.Heading(name, 20);
        sheet.Note($"{facts.Press} · {CurrencyNames.Of(facts.Currency)} · {Standing(view)}");
        sheet.Heading(facts.Title, 16);
        sheet.Note(Subtitle(view));
        sheet.Space(8);
        sheet.Sentence($"{Copies(view)} for {format.Money(quote.Landed)}, {format.Money(view.Figures.UnitCost)} each.");
        if (facts.Note.Length > 0)
        {
            sheet.Sentence(facts.Note, 11);
        }

        Printed(sheet, view);
        Cost(sheet, view, allLines);
        Bill(sheet, view);
        sheet.Space(10);
        sheet.Note($"{QuoteWords.ListsInForce(view)} Postage and taxes are the press's own figures: they are to be checked with the carrier and a licensed adviser.");
        Sign(sheet, view);
        return sheet.Done($"{name} · {facts.Press} · fingerprint {view.ShortFingerprint}", (page, pages) => $"page {format.Count(page)} of {format.Count(pages)}");
    }

    private static string Copies(QuoteView view) => Words.Many(view.Format.Count(view.Quote.Quantity), view.Quote.Quantity, "copy", "copies");

    private static string Standing(QuoteView view) => view.Whole.State switch
    {
        QuoteState.Out or QuoteState.Held => $"can be agreed to until {view.Format.Day(view.Facts.Until)}",
        var state => QuoteWords.Of(state),
    };

    private static string Subtitle(QuoteView view)
    {
        var words = new List<string> { Words.Printing(view.Facts.Printing) };
        if (view.Facts.By.Length > 0)
        {
            words.Insert(0, view.Facts.By);
        }

        if (view.Job?.Edition is { } book)
        {
            words.AddRange([view.Format.Size(book.Page), Words.Of(book.Binding), $"{view.Format.Mass(view.Figures.Mass)} a copy"]);
        }

        return string.Join(" · ", words);
    }

    private static void Printed(PdfSheet sheet, QuoteView view)
    {
        if (view.Job is not { } job)
        {
            return;
        }

        sheet.Heading("What is printed", 12);
        foreach (var (place, part) in job.Edition.Parts.Index())
        {
            var stock = HalvesWords.PaperOf(job, place, job.Quantity, view.Format);
            sheet.Row($"{part.Name}: {stock}, {Words.Inks(part.Outside, part.Inside)}", [Words.Many(view.Format.Count(part.Pages), part.Pages, "page", "pages")], Column);
        }
    }

    private static void Cost(PdfSheet sheet, QuoteView view, bool allLines)
    {
        var (figures, format) = (view.Figures, view.Format);
        sheet.Heading("What it costs", 12);
        if (allLines)
        {
            sheet.Row("what", ["how many", "each", "amount"], Column, RowKind.Head);
            foreach (var line in figures.Lines)
            {
                sheet.Row(line.Label, [format.Number(line.Quantity, 2), format.Price(line.Each), format.Money(line.Amount)], Column);
            }
        }
        else
        {
            foreach (var (words, amount) in QuoteTotals.Of(view))
            {
                sheet.Row(words, [format.Money(amount)], Column);
            }
        }

        if (allLines && QuoteTotals.TaxBack(view) is { } back)
        {
            sheet.Row(QuoteTotals.TaxBackWords, [format.Money(back)], Column);
        }

        sheet.Row("all of it", [format.Money(figures.Landed)], Column, RowKind.Sum);
    }

    private static void Bill(PdfSheet sheet, QuoteView view)
    {
        if (view.Bill.Count == 0)
        {
            return;
        }

        sheet.Heading("Who pays what", 12);
        foreach (var share in view.Bill)
        {
            sheet.Row(share.Name, [view.Format.Money(share.Amount)], Column);
        }

        sheet.Row("together", [view.Format.Money(view.Quote.Landed)], Column, RowKind.Sum);
    }

    // What was agreed to by a link stands there; else there is a line to sign.
    private static void Sign(PdfSheet sheet, QuoteView view)
    {
        var agreed = view.Whole.Events.Where(happened => happened.Kind == QuoteEventKind.Agreed).ToList();
        sheet.Space(14);
        foreach (var yes in agreed)
        {
            sheet.Sentence($"{QuoteWords.By(yes, view)} agreed to {Copies(view)} for {view.Format.Money(view.Quote.Landed)} on {view.Format.Day(DateOnly.FromDateTime(yes.At.UtcDateTime))}.", 11);
        }

        if (agreed.Count == 0 && view.Whole.State is QuoteState.Out or QuoteState.Held)
        {
            sheet.Room(80);
            sheet.Sentence($"I agree to {Copies(view)} for {view.Format.Money(view.Quote.Landed)}.", 11);
            sheet.Space(34);
            sheet.WriteOn("name", 0, 220);
            sheet.WriteOn("day", 250, 120);
        }
    }
}
