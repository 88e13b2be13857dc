using PressRun.Engine.Editions;
using PressRun.Engine.Ladder;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Costing;

/// <summary>What a job costs and weighs at one quantity. Amounts are in the job's currency; lines, totals and prices are rounded to its
/// minor unit, figures per copy are not rounded.</summary>
/// <param name="Quantity">Good copies wanted.</param>
/// <param name="CopiesToStart">Copies that print and bench work are costed on: the good ones, the overs, and what a sold quantity adds.</param>
/// <param name="Parts">One for each part, in order; two for a part of which each half of the run is on a stock of its own.</param>
/// <param name="Lines">In the order of the list of codes; no line is zero.</param>
/// <param name="Totals">What the lines add up to.</param>
/// <param name="Copy">One finished copy.</param>
/// <param name="Freight">What the shop sends.</param>
/// <param name="Postage">One for each channel that posts.</param>
/// <param name="Channels">One for each channel, in order.</param>
/// <param name="BreakEven">Copies that pay for the run.</param>
/// <param name="Warnings">In a fixed order of codes.</param>
public sealed record Estimate(
    int Quantity,
    long CopiesToStart,
    IReadOnlyList<PartEstimate> Parts,
    IReadOnlyList<CostLine> Lines,
    CostTotals Totals,
    CopyEstimate Copy,
    FreightEstimate Freight,
    IReadOnlyList<PostageChoice> Postage,
    IReadOnlyList<ChannelEstimate> Channels,
    BreakEven BreakEven,
    IReadOnlyList<Warning> Warnings)
{
    private const decimal MinutesPerHour = 60m;

    /// <summary>Copies started beyond the good ones, for what goes wrong or because the shop sells only certain quantities; 0 or more.</summary>
    public long Overs => CopiesToStart - Quantity;

    /// <summary>Landed cost of a good copy, not rounded.</summary>
    public decimal UnitCost => new Rung(Quantity, Totals.LandedCost).UnitCost;

    /// <summary>Cash out for a good copy, not rounded.</summary>
    public decimal CashPerCopy => Totals.CashOut / Quantity;

    /// <summary>Minutes at the bench for a good copy, not rounded.</summary>
    public decimal BenchMinutesPerCopy => Totals.BenchHours * MinutesPerHour / Quantity;

    /// <summary>Sheets of all parts; 0 where whole books are priced.</summary>
    public long SheetsInAll => Parts.Sum(part => part.OnSheets?.Sheets ?? 0);

    /// <summary>The second half's copies, where half of the run has a part on another stock; <see cref="Copy"/>, <see cref="Postage"/> and <see cref="Channels"/> are then those of the
    /// first. Null where all copies are alike.</summary>
    public SecondHalfEstimate? SecondHalf { get; init; }

    /// <summary>Where a part stands among <see cref="Parts"/>; of one whose halves are on stocks of their own the first half, behind which the second stands.</summary>
    /// <param name="part">Place of the part in the edition, from 0.</param>
    public int PlaceOf(int part) => SecondHalf is { } half && part > half.Half.Part && Parts[half.Half.Part].OnSheets is not null ? part + 1 : part;
}

/// <summary>A part at one quantity.</summary>
/// <param name="Name">Its name.</param>
/// <param name="PiecesPerCopy">Folded sheets, leaves or covers of one copy.</param>
/// <param name="Piece">Size of a piece before trimming.</param>
/// <param name="OnSheets">How it lies on sheets; null where whole books are priced.</param>
/// <param name="MassPerCopy">Mass of its paper in one trimmed copy.</param>
/// <param name="Caliper">Thickness of one of its leaves.</param>
public sealed record PartEstimate(string Name, int PiecesPerCopy, Size Piece, PartSheets? OnSheets, Mass MassPerCopy, Length Caliper);

