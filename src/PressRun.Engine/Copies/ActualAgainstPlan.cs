using PressRun.Engine.Costing;

namespace PressRun.Engine.Copies;

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

/// <summary>A part of the shop's invoice as planned and as it was billed.</summary>
/// <param name="Part">What it is for.</param>
/// <param name="Planned">By the plan.</param>
/// <param name="Actual">As it was billed.</param>
public readonly record struct InvoiceVariance(InvoicePart Part, decimal Planned, decimal Actual);

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
        return
        [
            new(VarianceSubject.GoodCopies, plan.Quantity, actual.GoodCopies),
            new(VarianceSubject.Spoiled, plan.Overs, actual.Spoiled),
            new(VarianceSubject.Shop, totals.LandedCost - totals.BenchLabour - totals.Consumables - totals.FixedCosts, actual.ShopPaid - actual.TaxReclaimed),
            new(VarianceSubject.Hours, totals.BenchHours, actual.Hours),
            new(VarianceSubject.Labour, totals.BenchLabour, actual.Labour(minorUnits)),
            new(VarianceSubject.Consumables, totals.Consumables, actual.Consumables),
            new(VarianceSubject.FixedCosts, totals.FixedCosts, actual.FixedCosts),
            new(VarianceSubject.LandedCost, totals.LandedCost, actual.LandedCost(minorUnits)),
            new(VarianceSubject.UnitCost, plan.UnitCost, actual.UnitCost(minorUnits)),
        ];
    }

    /// <summary>The parts of the shop's invoice that were written down and what they leave of it, each against the plan; both columns add up to what the
    /// shop is paid with tax. Empty where only the total was written down.</summary>
    /// <param name="plan">The plan's estimate at its quantity.</param>
    /// <param name="actual">What was.</param>
    public static IReadOnlyList<InvoiceVariance> Invoice(Estimate plan, PrintingActual actual)
    {
        if (actual.Invoice.Count == 0)
        {
            return [];
        }

        var named = actual.Invoice.OrderBy(line => line.Part)
            .Select(line => new InvoiceVariance(line.Part, plan.Lines.Where(planned => PartOf(planned.Code) == line.Part).Sum(planned => planned.Amount), line.Amount))
            .ToList();
        var rest = new InvoiceVariance(
            InvoicePart.Rest, plan.Totals.ShopTotal - named.Sum(part => part.Planned), actual.ShopPaid - named.Sum(part => part.Actual));
        return rest is { Planned: 0m, Actual: 0m } ? named : [.. named, rest];
    }

    /// <summary>
    /// Why a copy cost more or less than planned: what other costs than planned make of it at the copies that came out good, and what fewer or more good
    /// copies make of the planned cost. The two add up to the difference of the unit costs (the price and the quantity variance of cost accounting).
    /// </summary>
    /// <param name="plan">The plan's estimate at its quantity.</param>
    /// <param name="actual">What was.</param>
    /// <param name="minorUnits">Decimals of the currency.</param>
    public static (decimal ByCost, decimal ByCopies) WhyUnitCost(Estimate plan, PrintingActual actual, int minorUnits)
    {
        var planned = plan.Totals.LandedCost;
        return ((actual.LandedCost(minorUnits) - planned) / actual.GoodCopies, (planned / actual.GoodCopies) - plan.UnitCost);
    }

    private static InvoicePart? PartOf(CostCode code) => code switch
    {
        CostCode.Book or CostCode.Print => InvoicePart.Printing,
        CostCode.Paper => InvoicePart.Paper,
        CostCode.SetUpOrder or CostCode.SetUpEdition or CostCode.SetUpPart => InvoicePart.SetUp,
        CostCode.Finishing => InvoicePart.Finishing,
        CostCode.Delivery => InvoicePart.Delivery,
        CostCode.Tax => InvoicePart.Tax,
        _ => null,
    };
}
