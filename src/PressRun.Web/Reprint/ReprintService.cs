using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Running;
using PressRun.Data.Shops;
using PressRun.Data.Titles;
using PressRun.Web.RunPlans;
using PressRun.Web.Shared;

namespace PressRun.Web.Reprint;

/// <summary>A printing with its plans and the ledger of its title.</summary>
/// <param name="Title">The title.</param>
/// <param name="Edition">The printing.</param>
/// <param name="Plans">In the order in which they were made.</param>
/// <param name="Ledger">Of all printings of the title.</param>
/// <param name="Shops">For their names.</param>
public sealed record ReprintView(
    TitleRecord Title, EditionRecord Edition, IReadOnlyList<JobSource> Plans, TitleLedger Ledger, IReadOnlyList<ShopRecord> Shops)
{
    /// <summary>The view with a plan as it is now; without it where it is gone.</summary>
    public ReprintView With(Guid plan, JobSource? now) => this with
    {
        Plans = [.. Plans.Select(source => source.Plan.Id == plan ? now : source).OfType<JobSource>()],
    };
}

/// <summary>Loads and saves what a reprint is decided from.</summary>
public sealed class ReprintService(
    TitleStore titles, EditionStore editions, PlanStore plans, CopiesLedgerStore ledger, ShopStore shops, RunPlanService runs, TimeProvider time)
{
    /// <summary>A printing by its address, or null.</summary>
    public async Task<ReprintView?> LoadAsync(PressId press, string slug, int printing)
    {
        if (await titles.FindAsync(press, slug) is not { } title || await editions.FindAsync(press, slug, printing) is not { } edition)
        {
            return null;
        }

        var records = await plans.OfEditionAsync(press, edition.Id);
        var sources = await plans.SourcesAsync(press, [.. records.Select(plan => plan.Id)]);
        var moved = await ledger.OfTitlesAsync(press, [title.Id]);
        return new ReprintView(
            title,
            edition,
            [.. records.Where(plan => sources.ContainsKey(plan.Id)).Select(plan => sources[plan.Id])],
            TitleLedger.Of([.. moved[title.Id]], time.Today()),
            await shops.ListAsync(press));
    }

    /// <summary>Saves a plan; where somebody else was first, nothing is saved and theirs is answered.</summary>
    public async Task<(JobSource? Now, SaveAnswer Answer, PlanRecord? Theirs)> SaveAsync(PressId press, PlanRecord plan)
    {
        var (now, answer, theirs) = await runs.SaveAsync(press, plan);
        return (now?.Source ?? (theirs is null ? null : await plans.SourceAsync(press, theirs.Id)), answer, theirs);
    }
}
