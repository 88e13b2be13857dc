namespace PressRun.Engine.Copies;

/// <summary>What is on hand of an edition at the end of a day, and what it stands at.</summary>
/// <param name="OnHand">Sum of all movements; below 0 where more went than was known of.</param>
/// <param name="AverageCost">Moving average of what a copy on hand cost, not rounded; null where no printing's cost is known.</param>
/// <param name="Value">On hand at the average, not rounded.</param>
/// <param name="Printed">Good copies that came, less what was taken back.</param>
/// <param name="Sold">Copies sold, before returns.</param>
/// <param name="GivenAway">Copies given away.</param>
/// <param name="Spoiled">Copies damaged or lost.</param>
/// <param name="Returned">Sold copies that came back.</param>
/// <param name="CountDifference">What counts added (above 0) or took away.</param>
/// <param name="PrintingCost">What all printings cost.</param>
/// <param name="Takings">What sales brought, less what was paid back.</param>
/// <param name="CostOfSales">What the copies sold had cost, less returns, not rounded.</param>
/// <param name="CountNeeded">True where more copies went than were on hand, and nobody has counted since.</param>
public sealed record CopiesPosition(
    long OnHand,
    decimal? AverageCost,
    decimal Value,
    long Printed,
    long Sold,
    long GivenAway,
    long Spoiled,
    long Returned,
    long CountDifference,
    decimal PrintingCost,
    decimal Takings,
    decimal CostOfSales,
    bool CountNeeded)
{
    /// <summary>What sales brought less what all printings cost.</summary>
    public decimal Earned => Takings - PrintingCost;

    /// <summary>Copies sold that stayed sold.</summary>
    public long SoldForGood => Sold - Returned;
}

/// <summary>
/// Carries an edition's movements forward at a moving average: each printing that comes is averaged with what is left (IAS 2 Inventories,
/// paragraph 27), and what goes leaves at the average of that moment. Copies that went before they were known of stand at the last average until the
/// next printing covers them at its own cost (common practice).
/// </summary>
public static class CopiesAccount
{
    /// <summary>The position at the end of a day.</summary>
    /// <param name="movements">In any order.</param>
    /// <param name="day">Last day that counts; null for all of them.</param>
    public static CopiesPosition At(IEnumerable<CopyMovement> movements, DateOnly? day = null)
    {
        var account = new Running();
        foreach (var movement in InOrder(movements, day))
        {
            account.Take(movement);
        }

        return account.Position;
    }

    /// <summary>The position at the end of each day on which something moved, first day first.</summary>
    /// <param name="movements">In any order.</param>
    public static IReadOnlyList<(DateOnly Day, CopiesPosition Position)> ByDay(IEnumerable<CopyMovement> movements)
    {
        var account = new Running();
        var days = new List<(DateOnly, CopiesPosition)>();
        foreach (var day in InOrder(movements, null).GroupBy(movement => movement.Day))
        {
            foreach (var movement in day)
            {
                account.Take(movement);
            }

            days.Add((day.Key, account.Position));
        }

        return days;
    }

    /// <summary>Every movement with what was on hand after it, first day first.</summary>
    /// <param name="movements">In any order.</param>
    public static IReadOnlyList<(CopyMovement Movement, long OnHand)> ByLine(IEnumerable<CopyMovement> movements)
    {
        var onHand = 0L;
        return [.. InOrder(movements, null).Select(movement => (movement, onHand += movement.Copies))];
    }

    /// <summary>What a copy of a printing cost that was written down.</summary>
    /// <param name="printed">Good copies that came, less what was taken back.</param>
    /// <param name="printingCost">What they cost, in the currency.</param>
    /// <returns>In the currency, not rounded; null where no cost is known.</returns>
    public static decimal? PaidForEach(long printed, decimal printingCost) => printed > 0 && printingCost > 0m ? printingCost / printed : null;

    private static IOrderedEnumerable<CopyMovement> InOrder(IEnumerable<CopyMovement> movements, DateOnly? day) =>
        movements.Where(movement => day is null || movement.Day <= day).OrderBy(movement => movement.Day).ThenBy(movement => movement.Sequence);

    private sealed class Running
    {
        private long onHand;
        private decimal value;
        private decimal? average;
        private long printed;
        private long sold;
        private long givenAway;
        private long spoiled;
        private long returned;
        private long countDifference;
        private decimal printingCost;
        private decimal takings;
        private decimal costOfSales;
        private bool countNeeded;

        public CopiesPosition Position => new(
            onHand, average, value, printed, sold, givenAway, spoiled, returned, countDifference, printingCost, takings, costOfSales, countNeeded);

        public void Take(CopyMovement movement)
        {
            if (movement.Kind == MovementKind.Printed)
            {
                Print(movement);
            }
            else
            {
                Move(movement);
            }

            countNeeded = movement.Kind != MovementKind.Counted && (countNeeded || onHand < 0);
        }

        private void Print(CopyMovement movement)
        {
            printed += movement.Copies;
            printingCost += movement.Amount;
            if (onHand < 0 && movement.Copies > 0)
            {
                // What went before it was known of came, as we now know, out of this printing: those copies cost what this one's cost.
                var each = movement.Amount / movement.Copies;
                costOfSales += (-onHand * each) + value;
                value = onHand * each;
            }

            onHand += movement.Copies;
            value += movement.Amount;
            // Copies carried over from before anybody wrote down what they cost do not cost nothing.
            average = printingCost == 0m ? null : onHand > 0 ? value / onHand : movement.Copies > 0 ? movement.Amount / movement.Copies : average;
            if (onHand == 0)
            {
                value = 0m;
            }
        }

        private void Move(CopyMovement movement)
        {
            var cost = movement.Copies * (average ?? 0m);
            onHand += movement.Copies;
            value = onHand == 0 ? 0m : value + cost;
            switch (movement.Kind)
            {
                case MovementKind.Sold:
                    sold -= movement.Copies;
                    takings += movement.Amount;
                    costOfSales -= cost;
                    break;
                case MovementKind.Returned:
                    returned += movement.Copies;
                    takings += movement.Amount;
                    costOfSales -= cost;
                    break;
                case MovementKind.GivenAway:
                    givenAway -= movement.Copies;
                    break;
                case MovementKind.Spoiled:
                    spoiled -= movement.Copies;
                    break;
                case MovementKind.Counted:
                    countDifference += movement.Copies;
                    break;
                default:
                    throw new ArgumentOutOfRangeException(nameof(movement), movement.Kind, "Not a kind of movement that only moves copies.");
            }
        }
    }
}
