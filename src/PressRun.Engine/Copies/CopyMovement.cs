namespace PressRun.Engine.Copies;

/// <summary>Why copies of an edition came or went.</summary>
public enum MovementKind
{
    /// <summary>Good copies came from the shop or the press's own table.</summary>
    Printed,

    /// <summary>Copies were sold.</summary>
    Sold,

    /// <summary>Copies were given away: to a library, a reviewer, a contributor.</summary>
    GivenAway,

    /// <summary>Copies were damaged or lost.</summary>
    Spoiled,

    /// <summary>Sold copies came back.</summary>
    Returned,

    /// <summary>Copies were counted, and this is what the count differed by.</summary>
    Counted,
}

/// <summary>
/// One line of an edition's copies ledger. A line is never changed: a mistake is taken back by a line of the same day and kind with the opposite figures.
/// </summary>
/// <param name="Day">The day on which it happened, not the day on which it was written down.</param>
/// <param name="Sequence">Order of writing, for lines of one day.</param>
/// <param name="Kind">Why.</param>
/// <param name="Copies">What is on hand changes by so many: above 0 for copies that come, below for copies that go.</param>
/// <param name="Amount">
/// Money in the press's currency. Printed: what the copies cost. Sold: what they brought. Returned: below 0, what was paid back. Otherwise 0.
/// </param>
public readonly record struct CopyMovement(DateOnly Day, long Sequence, MovementKind Kind, long Copies, decimal Amount)
{
    /// <summary>The amount of one copy, not rounded; 0 where no copy came or went.</summary>
    public decimal Each => Copies == 0 ? 0m : Amount / Math.Abs(Copies);
}
