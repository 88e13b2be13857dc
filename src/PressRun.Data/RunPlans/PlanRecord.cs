using PressRun.Engine.Ladder;

namespace PressRun.Data.RunPlans;

/// <summary>A way to print an edition: shop, quantity, papers, who binds.</summary>
/// <param name="Id">Its id; empty for a new one.</param>
/// <param name="EditionId">Its edition.</param>
/// <param name="Name">What the maker calls it.</param>
/// <param name="PriceListId">The price list it is costed by; kept when the shop brings out a newer one.</param>
/// <param name="ShopId">The shop of that list; a save does not read it.</param>
/// <param name="Date">Day on which postage is taken to be in force.</param>
/// <param name="Quantity">Good copies wanted.</param>
/// <param name="Ladder">Quantities to compare; null where none were chosen.</param>
/// <param name="Stocks">Other papers than the edition's, by part id.</param>
/// <param name="Finishing">Names of the list's finishing operations that it takes; null takes all.</param>
/// <param name="BenchSteps">Names of the bench steps done at home; null does all.</param>
/// <param name="Chosen">True for the one plan that the edition goes by.</param>
/// <param name="Version">Row version that a save must carry.</param>
/// <param name="Reprint">What the quantity is decided from; null where it was not decided so.</param>
public sealed record PlanRecord(
    Guid Id,
    Guid EditionId,
    string Name,
    Guid PriceListId,
    string ShopId,
    DateOnly Date,
    int Quantity,
    LadderRange? Ladder,
    IReadOnlyDictionary<Guid, string> Stocks,
    IReadOnlyList<string>? Finishing,
    IReadOnlyList<string>? BenchSteps,
    bool Chosen,
    uint Version,
    PlanReprint? Reprint = null)
{
    /// <summary>Half of the run has a part on another paper; the first half has it on the one among <see cref="Stocks"/>, where the part then stands. Null where all copies are alike.</summary>
    public PlanHalf? SecondHalf { get; init; }

    /// <summary>True where another plan prints as many copies at the same prices on the same papers, finished and bound alike.</summary>
    public bool PrintsAs(PlanRecord other) =>
        (EditionId, PriceListId, Date, Quantity) == (other.EditionId, other.PriceListId, other.Date, other.Quantity)
        && SecondHalf == other.SecondHalf
        && Stocks.Count == other.Stocks.Count && Stocks.All(stock => other.Stocks.TryGetValue(stock.Key, out var id) && id == stock.Value)
        && Same(Finishing, other.Finishing) && Same(BenchSteps, other.BenchSteps);

    private static bool Same(IReadOnlyList<string>? one, IReadOnlyList<string>? other) => one is null || other is null ? one == other : one.SequenceEqual(other, StringComparer.Ordinal);
}

/// <summary>The second half of a run.</summary>
/// <param name="PartId">The part that it has on another paper.</param>
/// <param name="StockId">That paper.</param>
public sealed record PlanHalf(Guid PartId, string StockId);

/// <summary>Finds a plan among those of a printing.</summary>
public static class PlansOfPrinting
{
    /// <summary>The plan that is named; the one the printing goes by where none is, or where it is not there; else the first. Null where there is none.</summary>
    /// <param name="plans">In their order.</param>
    /// <param name="id">The plan named; null for none.</param>
    public static PlanRecord? NamedOrChosen(this IReadOnlyList<PlanRecord> plans, Guid? id) =>
        plans.FirstOrDefault(plan => plan.Id == id) ?? plans.FirstOrDefault(plan => plan.Chosen) ?? (plans.Count > 0 ? plans[0] : null);
}