/// <summary>How a part lies on sheets.</summary>
/// <param name="SheetId">The sheet chosen.</param>
/// <param name="PiecesPerSheet">Pieces out of one sheet, at least 1.</param>
/// <param name="Sheets">Sheets for all copies started.</param>
/// <param name="SheetsPerCopy">Sheets over copies started, not rounded.</param>
/// <param name="Layout">How the pieces share sheets.</param>
/// <param name="Impressions">Printed sides by ink, in the order outside, inside; unprinted sides are left out.</param>
public sealed record PartSheets(
    string SheetId,
    int PiecesPerSheet,
    long Sheets,
    decimal SheetsPerCopy,
    Layout Layout,
    IReadOnlyList<(Ink Ink, long Count)> Impressions);

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

/// <summary>One finished copy.</summary>
/// <param name="Mass">As weighed, else reckoned from the paper and the fittings.</param>
/// <param name="Thickness">As gauged, else the leaves' calipers.</param>
/// <param name="Creep">How far the innermost leaf of a nested book stands out before trimming; zero for other bindings.</param>
public readonly record struct CopyEstimate(Mass Mass, Length Thickness, Length Creep)
{
    /// <summary>A copy of a book.</summary>
    /// <param name="block">The book as reckoned.</param>
    /// <param name="weighed">What the scale and the gauge said; null where neither was used.</param>
    /// <param name="fittings">Mass of what is added at the bench.</param>
    internal static CopyEstimate Of(BookBlock block, Weighed? weighed, Mass fittings) =>
        new(weighed?.Mass ?? (block.PaperMass + fittings), weighed?.Thickness ?? block.Thickness, block.Creep);
}

/// <summary>What the shop sends.</summary>
/// <param name="Mass">Goods and cartons.</param>
/// <param name="Cartons">How many cartons; 0 where the shop names none.</param>
/// <param name="HeaviestCarton">The fullest carton with its tare; zero where the shop names none.</param>
public readonly record struct FreightEstimate(Mass Mass, long Cartons, Mass HeaviestCarton)
{
    /// <summary>A carton heavier than this asks for care: the load constant of the revised NIOSH lifting equation (Waters and others 1993),
    /// what a healthy adult may lift under the best conditions.</summary>
    public static readonly Mass LiftingLimit = Mass.FromKilograms(23m);
}

/// <summary>A channel at the job's quantity.</summary>
/// <param name="Id">Its id.</param>
/// <param name="NetPerCopy">What it keeps for the press of a copy, before the copy's own cost; null where no service takes the post.</param>
/// <param name="BreakEvenPrice">Lowest price, rounded up to the minor unit, at which a copy keeps its cost; null where none does.</param>
public sealed record ChannelEstimate(string Id, decimal? NetPerCopy, decimal? BreakEvenPrice);

/// <summary>Copies that pay for the run at the channels' prices and mix.</summary>
/// <param name="Copies">Null where no number of copies does.</param>
/// <param name="WithinRun">True where they are among the copies for sale.</param>
/// <param name="NetPerCopy">The channels' net by their mix; null where there is none.</param>
public sealed record BreakEven(long? Copies, bool WithinRun, decimal? NetPerCopy);

/// <summary>What to look at, in the order in which they stand.</summary>
public enum WarningCode
{
    /// <summary>The innermost leaves stand out further than the fore-edge trim takes off.</summary>
    CreepExceedsTrim,

    /// <summary>A thickness rests on a finish's usual bulk.</summary>
    CaliperEstimated,

    /// <summary>A carton is heavier than one person should lift without care.</summary>
    HeavyCarton,

    /// <summary>The page does not lie in a mailer.</summary>
    MailerTooSmall,

    /// <summary>No service takes the piece of mail.</summary>
    NoPostage,

    /// <summary>The piece is so near to a step's limit that paper's variation may cross it.</summary>
    NearPostageStep,

    /// <summary>No price pays for a copy through this channel.</summary>
    NoBreakEvenPrice,

    /// <summary>The run is not paid for even when all its copies for sale are sold.</summary>
    BreakEvenBeyondRun,
}

/// <summary>Something to look at.</summary>
/// <param name="Code">What.</param>
/// <param name="Message">A sentence with its figures.</param>
public sealed record Warning(WarningCode Code, string Message)
{
    /// <summary>Names of the stocks or channels that it concerns, in the job's order; empty where it concerns the whole run.</summary>
    public IReadOnlyList<string> About { get; init; } = [];
}
