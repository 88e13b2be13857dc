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
        InvoicePart.Printing => Say($"Print, or whole books"),
        InvoicePart.Paper => Say($"Paper and material"),
        InvoicePart.SetUp => Say($"Set-ups"),
        InvoicePart.Finishing => Say($"Finishing at the shop"),
        InvoicePart.Delivery => Say("what money is spent on", $"Delivery"),
        InvoicePart.Tax => Say("what money is spent on", $"Tax"),
        _ => Say($"The rest of the invoice"),
    };

    /// <summary>What a figure is.</summary>
    public static string Of(VarianceSubject subject) => subject switch
    {
        VarianceSubject.GoodCopies => Say($"Good copies"),
        VarianceSubject.Spoiled => Say($"Went wrong at the table"),
        VarianceSubject.Shop => Say($"The shop, less tax that comes back"),
        VarianceSubject.Hours => Say($"Hours at the table"),
        VarianceSubject.Labour => Say($"Those hours at their price"),
        VarianceSubject.Consumables => Say($"Staples, blades, thread"),
        VarianceSubject.FixedCosts => Say($"Art, proof, number"),
        VarianceSubject.LandedCost => Say("a sum", $"All of it"),
        _ => Say("what a copy costs", $"A copy"),
    };

    /// <summary>A figure: copies, hours, or money.</summary>
    public static string Figure(VarianceSubject subject, decimal value, PressFormat format) => subject switch
    {
        VarianceSubject.GoodCopies or VarianceSubject.Spoiled => format.Count(value),
        VarianceSubject.Hours => format.Number(value, 1),
        _ => format.Money(value),
    };

    /// <summary>With how many decimals a figure is shown.</summary>
    public static int Decimals(VarianceSubject subject, PressFormat format) => subject switch
    {
        VarianceSubject.GoodCopies or VarianceSubject.Spoiled => 0,
        VarianceSubject.Hours => 1,
        _ => format.Currency.MinorDigits,
    };

    /// <summary>A difference in words, as it is shown: <c>4.20 more</c>, <c>as planned</c>. Who takes one shown figure from the other finds it.</summary>
    /// <param name="planned">As planned.</param>
    /// <param name="actual">As it was.</param>
    /// <param name="written">How both are written.</param>
    /// <param name="decimals">With how many decimals.</param>
    public static string Difference(decimal planned, decimal actual, Func<decimal, string> written, int decimals)
    {
        var difference = PressFormat.Apart(planned, actual, decimals);
        var zero = written(0m);
        var shown = written(Math.Abs(difference));
        return shown == zero ? Say($"as planned") : difference > 0 ? Say($"{shown} more") : Say($"{shown} less");
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
            parts.Add(why.ByCost > 0 ? Say($"{cost} more because the whole run cost more") : Say($"{cost} less because the whole run cost less"));
        }

        if (format.Money(Math.Abs(why.ByCopies)) is var fewer && fewer != zero)
        {
            var gone = Math.Abs(copies.Difference);
            parts.Add(copies.Difference < 0
                ? Say(gone, $"{fewer} more because {format.Count(gone)} copy fewer came out good", $"{fewer} more because {format.Count(gone)} copies fewer came out good")
                : Say(gone, $"{fewer} less because {format.Count(gone)} copy more came out good", $"{fewer} less because {format.Count(gone)} copies more came out good"));
        }

        return parts switch
        {
            [] => "",
            [var only] => Say($"Of a copy, {only}."),
            [var first, var second, ..] => Say($"Of a copy, {first}, and {second}."),
        };
    }
}
