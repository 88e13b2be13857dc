using System.Globalization;
using PressRun.Engine.Costing;
using PressRun.JobFile;
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

/// <summary>A price list as single prices: to look at, to change some or all of them, and to say what became dearer.</summary>
public static class PriceLines
{
    private const decimal Hundred = 100m;

    // Prices of a sheet or a side are often finer than the currency; finer than this no shop counts.
    private const int UsualDecimals = 4;

    /// <summary>Every price of a list in order.</summary>
    /// <param name="list">The list.</param>
    /// <param name="stockName">What a paper is called, by its id.</param>
    public static IReadOnlyList<PriceLine> Of(Shop list, Func<string, string> stockName)
    {
        var lines = new List<PriceLine>();
        Map(list, stockName, line =>
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
    /// <param name="stockName">What a paper is called, by its id.</param>
    public static Shop Raised(Shop list, decimal percent, Func<PriceLine, bool> chosen, Func<string, string> stockName) =>
        Map(list, stockName, line => chosen(line) ? Raised(line.Amount, percent) : line.Amount);

    /// <summary>By how much a price rose, in per cent of what it was; null where it was nothing.</summary>
    public static decimal? RisePercent(decimal before, decimal after) => before == 0m ? null : (after - before) / before * Hundred;

    private static decimal Raised(decimal amount, decimal percent) =>
        decimal.Round(amount * (Hundred + percent) / Hundred, Math.Max(UsualDecimals, (int)NumberText.Trimmed(amount).Scale), MidpointRounding.AwayFromZero);

    private static Shop Map(Shop list, Func<string, string> stockName, Func<PriceLine, decimal> change)
    {
        return list with
        {
            Print = [.. list.Print.Select(price => price with { Steps = Steps(PriceSection.Print, $"{JobWords.Inks.Of(price.Ink)} on {price.SheetId}", price.Steps) })],
            Paper = [.. list.Paper.Select(price => price with { Steps = Steps(PriceSection.Paper, $"{stockName(price.StockId)} on {price.SheetId}", price.Steps) })],
            BookPrices = [.. list.BookPrices.Select(price => price with { Steps = [.. price.Steps.Select(step => BookStep(price, step))] })],
            Finishing = [.. list.Finishing.Select(Operation)],
            SetUp = new SetUp(SetUp("an order", list.SetUp.Order), SetUp("an edition", list.SetUp.Edition), SetUp("a part", list.SetUp.Part)),
            Order = list.Order.Delivery is { } delivery ? list.Order with { Delivery = Delivered(delivery) } : list.Order,
        };

        decimal Line(PriceSection section, string of, string step, decimal amount) => change(new PriceLine(section, of, step, amount));

        PriceStep[] Steps(PriceSection section, string of, IReadOnlyList<PriceStep> steps) =>
            [.. steps.Select(step => step with { Each = Line(section, of, From(step.From), step.Each) })];

        BookStep BookStep(BookPrice price, BookStep step)
        {
            var papers = price.StockIds is { } ids ? $" on {string.Join(" + ", ids.Select(stockName))}" : "";
            var of = string.Create(CultureInfo.InvariantCulture, $"{JobWords.Bindings.Of(price.Binding)}, {price.PagesFrom} to {price.PagesTo} pages{papers}");
            var each = step.Each == 0m ? 0m : Line(PriceSection.Books, of, From(step.From), step.Each);
            return step with { Each = each, PerPage = step.PerPage == 0m ? 0m : Line(PriceSection.Books, of, From(step.From) + ", a page", step.PerPage) };
        }

        Finishing Operation(Finishing finishing)
        {
            var each = Line(PriceSection.Finishing, finishing.Name, "", finishing.Each);
            return finishing with { Each = each, Minimum = finishing.Minimum == 0m ? 0m : Line(PriceSection.Finishing, finishing.Name, "at least", finishing.Minimum) };
        }

        decimal SetUp(string of, decimal amount) => amount == 0m ? 0m : Line(PriceSection.SetUp, of, "", amount);

        Delivery Delivered(Delivery delivery) => delivery with
        {
            Steps = [.. delivery.Steps.Select(step => step with { Price = Line(PriceSection.Delivery, "delivery", "up to " + MeasureText.Exact(step.Most), step.Price) })],
            PerFurtherKilogram = delivery.PerFurtherKilogram is { } further ? Line(PriceSection.Delivery, "delivery", "each further kg", further) : null,
        };
    }

    private static string From(long from) => string.Create(CultureInfo.InvariantCulture, $"from {from}");
}
