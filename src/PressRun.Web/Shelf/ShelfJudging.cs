using Microsoft.Extensions.Caching.Memory;
using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Data.Titles;
using PressRun.Web.Start;

namespace PressRun.Web.Shelf;

/// <summary>What is known of all titles of a press, whatever of them is shown.</summary>
/// <param name="Libraries">The mark of all that printings are costed by beside themselves and their plans.</param>
/// <param name="Asking">Titles with a planned printing that cannot be worked out or does not pay: only its costing knows.</param>
/// <param name="Due">Titles that run out before a run ordered today would be there, the first to run out first.</param>
/// <param name="Needed">What the press lacks before its papers can be compared.</param>
/// <param name="Compare">A printing planned on example papers, whose papers wait to be compared; null for none.</param>
public sealed record ShelfJudgement(string Libraries, IReadOnlyCollection<Guid> Asking, IReadOnlyCollection<Guid> Due, StillNeeded Needed, PrintingName? Compare);

/// <summary>Judges the titles of a press, and remembers it for as long as the marks of all that it judges by stay the same and the day lasts: a search asks for the marks
/// and judges nothing anew.</summary>
public sealed class ShelfJudging(ShelfQuery shelf, ShelfCosts costs, ShelfOutlooks reckoned, StillNeededService needed) : IDisposable
{
    private const int MostPresses = 1_000;

    private readonly MemoryCache known = new(new MemoryCacheOptions { SizeLimit = MostPresses });

    /// <summary>What is known of a press's titles now.</summary>
    public async Task<ShelfJudgement> OfAsync(PressId press, CancellationToken cancel)
    {
        var today = reckoned.Today;
        var by = today.AddDays(ShelfOutlooks.LongestLead);
        var marks = await shelf.MarksAsync(press, by, cancel);
        if (marks.Moved)
        {
            await reckoned.RefreshAsync(press, cancel);
            marks = await shelf.MarksAsync(press, by, cancel);
        }

        if (known.Get<Known>(press) is { } last && last.Marks == marks && last.Day == today)
        {
            return last.Judgement;
        }

        // Read again with what they stand for, all of one moment: what was written meanwhile is not to be kept under marks that do not know of it.
        var standing = await shelf.StandingAsync(press, by, cancel);
        var judgement = await JudgeAsync(press, standing, today, cancel);
        known.Set(press, new Known(standing.Marks, today, judgement), new MemoryCacheEntryOptions { Size = 1 });
        return judgement;
    }

    /// <inheritdoc/>
    public void Dispose() => known.Dispose();

    /// <summary>Days that a run of a plan takes, as far as is looked ahead; 0 for no plan.</summary>
    internal static int Lead(Guid? plan, IReadOnlyDictionary<Guid, ShelfCost> known) =>
        plan is { } id && known.TryGetValue(id, out var cost) ? Math.Min(cost.LeadDays, ShelfOutlooks.LongestLead) : 0;

    private async Task<ShelfJudgement> JudgeAsync(PressId press, ShelfStanding standing, DateOnly today, CancellationToken cancel)
    {
        var (libraries, planned, soon) = (standing.Marks.Libraries, standing.Planned, standing.RunningOut);
        var plans = planned.Concat(soon.Select(title => title.Plan).OfType<PlannedPrinting>()).Select(plan => new CostedPlan(plan.PlanId, plan.PlanVersion, plan.EditionVersion));
        var cost = await costs.OfAsync(press, libraries, [.. plans.Distinct()], cancel);
        var lacking = await needed.OfAsync(press, libraries, cancel);
        return new ShelfJudgement(
            libraries,
            [.. planned.Where(printing => cost.TryGetValue(printing.PlanId, out var its) && !its.IsPaidFor).Select(printing => printing.TitleId)],
            [.. soon.Where(title => title.RunsOutOn.AddDays(-Lead(title.Plan?.PlanId, cost)) <= today).Select(title => title.TitleId)],
            lacking,
            await shelf.PlannedOnAsync(press, lacking.Examples, cancel));
    }

    private sealed record Known(ShelfMarks Marks, DateOnly Day, ShelfJudgement Judgement);
}
