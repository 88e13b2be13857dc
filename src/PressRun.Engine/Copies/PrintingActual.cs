using PressRun.Engine.Ladder;

namespace PressRun.Engine.Copies;

/// <summary>What a step at the press's own table really took.</summary>
/// <param name="Step">Name of the step in the bench rates.</param>
/// <param name="Minutes">Time with its set-up, 0 or more.</param>
/// <param name="Started">Copies that went into the step, 0 or more.</param>
/// <param name="Spoiled">Of these, copies that went wrong, 0 to <paramref name="Started"/>.</param>
public sealed record StepActual(string Step, decimal Minutes, int Started, int Spoiled);

/// <summary>What a part of the shop's invoice is for.</summary>
public enum InvoicePart
{
    /// <summary>Print, or whole books.</summary>
    Printing,

    /// <summary>Paper and other material.</summary>
    Paper,

    /// <summary>Set-ups.</summary>
    SetUp,

    /// <summary>Folding, binding, cutting at the shop.</summary>
    Finishing,

    /// <summary>Delivery.</summary>
    Delivery,

    /// <summary>Tax, whether it comes back or not.</summary>
    Tax,

    /// <summary>Whatever of the invoice is not named; below 0 where a discount is the most of it.</summary>
    Rest,
}

/// <summary>A part of the shop's invoice as it was billed.</summary>
/// <param name="Part">What it is for; never <see cref="InvoicePart.Rest"/>, which is what the others leave.</param>
/// <param name="Amount">0 or more, in the press's currency.</param>
public sealed record InvoiceLine(InvoicePart Part, decimal Amount);

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

    /// <summary>Parts of the invoice that were written down, each once; empty where only its total was.</summary>
    public IReadOnlyList<InvoiceLine> Invoice { get; init; } = [];

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
    public decimal UnitCost(int minorUnits) => new Rung(GoodCopies, LandedCost(minorUnits)).UnitCost;
}
