using PressRun.Data.Import.Notes;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Libraries.Files;

/// <summary>What a shop's notes state, in sentences.</summary>
public static class NoteSentences
{
    /// <summary>What a term says, without a full stop.</summary>
    public static string Of(NotedTerm term, PressFormat format) => term switch
    {
        NotedTax tax => Say($"{format.Percent(tax.Rate)} tax comes on top of the prices"),
        NotedTaxOnDelivery => Say($"The same tax comes on top of delivery too, as at most shops"),
        NotedTaxInside tax => Say($"{format.Percent(tax.Rate)} tax is in the prices already"),
        NotedMinimum minimum => Say($"An order is of goods for {format.Money(minimum.Amount)} at least"),
        NotedSetUp setUp => Say($"Taking on an order costs {format.Money(setUp.Amount)}"),
        NotedDiscount discount => Say($"{format.Percent(discount.Step.Rate)} off all goods from {format.Money(discount.Step.From)}"),
        NotedDelivery delivery => Delivery(delivery, format),
        _ => throw new ArgumentOutOfRangeException(nameof(term), term, "No sentence is known for this term."),
    };

    /// <summary>The words of a note, with their row.</summary>
    public static string Quoted(NoteLine line) => Say($"row {line.Row}, “{Apart.Of(line.Text)}”");

    /// <summary>Why a term cannot be taken.</summary>
    public static string WhyNot(NotedTerm term) => term is NotedTaxInside
        ? Say($"Leave the list's tax empty: then the prices hold as they stand.")
        : Say($"The list has no price of delivery yet: write one there first.");

    /// <summary>That a list is stored with a file, without a full stop.</summary>
    /// <param name="from">First day of the list, as it is written.</param>
    /// <param name="kept">First day of the list that stays beside it; null where it is none of its own.</param>
    /// <param name="terms">How many terms of the file's notes came along.</param>
    public static string Stored(string from, string? kept, int terms) => kept is null ? Stored(from, terms)
        : terms == 0 ? Say($"The new list from {from} is stored with what the file holds, and the list from {kept} stays as it was")
        : Say(terms,
            $"The new list from {from} is stored with what the file holds and one term of its notes, and the list from {kept} stays as it was",
            $"The new list from {from} is stored with what the file holds and {terms} terms of its notes, and the list from {kept} stays as it was");

    private static string Stored(string from, int terms) => terms == 0
        ? Say($"The list from {from} is stored with what the file holds")
        : Say(terms, $"The list from {from} is stored with what the file holds and one term of its notes", $"The list from {from} is stored with what the file holds and {terms} terms of its notes");

    private static string Delivery(NotedDelivery delivery, PressFormat format)
    {
        var price = delivery.Steps.Count > 0 ? Say($"Delivery costs {string.Join(", ", delivery.Steps.Select(step => Say($"{format.Money(step.Price)} up to {format.Mass(step.Most)}")))}")
            : delivery.Flat is { } flat ? Say($"Delivery costs {format.Money(flat)}, whatever the order weighs")
            : null;
        return delivery.FreeFrom is not { } free ? price ?? ""
            : price is null ? Say($"Delivery is free from goods of {format.Money(free)}")
            : Say($"{price}, free from goods of {format.Money(free)}");
    }
}
