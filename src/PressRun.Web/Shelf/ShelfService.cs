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
public sealed record TitleOnShelf(ShelfTitle Title, IReadOnlyList<EditionOnShelf> Editions, CopiesOutlook? Outlook, DateOnly? OrderBy)
{
    /// <summary>True where a printing needs a decision.</summary>
    public bool Asks => Editions.Any(edition => ShelfDecision.Asks(edition.Decision));
}

/// <summary>A printing on the shelf.</summary>
/// <param name="Edition">The edition.</param>
/// <param name="Quantity">Copies that its cost is about: those printed, else those planned; null without a plan.</param>
/// <param name="UnitCost">What a copy cost by its ledger, else its landed cost as planned, not rounded; null where neither is known.</param>
/// <param name="IsPaid">True where it is what was paid.</param>
/// <param name="Decision">What it asks.</param>
/// <param name="Shape">For the drawing; null where it cannot be drawn.</param>
public sealed record EditionOnShelf(ShelfEdition Edition, int? Quantity, decimal? UnitCost, bool IsPaid, DecisionKind Decision, BookShape? Shape);

/// <summary>Reads the shelf and works out what its printings cost and how long they last.</summary>
public sealed class ShelfService(ShelfQuery shelf, ShelfJudging judging, ShelfCosts costs, ShelfOutlooks reckoned)
{
    /// <summary>A stretch of the shelf.</summary>
    public async Task<ShelfView> ShowAsync(PressId press, ShelfFilter filter, CancellationToken cancel = default)
    {
        var judged = await judging.OfAsync(press, cancel);
        var page = await shelf.ShowAsync(press, filter, judged.Asking, judged.Due, cancel);
        var known = await costs.OfAsync(press, judged.Libraries, [.. page.Titles.SelectMany(title => title.Editions).Select(Asked).OfType<CostedPlan>()], cancel);
        var kept = page.Titles.Where(title => title.Outlook is not null).ToDictionary(title => title.Id, title => title.Outlook!);
        var lasting = await reckoned.AsOfTodayAsync(press, kept, cancel);
        return new ShelfView([.. page.Titles.Select(title => Place(title, lasting.GetValueOrDefault(title.Id), known))], page.Total, page.Totals, judged.Needed, judged.Compare);
    }

    private static CostedPlan? Asked(ShelfEdition edition) => edition.Plan is { } plan ? new CostedPlan(plan.Id, plan.Version, edition.Version) : null;

    private static EditionOnShelf Place(ShelfTitle title, ShelfEdition edition, bool isLatest, bool isDue, IReadOnlyDictionary<Guid, ShelfCost> known)
    {
        var cost = edition.Plan is { } plan ? known.GetValueOrDefault(plan.Id) : null;
        var paid = CopiesAccount.PaidForEach(edition.Printed.Copies, edition.Printed.Cost);
        var decision = ShelfDecision.Of(edition, isLatest, cost?.UnitCost is not null, cost is { IsPaidFor: true });
        return new EditionOnShelf(
            edition,
            edition.CopiesPrinted ?? edition.Plan?.Quantity,
            paid ?? cost?.UnitCost,
            paid is not null,
            isDue ? ShelfDecision.WhereDue(decision) : decision,
            cost?.Shape is { } shape ? shape with { CoverColour = title.Colour } : null);
    }

    private TitleOnShelf Place(ShelfTitle title, TitleOutlook? kept, IReadOnlyDictionary<Guid, ShelfCost> known)
    {
        var lead = ShelfJudging.Lead(title.Editions.FirstOrDefault(edition => edition.Plan is not null)?.Plan?.Id, known);
        var outlook = kept is null or { OnHand: 0 } ? null : new CopiesOutlook(kept.OnHand, kept.Days10, kept.Days50, kept.Days90);
        var orderBy = outlook?.OrderBy(kept!.AsOf, lead);
        var isDue = kept is { OnHand: 0 } || orderBy <= reckoned.Today;
        return new TitleOnShelf(
            title, [.. title.Editions.Select((edition, index) => Place(title, edition, isLatest: index == 0, isDue: index == 0 && isDue, known))], outlook, orderBy);
    }
}
