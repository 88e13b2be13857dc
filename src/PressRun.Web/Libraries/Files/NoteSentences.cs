using System.Globalization;
using PressRun.Data.Import.Notes;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Libraries.Files;

/// <summary>What a shop's notes state, in sentences.</summary>
public static class NoteSentences
{
    /// <summary>What a term says, without a full stop.</summary>
    public static string Of(NotedTerm term, PressFormat format) => term switch
    {
        NotedTax tax => $"{format.Percent(tax.Rate)} tax comes on top of the prices",
        NotedTaxOnDelivery => "The same tax comes on top of delivery too, as at most shops",
        NotedTaxInside tax => $"{format.Percent(tax.Rate)} tax is in the prices already",
        NotedMinimum minimum => $"An order is of goods for {format.Money(minimum.Amount)} at least",
        NotedSetUp setUp => $"Taking on an order costs {format.Money(setUp.Amount)}",
        NotedDiscount discount => $"{format.Percent(discount.Step.Rate)} off all goods from {format.Money(discount.Step.From)}",
        NotedDay day => $"These prices hold from {format.Day(day.Day)}",
        NotedDelivery delivery => Delivery(delivery, format),
        _ => throw new ArgumentOutOfRangeException(nameof(term), term, "No sentence is known for this term."),
    };

    /// <summary>Why a term cannot be taken.</summary>
    public static string WhyNot(NotedTerm term) => term is NotedTaxInside
        ? "Leave the list's tax empty: then the prices hold as they stand."
        : "The list has no price of delivery yet: write one there first.";

    /// <summary>How many terms came along, as the end of a sentence; empty where none did.</summary>
    public static string AndTaken(int terms) => terms == 0 ? "" : $" and {(terms == 1 ? "one term" : terms.ToString(CultureInfo.InvariantCulture) + " terms")} of its notes";

    private static string Delivery(NotedDelivery delivery, PressFormat format)
    {
        var price = delivery.Steps.Count > 0 ? "Delivery costs " + string.Join(", ", delivery.Steps.Select(step => $"{format.Money(step.Price)} up to {format.Mass(step.Most)}"))
            : delivery.Flat is { } flat ? $"Delivery costs {format.Money(flat)}, whatever the order weighs"
            : "Delivery is";
        return delivery.FreeFrom is not { } free ? price
            : $"{price}{(price.EndsWith("is", StringComparison.Ordinal) ? "" : ",")} free from goods of {format.Money(free)}";
    }
}
