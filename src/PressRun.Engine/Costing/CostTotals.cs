namespace PressRun.Engine.Costing;

/// <summary>What the lines add up to.</summary>
/// <param name="Goods">Books or print and paper, set-ups and finishing, before tax and delivery.</param>
/// <param name="Discount">Taken off goods; positive.</param>
/// <param name="MinimumTopUp">Added to reach the minimum order.</param>
/// <param name="Delivery">Delivery.</param>
/// <param name="Tax">The shop's tax, reclaimed or not.</param>
/// <param name="ShopTotal">What the shop is paid.</param>
/// <param name="BenchHours">Hours at the bench, not rounded.</param>
/// <param name="BenchLabour">Hours × rate.</param>
/// <param name="Consumables">Used up at the bench.</param>
/// <param name="FixedCosts">The edition's own.</param>
/// <param name="LandedCost">All of it, less tax that is reclaimed.</param>
/// <param name="CashOut">What must really be paid.</param>
public readonly record struct CostTotals(
    decimal Goods,
    decimal Discount,
    decimal MinimumTopUp,
    decimal Delivery,
    decimal Tax,
    decimal ShopTotal,
    decimal BenchHours,
    decimal BenchLabour,
    decimal Consumables,
    decimal FixedCosts,
    decimal LandedCost,
    decimal CashOut);
