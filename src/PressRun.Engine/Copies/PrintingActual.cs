using PressRun.Engine.Costing;

namespace PressRun.Engine.Copies;

/// <summary>What a step at the press's own table really took.</summary>
/// <param name="Step">Name of the step in the bench rates.</param>
/// <param name="Minutes">Time with its set-up, 0 or more.</param>
/// <param name="Started">Copies that went into the step, 0 or more.</param>
/// <param name="Spoiled">Of these, copies that went wrong, 0 to <paramref name="Started"/>.</param>
public sealed record StepActual(string Step, decimal Minutes, int Started, int Spoiled);

/// <summary>What a printing really was. Amounts are in the press's currency.</summary>
/// <param name="GoodCopies">Copies fit to be sold, 1 or more.</param>
/// <param name="ShopPaid">The shop's invoice with delivery and tax.</param>
/// <param name="TaxReclaimed">Of this, tax that comes back; 0 or more.</param>
/// <param name="Consumables">Staples, blades and the like.</param>
/// <param name="FixedCosts">Art, proof, number and the like.</param>
/// <param name="HourlyRate">Price of an hour at the table.</param>
/// <param name="Steps">The work at the table.</param>
public sealed record PrintingActual(
    int GoodCopies,
    decimal ShopPaid,
    decimal TaxReclaimed,
    decimal Consumables,
    decimal FixedCosts,
    decimal HourlyRate,
    IReadOnlyList<StepActual> Steps)
{
    private const decimal MinutesPerHour = 60m;

    /// <summary>Hours at the table.</summary>
    public decimal Hours => Steps.Sum(step => step.Minutes) / MinutesPerHour;

    /// <summary>Copies that went wrong at the table.</summary>
    public int Spoiled => Steps.Sum(step => step.Spoiled);

    /// <summary>The hours at their price, rounded once to the minor unit, halves away from zero.</summary>
    /// <param name="minorUnits">Decimals of the currency.</param>
    public decimal Labour(int minorUnits) => Math.Round(Hours * HourlyRate, minorUnits, MidpointRounding.AwayFromZero);

    /// <summary>What the copies cost in all.</summary>
    /// <param name="minorUnits">Decimals of the currency.</param>
    public decimal LandedCost(int minorUnits) => ShopPaid - TaxReclaimed + Consumables + FixedCosts + Labour(minorUnits);

    /// <summary>What a good copy cost, not rounded.</summary>
    /// <param name="minorUnits">Decimals of the currency.</param>
    public decimal UnitCost(int minorUnits) => LandedCost(minorUnits) / GoodCopies;
}

/// <summary>What a line of a printing is about.</summary>
public enum VarianceSubject
{
    /// <summary>Good copies.</summary>
    GoodCopies,

    /// <summary>Copies that went wrong at the table.</summary>
    Spoiled,

    /// <summary>The shop's invoice, less tax that comes back.</summary>
    Shop,

    /// <summary>Hours at the table.</summary>
    Hours,

    /// <summary>The hours at their price.</summary>
    Labour,

    /// <summary>Used up at the table.</summary>
    Consumables,

    /// <summary>The edition's own costs.</summary>
    FixedCosts,

    /// <summary>All of it.</summary>
    LandedCost,

    /// <summary>Landed cost of one good copy, not rounded.</summary>
    UnitCost,
}

/// <summary>A figure as planned and as it turned out.</summary>
/// <param name="Subject">What it is.</param>
/// <param name="Planned">By the plan.</param>
/// <param name="Actual">As it was.</param>
public readonly record struct Variance(VarianceSubject Subject, decimal Planned, decimal Actual)
{
    /// <summary>Actual less planned: above 0 where there was more of it.</summary>
    public decimal Difference => Actual - Planned;
}

/// <summary>Holds a printing against its plan.</summary>
public static class ActualAgainstPlan
{
    /// <summary>Every figure that both have, in the order of <see cref="VarianceSubject"/>; the four amounts of each column add up to its landed cost.</summary>
    /// <param name="plan">The plan's estimate at its quantity.</param>
    /// <param name="actual">What was.</param>
    /// <param name="minorUnits">Decimals of the currency.</param>
    public static IReadOnlyList<Variance> Compare(Estimate plan, PrintingActual actual, int minorUnits)
    {
        var totals = plan.Totals;
        var landed = actual.LandedCost(minorUnits);
        return
        [
            new(VarianceSubject.GoodCopies, plan.Quantity, actual.GoodCopies),
            new(VarianceSubject.Spoiled, plan.CopiesToStart - plan.Quantity, actual.Spoiled),
            new(VarianceSubject.Shop, totals.LandedCost - totals.BenchLabour - totals.Consumables - totals.FixedCosts, actual.ShopPaid - actual.TaxReclaimed),
            new(VarianceSubject.Hours, totals.BenchHours, actual.Hours),
            new(VarianceSubject.Labour, totals.BenchLabour, actual.Labour(minorUnits)),
            new(VarianceSubject.Consumables, totals.Consumables, actual.Consumables),
            new(VarianceSubject.FixedCosts, totals.FixedCosts, actual.FixedCosts),
            new(VarianceSubject.LandedCost, totals.LandedCost, landed),
            new(VarianceSubject.UnitCost, totals.UnitCost(plan.Quantity), landed / actual.GoodCopies),
        ];
    }
}
