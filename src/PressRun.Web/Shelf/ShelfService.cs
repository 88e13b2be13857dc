using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
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
public sealed class ShelfService(ShelfQuery shelf, PlanStore plans)
{
    /// <summary>A stretch of the shelf.</summary>
    public async Task<ShelfView> ShowAsync(PressId press, ShelfFilter filter, CancellationToken cancel = default)
    {
        var page = await shelf.ShowAsync(press, filter, await AskingAsync(press, filter, cancel), cancel);
        var planIds = page.Titles.SelectMany(title => title.Editions).Select(edition => edition.Plan?.Id).OfType<Guid>().ToList();
        var sources = await plans.SourcesAsync(press, planIds, cancel);
        return new ShelfView(
            [.. page.Titles.Select(title => new TitleOnShelf(
                title.Title, [.. title.Editions.Select((edition, index) => Place(title.Title, edition, isLatest: index == 0, sources))]))],
            page.Total,
            page.Totals);
    }

    // Titles with a planned printing that cannot be worked out or does not pay: only its costing knows.
    private async Task<HashSet<Guid>> AskingAsync(PressId press, ShelfFilter filter, CancellationToken cancel)
    {
        var planned = await shelf.PlannedAsync(press, filter, cancel);
        var sources = await plans.SourcesAsync(press, [.. planned.Select(printing => printing.PlanId)], cancel);
        return [.. planned.Where(printing => sources.TryGetValue(printing.PlanId, out var source) && Asks(source)).Select(printing => printing.TitleId)];
    }

    private static bool Asks(JobSource source)
    {
        var (_, answer) = WorkOut(source, source.Plan.Quantity);
        return ShelfDecision.Asks(ShelfDecision.Of(source.Edition, isLatest: true, answer is not null, IsPaidFor(answer)));
    }

    private static (PreparedJob? Prepared, Estimate? Answer) WorkOut(JobSource? source, int? quantity)
    {
        var prepared = source is not null && PreparedJob.Prepare(source.Build()) is { Succeeded: true } job ? job.Value : null;
        return (prepared, prepared is not null && quantity is { } copies && prepared.Estimate(copies) is { Succeeded: true } estimate ? estimate.Value : null);
    }

    private static bool IsPaidFor(Estimate? answer) => answer?.BreakEven is { WithinRun: true } or { NetPerCopy: null };

    private static EditionOnShelf Place(TitleRecord title, ShelfEdition edition, bool isLatest, IReadOnlyDictionary<Guid, JobSource> sources)
    {
        var record = edition.Edition;
        var quantity = record.CopiesPrinted ?? edition.Plan?.Quantity;
        var (prepared, answer) = WorkOut(edition.Plan is { } plan ? sources.GetValueOrDefault(plan.Id) : null, quantity);
        return new EditionOnShelf(
            record,
            quantity,
            answer?.Totals.UnitCost(answer.Quantity),
            ShelfDecision.Of(record, isLatest, answer is not null, IsPaidFor(answer)),
            prepared is null ? null : BookShape.Of(prepared.Block, prepared.Impose(), title.Colour));
    }
}
