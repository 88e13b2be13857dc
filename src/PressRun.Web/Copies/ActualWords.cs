using PressRun.Engine.Copies;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Copies;

/// <summary>Words for a printing held against its plan.</summary>
public static class ActualWords
{
    /// <summary>What a part of the invoice is.</summary>
    public static string Of(InvoicePart part) => part switch
    {
        InvoicePart.Printing => "Print, or whole books",
        InvoicePart.Paper => "Paper and material",
        InvoicePart.SetUp => "Set-ups",
        InvoicePart.Finishing => "Finishing at the shop",
        InvoicePart.Delivery => "Delivery",
        InvoicePart.Tax => "Tax",
        _ => "The rest of the invoice",
    };

    /// <summary>What a figure is.</summary>
    public static string Of(VarianceSubject subject) => subject switch
    {
        VarianceSubject.GoodCopies => "Good copies",
        VarianceSubject.Spoiled => "Went wrong at the table",
        VarianceSubject.Shop => "The shop, less tax that comes back",
        VarianceSubject.Hours => "Hours at the table",
        VarianceSubject.Labour => "Those hours at their price",
        VarianceSubject.Consumables => "Staples, blades, thread",
        VarianceSubject.FixedCosts => "Art, proof, number",
        VarianceSubject.LandedCost => "All of it",
        _ => "A copy",
    };

    /// <summary>A figure: copies, hours, or money.</summary>
    public static string Figure(VarianceSubject subject, decimal value, PressFormat format) => subject switch
    {
        VarianceSubject.GoodCopies or VarianceSubject.Spoiled => format.Count(value),
        VarianceSubject.Hours => format.Number(value, 1),
        _ => format.Money(value),
    };

    /// <summary>A difference in words, as it is shown: <c>4.20 more</c>, <c>as planned</c>.</summary>
    public static string Difference(decimal planned, decimal actual, Func<decimal, string> written)
    {
        var difference = actual - planned;
        var zero = written(0m);
        return written(Math.Abs(difference)) == zero ? "as planned" : $"{written(Math.Abs(difference))} {(difference > 0 ? "more" : "less")}";
    }

    /// <summary>Why a copy cost other than planned, as far as the figures know; empty where they say nothing.</summary>
    /// <param name="why">What other costs and what other copies make of it.</param>
    /// <param name="copies">Good copies, planned and as they were.</param>
    /// <param name="format">How the viewer writes figures.</param>
    public static string Why((decimal ByCost, decimal ByCopies) why, Variance copies, PressFormat format)
    {
        var zero = format.Money(0m);
        var parts = new List<string>();
        if (format.Money(Math.Abs(why.ByCost)) is var cost && cost != zero)
        {
            parts.Add($"{cost} {MoreOrLess(why.ByCost)} because the printing cost {MoreOrLess(why.ByCost)}");
        }

        if (format.Money(Math.Abs(why.ByCopies)) is var fewer && fewer != zero)
        {
            var gone = Math.Abs(copies.Difference);
            parts.Add($"{fewer} {MoreOrLess(why.ByCopies)} because {Words.Many(format.Count(gone), (long)gone, "copy", "copies")} {(copies.Difference < 0 ? "fewer" : "more")} came out good");
        }

        return parts.Count == 0 ? "" : $"Of a copy, {string.Join(", and ", parts)}.";
    }

    private static string MoreOrLess(decimal difference) => difference > 0 ? "more" : "less";
}
