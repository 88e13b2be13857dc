using System.Globalization;
using PressRun.Data.Quotes;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Quoting;
using PressRun.Web.Charts;
using PressRun.Web.RunPlans;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Quotes;

/// <summary>What a part of the bill comes to, and what of it was paid.</summary>
/// <param name="Index">Its place.</param>
/// <param name="Name">Who carries it.</param>
/// <param name="Amount">What they carry.</param>
/// <param name="Paid">What they have paid.</param>
/// <param name="Open">What is still to be paid; below zero where too much was.</param>
public sealed record BillShare(int Index, string Name, decimal Amount, decimal Paid, decimal Open);

/// <summary>A quote as its pages show it: the frozen figures, and the frozen job where this version still reckons it the same.</summary>
public sealed class QuoteView
{
    private QuoteView(QuoteWhole whole, FrozenFigures figures, FrozenJob frozen, IReadOnlyList<BillShare> bill, CultureInfo culture)
    {
        Whole = whole;
        Figures = figures;
        (Job, Worked) = (frozen.Job, frozen.Worked);
        Bill = bill;
        Format = new PressFormat(Currency.Find(Facts.Currency)!, Facts.Units, culture);
    }

    /// <summary>The quote with its course.</summary>
    public QuoteWhole Whole { get; }

    /// <summary>The quote.</summary>
    public QuoteRecord Quote => Whole.Quote;

    /// <summary>What it says.</summary>
    public QuoteFacts Facts => Whole.Quote.Facts;

    /// <summary>Its figures.</summary>
    public FrozenFigures Figures { get; }

    /// <summary>Its job; null where this version cannot read it.</summary>
    public Job? Job { get; }

    /// <summary>The job worked out; null where this version would reckon it otherwise, so that no other quantity can be tried.</summary>
    public WorkedPlan? Worked { get; }

    /// <summary>Who carries what.</summary>
    public IReadOnlyList<BillShare> Bill { get; }

    /// <summary>What was paid of the whole bill.</summary>
    public decimal Paid => Bill.Sum(share => share.Paid);

    /// <summary>What of the whole bill is still to be paid.</summary>
    public decimal Open => Bill.Sum(share => share.Open);

    /// <summary>How the quote's figures are written for the viewer.</summary>
    public PressFormat Format { get; }

    /// <summary>The fingerprint in a form that people can compare: its first twelve hexadecimal digits.</summary>
    public string ShortFingerprint => Convert.ToHexStringLower(Quote.Fingerprint)[..12];

    /// <summary>The drawing of the book; null where the job is not worked out.</summary>
    public BookShape? Shape => Worked?.Shape(Facts.Colour);

    /// <summary>Reads a quote.</summary>
    /// <param name="whole">The quote with its course.</param>
    /// <param name="frozen">Its job.</param>
    /// <param name="culture">How figures are written for the viewer.</param>
    public static QuoteView Of(QuoteWhole whole, FrozenJob frozen, CultureInfo culture)
    {
        var figures = FrozenFigures.Read(whole.Quote.Result) ?? throw new InvalidOperationException("The result of a quote in the database is no costing: something else wrote it.");
        return new QuoteView(whole, figures, frozen, Shares(whole), culture);
    }

    /// <summary>The shares of a bill over another amount than the quote's.</summary>
    public IReadOnlyList<decimal> SharesOf(decimal total) =>
        BillSplit.Of(total, Facts.Bill, Format.Currency) is { Succeeded: true } split ? split.Value.Amounts : [];

    private static IReadOnlyList<BillShare> Shares(QuoteWhole whole)
    {
        var facts = whole.Quote.Facts;
        var amounts = BillSplit.Of(whole.Quote.Landed, facts.Bill, Currency.Find(facts.Currency)!).Value.Amounts;
        return [.. facts.Bill.Select((part, index) =>
        {
            var paid = whole.Events.Where(happened => happened.Kind == QuoteEventKind.Paid && happened.Part == index).Sum(happened => happened.Amount ?? 0m);
            return new BillShare(index, part.Name, amounts[index], paid, amounts[index] - paid);
        })];
    }
}
