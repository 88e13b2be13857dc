using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Costing;

/// <summary>How a price with steps is read.</summary>
public enum StepRule
{
    /// <summary>The step reached prices every unit.</summary>
    AllUnits,

    /// <summary>Each unit costs its own step's price.</summary>
    Incremental,
}

/// <summary>A price from a number of units on.</summary>
/// <param name="From">First unit it holds for; the first step's is 1.</param>
/// <param name="Each">Price of a unit; may have more decimals than the currency.</param>
public readonly record struct PriceStep(long From, decimal Each);

/// <summary>Printing: price per impression, one printed side of one sheet.</summary>
/// <param name="Ink">Black or colour.</param>
/// <param name="SheetId">Which sheet.</param>
/// <param name="Steps">By impressions of that ink and sheet in the order.</param>
/// <param name="Rule">How the steps are read.</param>
public sealed record PrintPrice(Ink Ink, string SheetId, IReadOnlyList<PriceStep> Steps, StepRule Rule);

/// <summary>Paper: price per sheet.</summary>
/// <param name="StockId">Which paper.</param>
/// <param name="SheetId">Which sheet.</param>
/// <param name="Steps">By sheets of that stock and size in the order.</param>
/// <param name="Rule">How the steps are read.</param>
public sealed record PaperPrice(string StockId, string SheetId, IReadOnlyList<PriceStep> Steps, StepRule Rule);

/// <summary>A step of a whole-book price.</summary>
/// <param name="From">First copy it holds for; the first step's is 1.</param>
/// <param name="Each">Price of a copy.</param>
/// <param name="PerPage">Further price of each of its pages.</param>
public readonly record struct BookStep(long From, decimal Each, decimal PerPage);

/// <summary>Whole books at a price per copy, in place of print and paper.</summary>
/// <param name="Binding">For books bound so.</param>
/// <param name="PagesFrom">Fewest pages.</param>
/// <param name="PagesTo">Most pages.</param>
/// <param name="StockIds">The parts' stocks in order; null where any will do.</param>
/// <param name="Steps">By copies started; the step reached prices every copy.</param>
public sealed record BookPrice(Binding Binding, int PagesFrom, int PagesTo, IReadOnlyList<string>? StockIds, IReadOnlyList<BookStep> Steps);

/// <summary>What is charged for taking on work.</summary>
/// <param name="Order">Once an order.</param>
/// <param name="Edition">Once an edition.</param>
/// <param name="Part">Once a part.</param>
public readonly record struct SetUp(decimal Order, decimal Edition, decimal Part);

/// <summary>What a finishing operation is counted by.</summary>
public enum FinishingUnit
{
    /// <summary>Each copy started.</summary>
    Copy,

    /// <summary>Each sheet, of all parts.</summary>
    Sheet,

    /// <summary>Each piece of each copy started.</summary>
    Piece,

    /// <summary>Each trimmed edge of each copy started.</summary>
    Cut,

    /// <summary>Once.</summary>
    Edition,
}

/// <summary>An operation that the shop does after printing.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Per">What it is counted by.</param>
/// <param name="Each">Price of one.</param>
/// <param name="Minimum">The least it costs.</param>
public sealed record Finishing(string Name, FinishingUnit Per, decimal Each, decimal Minimum);

/// <summary>Whether the shop puts the pieces of a copy in order.</summary>
public enum Collating
{
    /// <summary>Never: it is bench work.</summary>
    Never,

    /// <summary>Only where all parts are on one stock.</summary>
    SameStock,

    /// <summary>Always.</summary>
    Always,
}

/// <summary>What the shop puts in its cartons.</summary>
public enum Delivered
{
    /// <summary>The printed sheets, flat and uncut.</summary>
    FlatSheets,

    /// <summary>Pieces cut to their untrimmed size.</summary>
    CutPieces,

    /// <summary>Bound copies, not trimmed.</summary>
    UntrimmedCopies,

    /// <summary>Finished copies.</summary>
    TrimmedCopies,
}

