using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Web.Charts;

namespace PressRun.Web.Shelf;

/// <summary>What is shown of the shelf.</summary>
/// <param name="Titles">By title.</param>
/// <param name="Total">Titles found in all.</param>
public sealed record ShelfView(IReadOnlyList<TitleOnShelf> Titles, int Total)
{
    /// <summary>Printings shown that were made; of one that is only planned there are no copies.</summary>
    public int Printings => Titles.Sum(title => title.Editions.Count(edition => edition.Edition.CopiesPrinted is not null));

    /// <summary>Copies on hand of all that is shown.</summary>
    public int CopiesOnHand => Titles.Sum(title => title.CopiesOnHand);

    /// <summary>Titles shown that need a decision.</summary>
    public int Asking => Titles.Count(title => title.Asks);

    /// <summary>Titles shown with a printing that is being planned.</summary>
    public int Planned => Titles.Count(title => title.Editions.Any(edition => edition.Edition.CopiesPrinted is null));
}

/// <summary>A title with its printings.</summary>
/// <param name="Title">The title.</param>
/// <param name="Editions">Latest first.</param>
public sealed record TitleOnShelf(TitleRecord Title, IReadOnlyList<EditionOnShelf> Editions)
{
    /// <summary>Copies on hand of all printings.</summary>
    public int CopiesOnHand => Editions.Sum(edition => edition.Edition.CopiesOnHand);

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
public sealed class ShelfService(ShelfQuery shelf, PlanStore plans)
{
    /// <summary>A stretch of the shelf.</summary>
    public async Task<ShelfView> ShowAsync(PressId press, ShelfFilter filter, CancellationToken cancel = default)
    {
        var page = await shelf.ShowAsync(press, filter, cancel);
        var planIds = page.Titles.SelectMany(title => title.Editions).Select(edition => edition.Plan?.Id).OfType<Guid>().ToList();
        var sources = await plans.SourcesAsync(press, planIds, cancel);
        return new ShelfView(
            [.. page.Titles.Select(title => new TitleOnShelf(
                title.Title, [.. title.Editions.Select((edition, index) => Place(title.Title, edition, isLatest: index == 0, sources))]))],
            page.Total);
    }

    private static EditionOnShelf Place(TitleRecord title, ShelfEdition edition, bool isLatest, IReadOnlyDictionary<Guid, JobSource> sources)
    {
        var record = edition.Edition;
        var prepared = edition.Plan is { } plan && sources.TryGetValue(plan.Id, out var source) ? PreparedJob.Prepare(source.Build()) : null;
        var quantity = record.CopiesPrinted ?? edition.Plan?.Quantity;
        var estimate = prepared is { Succeeded: true } && quantity is { } copies ? prepared.Value.Estimate(copies) : null;
        var answer = estimate is { Succeeded: true } ? estimate.Value : null;
        return new EditionOnShelf(
            record,
            quantity,
            answer?.Totals.UnitCost(answer.Quantity),
            ShelfDecision.Of(record, isLatest, answer is not null, answer?.BreakEven is { WithinRun: true } or { NetPerCopy: null }),
            prepared is { Succeeded: true } ? BookShape.Of(prepared.Value.Block, prepared.Value.Impose(), title.Colour) : null);
    }
}
