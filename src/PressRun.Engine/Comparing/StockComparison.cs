using PressRun.Engine.Costing;
using PressRun.Engine.Postage;

namespace PressRun.Engine.Comparing;

/// <summary>Which papers to try.</summary>
/// <param name="Choices">Parts by place, each with the ids of its stocks to try; a part that is not named keeps its own.</param>
/// <param name="Halves">Runs of which each half has a part on another stock.</param>
/// <param name="Quantities">Good copies, each 1 to 1,000,000; at least one.</param>
public sealed record ComparisonRequest(
    IReadOnlyList<StockChoice> Choices, IReadOnlyList<HalvesChoice> Halves, IReadOnlyList<int> Quantities)
{
    /// <summary>Most rows of one comparison.</summary>
    public const int MostRows = 50_000;
}

/// <summary>Stocks to try on a part.</summary>
/// <param name="Part">Place of the part, from 0.</param>
/// <param name="StockIds">At least one.</param>
public sealed record StockChoice(int Part, IReadOnlyList<string> StockIds);

/// <summary>Half of the run on each of two stocks.</summary>
/// <param name="Part">Place of the part, from 0.</param>
/// <param name="FirstStockId">Stock of the first half.</param>
/// <param name="SecondStockId">Stock of the second half.</param>
public sealed record HalvesChoice(int Part, string FirstStockId, string SecondStockId);

/// <summary>What stands out of the rows of a quantity.</summary>
[Flags]
public enum ComparisonMarks
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>Lowest landed cost; the first of equals.</summary>
    Cheapest = 1,

    /// <summary>Lightest copy; the first of equals.</summary>
    Lightest = 2,

    /// <summary>Of the rows by rising copy mass the first whose postage is dearer than the lightest's.</summary>
    FirstOverStep = 4,

    /// <summary>The heaviest copy whose postage is no dearer than that of the papers the edition has now.</summary>
    HeaviestInStep = 8,
}

/// <summary>An edition on certain papers, at a quantity.</summary>
/// <param name="StockIds">Stock of each part, in order.</param>
/// <param name="Estimate">The costing, the same as for the job by itself.</param>
/// <param name="InHand">What a copy costs in the reader's hands, for each channel that posts or packs.</param>
public sealed record ComparedRow(IReadOnlyList<string> StockIds, Estimate Estimate, IReadOnlyList<InHand> InHand)
{
    /// <summary>What stands out.</summary>
    public ComparisonMarks Marks { get; init; }
}

/// <summary>A run of two halves, at a quantity.</summary>
/// <param name="Choice">What was asked for.</param>
/// <param name="Estimate">The order as a whole; its copy, postage and channels are those of the first half.</param>
/// <param name="OtherCopy">A copy of the second half.</param>
/// <param name="InHand">For each channel that posts or packs, a copy of the first half.</param>
/// <param name="OtherInHand">For each channel that posts or packs, a copy of the second half.</param>
public sealed record HalvesRow(
    HalvesChoice Choice, Estimate Estimate, CopyEstimate OtherCopy, IReadOnlyList<InHand> InHand, IReadOnlyList<InHand> OtherInHand);

/// <summary>A copy in the reader's hands: unit cost, its share of a mailer and its share of the postage.</summary>
/// <param name="ChannelId">The channel.</param>
/// <param name="Cost">Not rounded; null where no service takes the piece.</param>
/// <param name="Postage">The service taken; null where the channel posts nowhere.</param>
/// <param name="HeadroomLeaves">Leaves of each part's stock that every copy could have more without leaving the postage step or the service's thickness.</param>
public sealed record InHand(string ChannelId, decimal? Cost, PostageChoice? Postage, IReadOnlyList<int> HeadroomLeaves);

/// <summary>A combination that cannot be printed.</summary>
/// <param name="StockIds">Stock of each part, in order; for halves those of the first half.</param>
/// <param name="Quantity">The quantity; null where none can be.</param>
/// <param name="Problems">Why.</param>
public sealed record RefusedCombination(IReadOnlyList<string> StockIds, int? Quantity, IReadOnlyList<Problem> Problems);

/// <summary>Papers side by side.</summary>
/// <param name="Rows">Every combination at every quantity: quantities in the order asked for, combinations with the last part turning fastest.</param>
/// <param name="Halves">In the order asked for.</param>
/// <param name="Refused">What cannot be printed.</param>
public sealed record StockComparison(
    IReadOnlyList<ComparedRow> Rows, IReadOnlyList<HalvesRow> Halves, IReadOnlyList<RefusedCombination> Refused);
