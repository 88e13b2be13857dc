namespace PressRun.Engine.Copies;

/// <summary>What moved in a month, and how it stood at its end. What was taken back counts for nothing.</summary>
/// <param name="First">First day of the month.</param>
/// <param name="Lines">Lines of the ledger, at least 1.</param>
/// <param name="Printed">Copies printed.</param>
/// <param name="Sold">Copies sold less those brought back; below 0 where more came back than went.</param>
/// <param name="Change">By how many the copies on hand changed.</param>
/// <param name="Takings">What sales brought less what was paid back.</param>
/// <param name="OnHand">Copies on hand at its end.</param>
public sealed record LedgerMonth(DateOnly First, int Lines, long Printed, long Sold, long Change, decimal Takings, long OnHand)
{
    /// <summary>The month that a day lies in.</summary>
    /// <param name="day">Any day of the month.</param>
    /// <returns>Its first day.</returns>
    public static DateOnly Of(DateOnly day) => new(day.Year, day.Month, 1);

    /// <summary>The months in which something moved, first one first.</summary>
    /// <param name="movements">All of an edition, in any order.</param>
    public static IReadOnlyList<LedgerMonth> All(IEnumerable<CopyMovement> movements)
    {
        var onHand = 0L;
        return
        [
            .. movements.GroupBy(movement => Of(movement.Day)).OrderBy(month => month.Key).Select(month => new LedgerMonth(
                month.Key,
                month.Count(),
                month.Where(movement => movement.Kind == MovementKind.Printed).Sum(movement => (long)movement.Copies),
                -month.Where(IsSale).Sum(movement => (long)movement.Copies),
                month.Sum(movement => (long)movement.Copies),
                month.Where(IsSale).Sum(movement => movement.Amount),
                onHand += month.Sum(movement => (long)movement.Copies))),
        ];
    }

    private static bool IsSale(CopyMovement movement) => movement.Kind is MovementKind.Sold or MovementKind.Returned;
}
