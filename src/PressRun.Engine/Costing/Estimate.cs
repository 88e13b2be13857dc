using PressRun.Engine.Ladder;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;

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

    /// <summary>How far the innermost leaf of a copy stands out before trimming, in the half whose copies have more of it.</summary>
    public Length MostCreep => Length.Max(Copy.Creep, SecondHalf?.Copy.Creep ?? Length.Zero);

    /// <summary>Where a part stands among <see cref="Parts"/>; of one whose halves are on stocks of their own the first half, behind which the second stands.</summary>
    /// <param name="part">Place of the part in the edition, from 0.</param>
    public int PlaceOf(int part) => SecondHalf is { } half && part > half.Half.Part && Parts[half.Half.Part].OnSheets is not null ? part + 1 : part;
}
