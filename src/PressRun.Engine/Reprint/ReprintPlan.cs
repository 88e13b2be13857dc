namespace PressRun.Engine.Reprint;

/// <summary>What a reprint is decided from. Amounts are in the job's currency.</summary>
/// <param name="OnHand">Copies left, 0 or more.</param>
/// <param name="Demand">Copies that will be asked for within the horizon.</param>
/// <param name="NetPerCopy">What a copy sold keeps; null for the mix-weighted net of the job's channels.</param>
/// <param name="Salvage">What a copy left over is still worth.</param>
/// <param name="Penalty">What a copy short costs, 0 or more.</param>
/// <param name="Holding">What keeping a copy left over costs, once, at the end of the horizon, 0 or more.</param>
/// <param name="Cash">Most that may be paid out; null where there is no limit.</param>
/// <param name="From">First quantity looked at, 0 or more; 0 is always looked at too.</param>
/// <param name="To">Last quantity.</param>
/// <param name="Step">At least 1.</param>
public sealed record ReprintRequest(
    int OnHand,
    Demand Demand,
    decimal? NetPerCopy,
    decimal Salvage,
    decimal Penalty,
    decimal Holding,
    decimal? Cash,
    int From,
    int To,
    int Step);

/// <summary>How many to print.</summary>
/// <param name="BestQuantity">The quantity with the highest expected profit; the smaller of equals; 0 where printing none is best.</param>
/// <param name="ExpectedProfit">Of the best quantity, not rounded.</param>
/// <param name="LandedCost">Of the best quantity.</param>
/// <param name="NetPerCopy">What a copy sold keeps.</param>
/// <param name="WithinCash">The best among the quantities whose cash out is within the cash there is.</param>
/// <param name="Odds">At the best quantity.</param>
/// <param name="ExpectedDemand">Mean of the demand.</param>
/// <param name="Dots">Fifty equally likely demands.</param>
/// <param name="Curve">Every quantity looked at, rising.</param>
public sealed record ReprintPlan(
    int BestQuantity,
    decimal ExpectedProfit,
    decimal LandedCost,
    decimal NetPerCopy,
    ReprintPoint WithinCash,
    ReprintOdds Odds,
    double ExpectedDemand,
    IReadOnlyList<int> Dots,
    IReadOnlyList<ReprintPoint> Curve);

/// <summary>A quantity and what it promises.</summary>
/// <param name="Quantity">Copies printed.</param>
/// <param name="ExpectedProfit">Not rounded.</param>
/// <param name="LandedCost">0 for none.</param>
/// <param name="CashOut">0 for none.</param>
public readonly record struct ReprintPoint(int Quantity, decimal ExpectedProfit, decimal LandedCost, decimal CashOut);

/// <summary>What may happen at a quantity.</summary>
/// <param name="ForSale">Copies for sale: on hand and printed, less free ones.</param>
/// <param name="SellingOut">P(demand ≥ copies for sale).</param>
/// <param name="Loss">P(profit &lt; 0).</param>
/// <param name="Leftover10">Smallest number of copies left over with probability 0.1 or more of no more than that.</param>
/// <param name="Leftover50">The same for 0.5.</param>
/// <param name="Leftover90">The same for 0.9.</param>
public readonly record struct ReprintOdds(long ForSale, double SellingOut, double Loss, long Leftover10, long Leftover50, long Leftover90);

/// <summary>What printing a quantity costs.</summary>
/// <param name="Quantity">Copies printed; 0 for none, which costs nothing.</param>
/// <param name="LandedCost">In the job's currency.</param>
/// <param name="CashOut">What of it is paid out.</param>
public readonly record struct RunCost(int Quantity, decimal LandedCost, decimal CashOut);
