using PressRun.Engine.Copies;
using PressRun.Engine.Measures;
using PressRun.Engine.Selling;

namespace PressRun.Engine.Quoting;

/// <summary>A line of the copies ledger with the channel that it went through.</summary>
/// <param name="Movement">The line.</param>
/// <param name="ChannelId">The channel; null where it is not known, which costs nothing then.</param>
public readonly record struct ChannelMovement(CopyMovement Movement, string? ChannelId);

/// <summary>What an edition's sales brought and cost, from its first day on. Amounts are rounded to the minor unit, so that two such sums can be taken
/// from each other.</summary>
/// <param name="Copies">Sold less brought back; below 0 where more came back than went.</param>
/// <param name="Receipts">What came in less what was paid back.</param>
/// <param name="ChannelCosts">What the channels took, each rounded once.</param>
/// <param name="CostOfCopies">What the copies sold had cost at the moving average (IAS 2 <i>Inventories</i>, paragraphs 27 and 34), less those brought back.</param>
public readonly record struct EditionSales(long Copies, decimal Receipts, decimal ChannelCosts, decimal CostOfCopies)
{
    /// <summary>What is left before anybody's royalty; below 0 for a loss.</summary>
    public decimal Margin => Receipts - ChannelCosts - CostOfCopies;

    /// <summary>
    /// The sums from the first day to the end of a day. Copies given away, spoiled or still on hand are no cost of what was sold; what they had cost is
    /// the press's (common practice).
    /// </summary>
    /// <param name="lines">All lines of the edition, in any order.</param>
    /// <param name="until">Last day that counts.</param>
    /// <param name="costs">What each channel takes, by its id; a channel that is not named takes nothing.</param>
    /// <param name="currency">The press's.</param>
    public static EditionSales UpTo(IReadOnlyCollection<ChannelMovement> lines, DateOnly until, IReadOnlyDictionary<string, ChannelCost> costs, Currency currency)
    {
        var position = CopiesAccount.At(lines.Select(line => line.Movement), until);
        var channels = lines.Where(line => line.Movement.Day <= until && line.ChannelId is not null && IsSale(line.Movement.Kind))
            .GroupBy(line => line.ChannelId!, StringComparer.Ordinal)
            .Where(channel => costs.ContainsKey(channel.Key))
            .Sum(channel => currency.Round(costs[channel.Key].On(
                channel.Sum(line => line.Movement.Amount),
                channel.Where(line => line.Movement.Kind == MovementKind.Sold).Sum(line => -(long)line.Movement.Copies))));
        return new EditionSales(position.SoldForGood, currency.Round(position.Takings), channels, currency.Round(position.CostOfSales));
    }

    /// <summary>What came between two sums.</summary>
    public static EditionSales operator -(EditionSales later, EditionSales earlier) => new(
        later.Copies - earlier.Copies, later.Receipts - earlier.Receipts, later.ChannelCosts - earlier.ChannelCosts, later.CostOfCopies - earlier.CostOfCopies);

    /// <summary>What came between two sums.</summary>
    /// <param name="later">From the first day to the later day.</param>
    /// <param name="earlier">From the first day to the earlier day.</param>
    public static EditionSales Subtract(EditionSales later, EditionSales earlier) => later - earlier;

    private static bool IsSale(MovementKind kind) => kind is MovementKind.Sold or MovementKind.Returned;
}
