using System.Globalization;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Engine.Quoting;
using PressRun.Web.Pdf;
using PressRun.Web.RunPlans;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Quotes;

/// <summary>A quote on paper.</summary>
public static class QuotePdf
{
    private const double Column = 62;

    /// <summary>Sets a quote.</summary>
    /// <param name="view">The quote; figures are written as its viewer reads them.</param>
    /// <param name="allLines">True for every line of the cost, false for the totals.</param>
    /// <param name="reader">By which link it is read, and so who may sign; null for the maker.</param>
    public static byte[] Of(QuoteView view, bool allLines, QuoteLink? reader = null)
    {
        var (facts, quote, format) = (view.Facts, view.Quote, view.Format);
        var name = Say($"Quote {format.Count(quote.Number)}");
        using var sheet = new PdfSheet($"{name}, {facts.Title}", facts.Press, quote.MadeAt, facts.Units == UnitSystem.Imperial);
        sheet.Heading(name, 20);
        sheet.Note($"{facts.Press} · {CurrencyNames.Of(facts.Currency)} · {Standing(view, reader)}");
        sheet.Heading(facts.Title, 16);
        sheet.Note(Subtitle(view));
        sheet.Space(8);
        sheet.Sentence(Say($"{QuoteWords.Copies(view)} for {format.Sum(quote.Landed)}, {format.Money(view.Figures.UnitCost)} each."));
        if (facts.Note.Length > 0)
        {
            sheet.Sentence(facts.Note, 11);
        }

        Printed(sheet, view);
        Cost(sheet, view, allLines);
        Bill(sheet, view);
        sheet.Space(10);
        sheet.Note($"{QuoteWords.ListsInForce(view)} {Say($"Postage and taxes are the press's own figures: they are to be checked with the carrier and a licensed adviser.")}");
        Sign(sheet, view, reader);
        return sheet.Done(Say($"{name} · {facts.Press} · fingerprint {view.ShortFingerprint}"), (page, pages) => Say($"page {format.Count(page)} of {format.Count(pages)}"));
    }

    private static string Standing(QuoteView view, QuoteLink? reader) => view.Whole.State switch
    {
        QuoteState.Out or QuoteState.Held => Say($"can be agreed to until {view.Format.Day(QuoteWords.LastDay(view, reader))}"),
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
            words.AddRange([view.Format.Size(book.Page), Words.Of(book.Binding), Say($"{Mass(view)} a copy")]);
        }

        return string.Join(" · ", words);
    }

    private static string Mass(QuoteView view)
    {
        var first = view.Format.Mass(view.Figures.Mass);
        return view.Figures.SecondHalf is { } half && view.Format.Mass(half.Mass) is var second && second != first ? Say($"{first} or {second}") : first.ToString();
    }

    private static void Printed(PdfSheet sheet, QuoteView view)
    {
        if (view.Job is not { } job)
        {
            return;
        }

        sheet.Heading(Say($"What is printed"), 12);
        foreach (var (place, part) in job.Edition.Parts.Index())
        {
            var stock = HalvesWords.PaperOf(job, place, job.Quantity, view.Format);
            sheet.Row($"{part.Name}: {stock}, {Words.Inks(part.Outside, part.Inside)}", [Words.Pages(part.Pages, view.Format.Count)], Column);
        }
    }

    private static void Cost(PdfSheet sheet, QuoteView view, bool allLines)
    {
        var (figures, format) = (view.Figures, view.Format);
        sheet.Heading(Say($"What it costs"), 12);
        if (allLines)
        {
            sheet.Row(Say($"what"), [Say($"how many"), Say($"each"), Say($"amount")], Column, RowKind.Head);
            foreach (var line in figures.Lines)
            {
                sheet.Row(QuoteWords.Of(line), [string.Join(' ', new[] { QuoteWords.HowMany(line, format), QuoteWords.Unit(line) }.Where(word => word.Length > 0)), format.Price(line.Each), format.Money(line.Amount)], Column);
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

        sheet.Row(Say($"all of it"), [format.Money(figures.Landed)], Column, RowKind.Sum);
    }

    private static void Bill(PdfSheet sheet, QuoteView view)
    {
        if (view.Bill.Count == 0)
        {
            return;
        }

        sheet.Heading(Say($"Who pays what"), 12);
        foreach (var share in view.Bill)
        {
            sheet.Row(share.Name, [view.Format.Money(share.Amount)], Column);
        }

        sheet.Row(Say($"together"), [view.Format.Money(view.Quote.Landed)], Column, RowKind.Sum);
    }

    // What was agreed to by a link stands there; whoever has not answered yet has a line to sign, for the whole and for their part of it.
    private static void Sign(PdfSheet sheet, QuoteView view, QuoteLink? reader)
    {
        sheet.Space(14);
        var agreed = view.Whole.Events.Where(happened => happened.Kind == QuoteEventKind.Agreed).ToList();
        foreach (var yes in agreed)
        {
            sheet.Sentence(Say($"{QuoteWords.By(yes, view)} agreed to {QuoteWords.Copies(view)} for {view.Format.Sum(view.Quote.Landed)} on {view.Format.Day(view.Format.DayOf(yes.At))}."), 11);
        }

        if (view.Whole.State is not (QuoteState.Out or QuoteState.Held))
        {
            return;
        }

        foreach (var (name, part) in Signers(view, reader, agreed.Count > 0))
        {
            sheet.Room(80);
            sheet.Sentence(QuoteWords.Agreeing(view, part), 11);
            sheet.Space(34);
            sheet.WriteOn(name, 0, 220);
            sheet.WriteOn(Say($"day"), 250, 120);
            sheet.Space(22);
        }
    }

    // By a link its reader, where they are asked; else all who are. A quote that nobody was sent is for those to sign who carry its bill.
    private static IEnumerable<(string Name, int? Part)> Signers(QuoteView view, QuoteLink? reader, bool agreed)
    {
        var asked = (reader is null ? view.Whole.Links : [reader]).Where(link => link is { Rights.Agree: true, Answer: QuoteAnswer.None, EndedAt: null })
            .Select(link => (link.Name, link.Part)).ToList();
        if (asked.Count > 0 || agreed || reader is not null)
        {
            return asked;
        }

        var carry = view.Bill.Where(share => share.Name != view.Facts.Press).Select(share => (share.Name, (int?)share.Index)).ToList();
        return carry.Count > 0 ? carry : [(Say($"name"), null)];
    }
}
