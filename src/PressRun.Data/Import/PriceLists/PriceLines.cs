using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Import.PriceLists;

/// <summary>The parts of a price list that hold prices.</summary>
public enum PriceSection
{
    /// <summary>Printing.</summary>
    Print,

    /// <summary>Paper.</summary>
    Paper,

    /// <summary>Whole books.</summary>
    Books,

    /// <summary>Finishing.</summary>
    Finishing,

    /// <summary>Charges for taking on work.</summary>
    SetUp,

    /// <summary>Delivery.</summary>
    Delivery,
}

/// <summary>One price of a list.</summary>
/// <param name="Section">The part it stands in.</param>
/// <param name="Of">What it prices: <c>black on SRA3</c>.</param>
/// <param name="Step">Which of its steps, or which of its figures; empty where there is one.</param>
/// <param name="Amount">The price.</param>
public sealed record PriceLine(PriceSection Section, string Of, string Step, decimal Amount)
{
    /// <summary>What it prices, with the step.</summary>
    public string What => Step.Length == 0 ? Of : $"{Of}, {Step}";
}

/// <summary>What the prices of a list are called, said by whoever shows them.</summary>
public interface IPriceWords
{
    /// <summary>Taking on an order.</summary>
    string Order { get; }

    /// <summary>Taking on an edition.</summary>
    string Edition { get; }

    /// <summary>Taking on a part.</summary>
    string Part { get; }

    /// <summary>The least that an operation costs.</summary>
    string AtLeast { get; }

    /// <summary>Delivery.</summary>
    string Delivery { get; }

    /// <summary>A kilogram past the last step of delivery.</summary>
    string FurtherKilogram { get; }

    /// <summary>A printed side: <c>black on SRA3</c>.</summary>
    string Print(PrintPrice price);

    /// <summary>A sheet of paper.</summary>
    string Paper(PaperPrice price);

    /// <summary>A whole book.</summary>
    string Book(BookPrice price);

    /// <summary>The step from so many units on.</summary>
    string From(long from);

    /// <summary>The price of each page in that step.</summary>
    string PageFrom(long from);

    /// <summary>The step of delivery up to a mass.</summary>
    string UpTo(Mass most);
}

/// <summary>A price list as single prices: to look at, to change some or all of them, and to say what became dearer.</summary>
public static class PriceLines
{
    private const decimal Hundred = 100m;

    // Prices of a sheet or a side are often finer than the currency; finer than this no shop counts.
    private const int UsualDecimals = 4;

    /// <summary>Every price of a list in order.</summary>
    /// <param name="list">The list.</param>
    /// <param name="words">What its prices are called.</param>
    public static IReadOnlyList<PriceLine> Of(Shop list, IPriceWords words)
    {
        var lines = new List<PriceLine>();
        Map(list, words, line =>
        {
            lines.Add(line);
            return line.Amount;
        });
        return lines;
    }

    /// <summary>The list with some prices changed by a percentage, rounded to four decimals (or as many as the price has, where it has more), halves
    /// away from zero.</summary>
    /// <param name="list">The list.</param>
    /// <param name="percent">5 for five per cent dearer; more than -100.</param>
    /// <param name="chosen">Which prices.</param>
    /// <param name="words">What its prices are called.</param>
    public static Shop Raised(Shop list, decimal percent, Func<PriceLine, bool> chosen, IPriceWords words) =>
        Map(list, words, line => chosen(line) ? Raised(line.Amount, percent) : line.Amount);

    /// <summary>By how much a price rose, in per cent of what it was; null where it was nothing.</summary>
    public static decimal? RisePercent(decimal before, decimal after) => before == 0m ? null : (after - before) / before * Hundred;

    private static decimal Raised(decimal amount, decimal percent) =>
        decimal.Round(amount * (Hundred + percent) / Hundred, Math.Max(UsualDecimals, (int)NumberText.Trimmed(amount).Scale), MidpointRounding.AwayFromZero);

    private static Shop Map(Shop list, IPriceWords words, Func<PriceLine, decimal> change)
    {
        return list with
        {
            Print = [.. list.Print.Select(price => price with { Steps = Steps(PriceSection.Print, words.Print(price), price.Steps) })],
            Paper = [.. list.Paper.Select(price => price with { Steps = Steps(PriceSection.Paper, words.Paper(price), price.Steps) })],
            BookPrices = [.. list.BookPrices.Select(price => price with { Steps = [.. price.Steps.Select(step => BookStep(price, step))] })],
            Finishing = [.. list.Finishing.Select(Operation)],
            SetUp = new SetUp(SetUp(words.Order, list.SetUp.Order), SetUp(words.Edition, list.SetUp.Edition), SetUp(words.Part, list.SetUp.Part)),
            Order = list.Order.Delivery is { } delivery ? list.Order with { Delivery = Delivered(delivery) } : list.Order,
        };

        decimal Line(PriceSection section, string of, string step, decimal amount) => change(new PriceLine(section, of, step, amount));

        PriceStep[] Steps(PriceSection section, string of, IReadOnlyList<PriceStep> steps) =>
            [.. steps.Select(step => step with { Each = Line(section, of, words.From(step.From), step.Each) })];

        BookStep BookStep(BookPrice price, BookStep step)
        {
            var of = words.Book(price);
            var each = step.Each == 0m ? 0m : Line(PriceSection.Books, of, words.From(step.From), step.Each);
            return step with { Each = each, PerPage = step.PerPage == 0m ? 0m : Line(PriceSection.Books, of, words.PageFrom(step.From), step.PerPage) };
        }

        Finishing Operation(Finishing finishing)
        {
            var each = Line(PriceSection.Finishing, finishing.Name, "", finishing.Each);
            return finishing with { Each = each, Minimum = finishing.Minimum == 0m ? 0m : Line(PriceSection.Finishing, finishing.Name, words.AtLeast, finishing.Minimum) };
        }

        decimal SetUp(string of, decimal amount) => amount == 0m ? 0m : Line(PriceSection.SetUp, of, "", amount);

        Delivery Delivered(Delivery delivery) => delivery with
        {
            Steps = [.. delivery.Steps.Select(step => step with { Price = Line(PriceSection.Delivery, words.Delivery, words.UpTo(step.Most), step.Price) })],
            PerFurtherKilogram = delivery.PerFurtherKilogram is { } further ? Line(PriceSection.Delivery, words.Delivery, words.FurtherKilogram, further) : null,
        };
    }
}