/// <summary>A discount from a goods value on.</summary>
/// <param name="From">Goods value, before tax and delivery, that reaches it.</param>
/// <param name="Rate">Fraction of all goods, 0 to 1.</param>
public readonly record struct DiscountStep(decimal From, decimal Rate);

/// <summary>A price up to a mass, that mass included.</summary>
/// <param name="Most">Heaviest that still takes it.</param>
/// <param name="Price">In the job's currency.</param>
public readonly record struct MassStep(Mass Most, decimal Price);

/// <summary>What the shop charges to bring the order.</summary>
/// <param name="Steps">By freight mass, rising.</param>
/// <param name="PerFurtherKilogram">For each started kilogram past the last step; null where nothing heavier is taken.</param>
/// <param name="FreeFrom">Goods value from which it is free; null where it never is.</param>
public sealed record Delivery(IReadOnlyList<MassStep> Steps, decimal? PerFurtherKilogram, decimal? FreeFrom);

/// <summary>The shop's cartons.</summary>
/// <param name="Capacity">Mass of the contents of a full one; more than zero.</param>
/// <param name="Tare">Mass of an empty one.</param>
public sealed record Carton(Mass Capacity, Mass Tare)
{
    /// <summary>Cartons that contents go into.</summary>
    /// <param name="contents">Mass of all that is packed, 0 or more.</param>
    internal long For(Mass contents) => (long)decimal.Ceiling(contents.Grams / Capacity.Grams);
}

/// <summary>What is worked out on the order as a whole.</summary>
/// <param name="Minimum">Least goods value after discount; the shortfall becomes a line.</param>
/// <param name="Discounts">By goods value, rising.</param>
/// <param name="Delivery">Null where it costs nothing.</param>
/// <param name="Carton">Null where goods come without.</param>
/// <param name="TaxRate">Fraction, such as 0.06.</param>
/// <param name="TaxOnDelivery">True where delivery is taxed.</param>
/// <param name="LeadDays">Days from order to arrival.</param>
public sealed record OrderRules(
    decimal Minimum,
    IReadOnlyList<DiscountStep> Discounts,
    Delivery? Delivery,
    Carton? Carton,
    decimal TaxRate,
    bool TaxOnDelivery,
    int LeadDays)
{
    /// <summary>Rules that charge nothing.</summary>
    public static OrderRules None { get; } = new(0m, [], null, null, 0m, false, 0);
}

/// <summary>A print shop by one of its dated price lists.</summary>
/// <param name="Name">The shop.</param>
/// <param name="ValidFrom">First day of the list.</param>
/// <param name="Sheets">Sheet sizes, in the order of preference between equals.</param>
/// <param name="Print">Print prices.</param>
/// <param name="Paper">Paper prices.</param>
/// <param name="BookPrices">Whole-book prices; the first that fits wins over print and paper.</param>
/// <param name="Quantities">The only quantities it sells, rising; empty where any will do.</param>
/// <param name="SetUp">Set-up charges.</param>
/// <param name="Finishing">Finishing operations that this order takes.</param>
/// <param name="Collates">Whether it collates.</param>
/// <param name="Layout">How pieces are laid on sheets.</param>
/// <param name="Spoilage">Part of its output that the press makes good itself, 0 up to but not including 1.</param>
/// <param name="Delivers">What it sends; null where the list does not say (flat sheets, or trimmed copies of whole books).</param>
/// <param name="Order">Rules of the whole order.</param>
public sealed record Shop(
    string Name,
    DateOnly ValidFrom,
    IReadOnlyList<Sheet> Sheets,
    IReadOnlyList<PrintPrice> Print,
    IReadOnlyList<PaperPrice> Paper,
    IReadOnlyList<BookPrice> BookPrices,
    IReadOnlyList<int> Quantities,
    SetUp SetUp,
    IReadOnlyList<Finishing> Finishing,
    Collating Collates,
    Layout Layout,
    decimal Spoilage,
    Delivered? Delivers,
    OrderRules Order);
