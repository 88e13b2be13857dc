namespace PressRun.Engine.Ladder;

/// <summary>Landed cost over a range of quantities: a staircase with drops.</summary>
/// <param name="Rungs">One for each quantity of the range.</param>
/// <param name="LowestUnitCostQuantity">Of the rungs, the one whose copies cost least; the smaller of equals.</param>
/// <param name="BetterBuys">Rungs that cost no less than some larger quantity.</param>
public sealed record QuantityLadder(IReadOnlyList<Rung> Rungs, int LowestUnitCostQuantity, IReadOnlyList<BetterBuy> BetterBuys);

/// <summary>A quantity and what it costs.</summary>
/// <param name="Quantity">Good copies.</param>
/// <param name="LandedCost">Rounded to the minor unit.</param>
public readonly record struct Rung(int Quantity, decimal LandedCost)
{
    /// <summary>Landed cost of one copy, not rounded.</summary>
    public decimal UnitCost => LandedCost / Quantity;
}

/// <summary>More copies for no more money.</summary>
/// <param name="From">The quantity asked for.</param>
/// <param name="To">A larger whole quantity whose landed cost is no higher; of a ladder the smallest up to the range's last.</param>
/// <param name="Saves">By how much it is lower; may be 0.</param>
public readonly record struct BetterBuy(int From, int To, decimal Saves);

/// <summary>Quantities in a row that all cost at least as much as the one after them.</summary>
/// <param name="From">First.</param>
/// <param name="To">Last.</param>
/// <param name="Better">The quantity that costs no more than any of them.</param>
public readonly record struct DearBand(int From, int To, int Better)
{
    /// <summary>True where a quantity is one of the band.</summary>
    /// <param name="quantity">Good copies.</param>
    public bool Holds(int quantity) => From <= quantity && quantity <= To;
}
