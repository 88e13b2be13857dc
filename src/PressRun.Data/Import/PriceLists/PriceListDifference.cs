using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Engine.Costing;

namespace PressRun.Data.Import.PriceLists;

/// <summary>A price that is not the same in two lists.</summary>
/// <param name="Section">The part it stands in.</param>
/// <param name="What">What it prices.</param>
/// <param name="Before">In the older list; null where it is new.</param>
/// <param name="After">In the newer list; null where it is gone.</param>
public sealed record ChangedPrice(PriceSection Section, string What, decimal? Before, decimal? After)
{
    /// <summary>By how much it rose, in per cent of what it was; null where that cannot be said.</summary>
    public decimal? RisePercent => Before is { } before && After is { } after ? PriceLines.RisePercent(before, after) : null;
}

/// <summary>A term that is not the same in two lists.</summary>
/// <param name="What">What it is.</param>
/// <param name="Before">In the older list; empty where there was none.</param>
/// <param name="After">In the newer list; empty where there is none.</param>
public sealed record ChangedTerm(string What, string Before, string After);

/// <summary>What changed from one price list of a shop to the next.</summary>
/// <param name="Prices">Prices that rose or fell, came or went, in the order of the lists.</param>
/// <param name="Terms">Other terms.</param>
public sealed record PriceListDifference(IReadOnlyList<ChangedPrice> Prices, IReadOnlyList<ChangedTerm> Terms)
{
    /// <summary>True where the lists say the same.</summary>
    public bool IsNone => Prices.Count == 0 && Terms.Count == 0;

    /// <summary>Compares two lists.</summary>
    /// <param name="older">The older list.</param>
    /// <param name="newer">The newer list.</param>
    /// <param name="words">What their prices are called.</param>
    /// <param name="manners">How terms are written.</param>
    public static PriceListDifference Between(Shop older, Shop newer, IPriceWords words, CellManners manners)
    {
        var before = PriceLines.Of(older, words).DistinctBy(KeyOf).ToDictionary(KeyOf);
        var after = PriceLines.Of(newer, words).DistinctBy(KeyOf).ToDictionary(KeyOf);
        var prices = after.Values.Select(line => new ChangedPrice(line.Section, line.What, before.GetValueOrDefault(KeyOf(line))?.Amount, line.Amount))
            .Concat(before.Values.Where(line => !after.ContainsKey(KeyOf(line))).Select(line => new ChangedPrice(line.Section, line.What, line.Amount, null)))
            .Where(price => price.Before != price.After)
            .OrderBy(price => price.Section)
            .ToList();
        var terms = Shapes.Terms.All.Except(Shapes.Terms.SetUps).Where(term => term.Key != "delivery.perFurtherKg")
            .Select(term => new ChangedTerm(term.Title, term.Text(older, manners), term.Text(newer, manners)))
            .Where(term => term.Before != term.After)
            .ToList();
        if (DiscountsOf(older) is var was && DiscountsOf(newer) is var now && was != now)
        {
            terms.Add(new ChangedTerm("Discounts", was, now));
        }

        return new PriceListDifference(prices, terms);

        string DiscountsOf(Shop list) => string.Join("; ", list.Order.Discounts.Select(step =>
            string.Join(": ", new DiscountShape().Texts(new Discount(step), manners).Single())));
    }

    private static (PriceSection, string) KeyOf(PriceLine line) => (line.Section, line.What);
}
