using PressRun.Data.Presses;
using PressRun.Data.Titles;
using PressRun.Web.Charts;

namespace PressRun.Web.Shelf;

/// <summary>What is shown of the shelf.</summary>
/// <param name="Titles">By title.</param>
/// <param name="Total">Titles found in all.</param>
/// <param name="Totals">What the search finds in all, whether or not it needs a decision.</param>
public sealed record ShelfView(IReadOnlyList<TitleOnShelf> Titles, int Total, ShelfTotals Totals);

/// <summary>A title with its printings.</summary>
/// <param name="Title">The title.</param>
/// <param name="Editions">Latest first.</param>
public sealed record TitleOnShelf(TitleRecord Title, IReadOnlyList<EditionOnShelf> Editions)
{
    /// <summary>True where a printing needs a decision.</summary>
    public bool Asks => Editions.Any(edition => ShelfDecision.Asks(edition.Decision));
}

/// <summary>A printing on the shelf.</summary>
/// <param name="Edition">The edition.</param>
/// <param name="Quantity">Copies that its cost is about: those printed, else those planned; null without a plan.</param>
/// <param name="UnitCost">Landed cost of a copy, not rounded; null where it is not worked out.</param>
/// <param name="Decision">What it asks.</param>
/// <param name="Shape">For the drawing; null where it cannot be drawn.</param>
public sealed record EditionOnShelf(EditionRecord Edition, int? Quantity, decimal? UnitCost, DecisionKind Decision, BookShape? Shape);

/// <summary>Reads the shelf and works out what its printings cost.</summary>
public sealed class ShelfService(ShelfQuery shelf, ShelfCosts costs)
{
    /// <summary>A stretch of the shelf.</summary>
    public async Task<ShelfView> ShowAsync(PressId press, ShelfFilter filter, CancellationToken cancel = default)
    {
        var mark = await shelf.LibrariesMarkAsync(press, cancel);
        var page = await shelf.ShowAsync(press, filter, await AskingAsync(press, mark, filter, cancel), cancel);
        var known = await costs.OfAsync(
            press, mark, [.. page.Titles.SelectMany(title => title.Editions).Select(Asked).OfType<CostedPlan>()], cancel);
        return new ShelfView(
            [.. page.Titles.Select(title => new TitleOnShelf(
                title.Title, [.. title.Editions.Select((edition, index) => Place(title.Title, edition, isLatest: index == 0, known))]))],
            page.Total,
            page.Totals);
    }

    private static CostedPlan? Asked(ShelfEdition edition) => edition.Plan is { } plan ? new CostedPlan(plan.Id, plan.Version, edition.Edition.Version) : null;

    // Titles with a planned printing that cannot be worked out or does not pay: only its costing knows.
    private async Task<HashSet<Guid>> AskingAsync(PressId press, string mark, ShelfFilter filter, CancellationToken cancel)
    {
        var planned = await shelf.PlannedAsync(press, filter, cancel);
        var known = await costs.OfAsync(
            press, mark, [.. planned.Select(printing => new CostedPlan(printing.PlanId, printing.PlanVersion, printing.EditionVersion))], cancel);
        return [.. planned.Where(printing => known.TryGetValue(printing.PlanId, out var cost) && !cost.IsPaidFor).Select(printing => printing.TitleId)];
    }

    private static EditionOnShelf Place(TitleRecord title, ShelfEdition edition, bool isLatest, IReadOnlyDictionary<Guid, ShelfCost> known)
    {
        var record = edition.Edition;
        var cost = edition.Plan is { } plan ? known.GetValueOrDefault(plan.Id) : null;
        return new EditionOnShelf(
            record,
            record.CopiesPrinted ?? edition.Plan?.Quantity,
            cost?.UnitCost,
            ShelfDecision.Of(record, isLatest, cost?.UnitCost is not null, cost is { IsPaidFor: true }),
            cost?.Shape is { } shape ? shape with { CoverColour = title.Colour } : null);
    }
}
