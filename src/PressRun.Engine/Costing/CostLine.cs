namespace PressRun.Engine.Costing;

/// <summary>A line of the costing.</summary>
/// <param name="Code">What it is for.</param>
/// <param name="Subject">The ink, stock, operation, consumable or fixed cost it is about; empty where the code says all.</param>
/// <param name="Quantity">How many (hours for labour, to four decimals).</param>
/// <param name="Each">Price of one; may have more decimals than the currency.</param>
/// <param name="Amount">Rounded to the minor unit; for most lines quantity × each.</param>
public readonly record struct CostLine(CostCode Code, string Subject, decimal Quantity, decimal Each, decimal Amount)
{
    /// <summary>True where the shop's minimum for an operation is more than quantity × each, so that the amount is the minimum.</summary>
    public bool AtMinimum { get; init; }
}

/// <summary>What a line is for, in the order in which lines stand.</summary>
public enum CostCode
{
    /// <summary>Whole books.</summary>
    Book,

    /// <summary>Impressions of one ink on one sheet size.</summary>
    Print,

    /// <summary>Sheets of one stock and size.</summary>
    Paper,

    /// <summary>Set-up of the order.</summary>
    SetUpOrder,

    /// <summary>Set-up of the edition.</summary>
    SetUpEdition,

    /// <summary>Set-up of the parts.</summary>
    SetUpPart,

    /// <summary>A finishing operation.</summary>
    Finishing,

    /// <summary>Discount by goods value; negative.</summary>
    Discount,

    /// <summary>Shortfall to the minimum order.</summary>
    Minimum,

    /// <summary>Delivery.</summary>
    Delivery,

    /// <summary>The shop's tax.</summary>
    Tax,

    /// <summary>The press's own hours.</summary>
    BenchLabour,

    /// <summary>Something used up at the bench.</summary>
    BenchConsumable,

    /// <summary>A cost of the edition, whatever the quantity.</summary>
    Fixed,
}
