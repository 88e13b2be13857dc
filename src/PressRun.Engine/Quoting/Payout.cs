using PressRun.Engine.Costing;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Quoting;

/// <summary>Who gets what of an edition's sales. All amounts are whole minor units.</summary>
/// <param name="Sales">What was sold.</param>
/// <param name="Amounts">In the order of the claims. Below 0 where copies that came back, or a loss, took more than came.</param>
/// <param name="Royalties">The royalties among them.</param>
/// <param name="Profit">What the sales leave after royalties; below 0 for a loss, which nobody is paid and nobody pays in.</param>
public sealed record Payout(EditionSales Sales, IReadOnlyList<decimal> Amounts, decimal Royalties, decimal Profit)
{
    /// <summary>What is left with the press when everybody has what is theirs.</summary>
    public decimal Kept => Sales.Margin - Amounts.Sum();

    /// <summary>
    /// Who gets what of all sales from the first day on. A royalty is reckoned on the whole and rounded once to the minor unit, halves away from zero;
    /// copies brought back take theirs back. What is left after royalties is shared by largest remainder (see <see cref="Shares"/>), so that the shares
    /// add up to it to the minor unit; of a loss nothing is shared, and later profit makes it good first (common practice of royalty and
    /// profit-share contracts; what was agreed comes before it).
    /// </summary>
    /// <param name="sales">From the first day on.</param>
    /// <param name="price">Price of a copy, 0 or more.</param>
    /// <param name="claims">May be empty: then all is the press's.</param>
    /// <param name="currency">Of all amounts.</param>
    /// <returns>The payout, or what is wrong with the claims.</returns>
    public static Outcome<Payout> Of(EditionSales sales, decimal price, IReadOnlyList<Claim> claims, Currency currency)
    {
        if (Claim.Check(claims) is { Count: > 0 } problems)
        {
            return Outcome<Payout>.Refused(problems);
        }

        var amounts = claims.Select(claim => currency.Round(RoyaltyOf(claim, sales, price))).ToArray();
        var royalties = amounts.Sum();
        var profit = sales.Margin - royalties;
        var weights = claims.Select(claim => claim is Claim.OfProfit share ? share.Weight : 0m).ToList();
        if (profit > 0m && weights.Exists(weight => weight > 0m))
        {
            amounts = [.. amounts.Zip(Shares.Of(profit, weights, currency), (royalty, share) => royalty + share)];
        }

        return Outcome<Payout>.Of(new Payout(sales, amounts, royalties, profit));
    }

    /// <summary>
    /// What came to each between two payouts of the same claims: the later less the earlier. Whatever days a time is cut at, its pieces add up to the
    /// whole, because each is reckoned from the first day on.
    /// </summary>
    /// <param name="earlier">Of the sales up to the day before the time.</param>
    /// <param name="later">Of the sales up to the time's last day.</param>
    /// <exception cref="ArgumentException">The two are not of the same claims.</exception>
    public static Payout Between(Payout earlier, Payout later) => earlier.Amounts.Count == later.Amounts.Count
        ? new Payout(
            later.Sales - earlier.Sales, [.. later.Amounts.Zip(earlier.Amounts, (one, other) => one - other)], later.Royalties - earlier.Royalties, later.Profit - earlier.Profit)
        : throw new ArgumentException("Two payouts of other claims have nothing between them.", nameof(earlier));

    private static decimal RoyaltyOf(Claim claim, EditionSales sales, decimal price) => claim switch
    {
        Claim.PerCopy each => each.Amount * sales.Copies,
        Claim.OfReceipts part => part.Rate * sales.Receipts,
        Claim.OfPrice part => part.Rate * price * sales.Copies,
        Claim.OfProfit => 0m,
        _ => throw new ArgumentOutOfRangeException(nameof(claim), claim, "There is no such claim."),
    };
}
