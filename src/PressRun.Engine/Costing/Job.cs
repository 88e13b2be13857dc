using PressRun.Engine.Bench;
using PressRun.Engine.Comparing;
using PressRun.Engine.Editions;
using PressRun.Engine.Ladder;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Reprint;
using PressRun.Engine.Selling;

namespace PressRun.Engine.Costing;

/// <summary>All that one costing needs; nothing is looked up elsewhere. Amounts are in <paramref name="Currency"/>.</summary>
/// <param name="Date">Day on which lists must be in force.</param>
/// <param name="Currency">Of every amount.</param>
/// <param name="Edition">What is made.</param>
/// <param name="Stocks">Papers by unique id, in the order listed.</param>
/// <param name="Shop">Who prints it, by one price list.</param>
/// <param name="Bench">The press's own table.</param>
/// <param name="Mailers">By unique id.</param>
/// <param name="Postage">By id and date.</param>
/// <param name="Channels">By unique id.</param>
/// <param name="FreeCopies">Copies given away, 0 or more.</param>
/// <param name="ReclaimTax">True where the press gets the shop's tax back.</param>
/// <param name="Quantity">Good copies wanted, 1 to 1,000,000.</param>
/// <param name="Ladder">Quantities to compare; null where none were asked for.</param>
/// <param name="Compare">Papers to compare; null where none were asked for.</param>
/// <param name="Reprint">What a reprint is decided from; null where it is not asked for.</param>
public sealed record Job(
    DateOnly Date,
    Currency Currency,
    Edition Edition,
    IReadOnlyList<Stock> Stocks,
    Shop Shop,
    BenchRates Bench,
    IReadOnlyList<Mailer> Mailers,
    IReadOnlyList<PostageService> Postage,
    IReadOnlyList<Channel> Channels,
    int FreeCopies,
    bool ReclaimTax,
    int Quantity,
    LadderRange? Ladder,
    ComparisonRequest? Compare = null,
    ReprintRequest? Reprint = null)
{
    /// <summary>Half of the run has a part on another stock; null where all copies are alike.</summary>
    public SecondHalf? SecondHalf { get; init; }

    /// <summary>The same job with parts on other stocks. A copy that was weighed or gauged was on the papers it had, so that is left out.</summary>
    /// <param name="choices">Place of a part, from 0, and the id of its stock; of several for one part the last holds, and a part that is not named keeps its own.</param>
    /// <exception cref="IndexOutOfRangeException">The edition has no part at that place.</exception>
    public Job WithStocks(params IEnumerable<(int Part, string StockId)> choices)
    {
        var parts = Edition.Parts.ToArray();
        var changed = false;
        foreach (var (part, stockId) in choices)
        {
            changed |= parts[part].StockId != stockId;
            parts[part] = parts[part] with { StockId = stockId };
        }

        return changed ? this with { Edition = Edition with { Parts = parts, Weighed = null } } : this;
    }

    /// <summary>Most copies of a job.</summary>
    public const int MostCopies = 1_000_000;

    /// <summary>Most pages of an edition.</summary>
    public const int MostPages = 10_000;

    /// <summary>Most quantities of a ladder.</summary>
    public const int MostQuantities = 10_000;
}
