using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Data.Titles;
using PressRun.Engine.Copies;
using PressRun.Web.Charts;
using PressRun.Web.Start;

namespace PressRun.Web.Shelf;

/// <summary>What is shown of the shelf.</summary>
/// <param name="Titles">By title.</param>
/// <param name="Total">Titles found in all.</param>
/// <param name="Totals">What the search finds in all, whether or not it needs a decision.</param>
/// <param name="Needed">What the press lacks before its papers can be compared.</param>
/// <param name="Compare">A printing planned on example papers, whose papers wait to be compared; null for none.</param>
public sealed record ShelfView(IReadOnlyList<TitleOnShelf> Titles, int Total, ShelfTotals Totals, StillNeeded Needed, PrintingName? Compare);

/// <summary>A title with its printings.</summary>
/// <param name="Title">The title.</param>
/// <param name="Editions">Latest first.</param>
/// <param name="Outlook">How long the copies of all its printings last; null where nothing is on hand, or no sale says.</param>
/// <param name="OrderBy">The last day on which to order a new run; null without an outlook.</param>
public sealed record TitleOnShelf(TitleRecord Title, IReadOnlyList<EditionOnShelf> Editions, StockOutlook? Outlook, DateOnly? OrderBy)
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

/// <summary>Reads the shelf and works out what its printings cost and how long they last.</summary>
public sealed class ShelfService(ShelfQuery shelf, ShelfCosts costs, OutlookStore outlooks, ShelfOutlooks reckoned, StillNeededService needed)
{
    /// <summary>A stretch of the shelf.</summary>
    public async Task<ShelfView> ShowAsync(PressId press, ShelfFilter filter, CancellationToken cancel = default)
    {
        var mark = await shelf.LibrariesMarkAsync(press, cancel);
        await reckoned.RefreshAsync(press, cancel);
        var due = await DueAsync(press, mark, filter, cancel);
        var page = await shelf.ShowAsync(press, filter, await AskingAsync(press, mark, filter, cancel), due, cancel);
        var known = await costs.OfAsync(
            press, mark, [.. page.Titles.SelectMany(title => title.Editions).Select(Asked).OfType<CostedPlan>()], cancel);
        var lasting = await reckoned.OfTitlesAsync(press, [.. page.Titles.Select(title => title.Title.Id)], cancel);
        var lacking = await needed.OfAsync(press, mark, cancel);
        return new ShelfView(
            [.. page.Titles.Select(title => Place(title, lasting.GetValueOrDefault(title.Title.Id), known))],
            page.Total,
            page.Totals,
            lacking,
            await shelf.PlannedOnAsync(press, lacking.Examples, cancel));
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

    // Titles that run out before a run ordered today would be there.
    private async Task<IReadOnlyList<Guid>> DueAsync(PressId press, string mark, ShelfFilter filter, CancellationToken cancel)
    {
        var today = reckoned.Today;
        var soon = await outlooks.RunningOutAsync(press, filter, today.AddDays(ShelfOutlooks.LongestLead), cancel);
        var known = await costs.OfAsync(
            press, mark, [.. soon.Select(title => title.Plan).OfType<PlannedPrinting>().Select(plan => new CostedPlan(plan.PlanId, plan.PlanVersion, plan.EditionVersion))], cancel);
        return [.. soon.Where(title => title.RunsOutOn.AddDays(-Lead(title.Plan?.PlanId, known)) <= today).Select(title => title.TitleId)];
    }

    private static int Lead(Guid? plan, IReadOnlyDictionary<Guid, ShelfCost> known) =>
        plan is { } id && known.TryGetValue(id, out var cost) ? Math.Min(cost.LeadDays, ShelfOutlooks.LongestLead) : 0;

    private TitleOnShelf Place(ShelfTitle title, TitleOutlook? kept, IReadOnlyDictionary<Guid, ShelfCost> known)
    {
        var lead = Lead(title.Editions.FirstOrDefault(edition => edition.Plan is not null)?.Plan?.Id, known);
        var outlook = kept is null or { OnHand: 0 } ? null : new StockOutlook(kept.OnHand, kept.Days10, kept.Days50, kept.Days90);
        var orderBy = outlook?.OrderBy(kept!.AsOf, lead);
        var isDue = kept is { OnHand: 0 } || orderBy <= reckoned.Today;
        return new TitleOnShelf(
            title.Title, [.. title.Editions.Select((edition, index) => Place(title.Title, edition, isLatest: index == 0, isDue: index == 0 && isDue, known))], outlook, orderBy);
    }

    private static EditionOnShelf Place(TitleRecord title, ShelfEdition edition, bool isLatest, bool isDue, IReadOnlyDictionary<Guid, ShelfCost> known)
    {
        var record = edition.Edition;
        var cost = edition.Plan is { } plan ? known.GetValueOrDefault(plan.Id) : null;
        var decision = ShelfDecision.Of(record, isLatest, cost?.UnitCost is not null, cost is { IsPaidFor: true });
        return new EditionOnShelf(
            record,
            record.CopiesPrinted ?? edition.Plan?.Quantity,
            cost?.UnitCost,
            isDue ? ShelfDecision.WhereDue(decision) : decision,
            cost?.Shape is { } shape ? shape with { CoverColour = title.Colour } : null);
    }
}
