using PressRun.Data.Running;
using PressRun.Data;
using PressRun.Data.Bench;
using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Shops;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Web.Charts;
using PressRun.Web.Shared;

namespace PressRun.Web.RunPlans;

/// <summary>An edition with its plans, all worked out.</summary>
/// <param name="Title">The title.</param>
/// <param name="Edition">The edition.</param>
/// <param name="Plans">In the order in which they were made.</param>
/// <param name="Past">Earlier printings of the title, as their ledgers say what was paid, else by the plans and price lists that they went by.</param>
/// <param name="Shops">Shops that can be chosen.</param>
/// <param name="Limits">From where on the press wants to be warned of the work at its table.</param>
public sealed record RunPlanView(
    TitleRecord Title, EditionRecord Edition, IReadOnlyList<PlanCosting> Plans, IReadOnlyList<PastRun> Past, IReadOnlyList<ShopRecord> Shops, BenchLimits Limits);

/// <summary>Loads, tries and saves the run plans of an edition.</summary>
public sealed class RunPlanService(
    TitleStore titles, EditionStore editions, PlanStore plans, ShopStore shops, PriceListStore priceLists, BenchLimitsStore limits, CopiesLedgerStore ledger, TimeProvider time)
{
    /// <summary>An edition with its plans by its address, or null.</summary>
    public async Task<RunPlanView?> LoadAsync(PressId press, string slug, int printing)
    {
        if (await titles.FindAsync(press, slug) is not { } title || await editions.FindAsync(press, slug, printing) is not { } edition)
        {
            return null;
        }

        var all = await editions.OfTitleAsync(press, title.Id);
        var records = await plans.OfEditionAsync(press, edition.Id);
        var sources = await plans.SourcesAsync(press, [.. records.Select(plan => plan.Id)]);
        return new RunPlanView(
            title,
            edition,
            [.. records.Where(plan => sources.ContainsKey(plan.Id)).Select(plan => PlanCosting.Of(sources[plan.Id]))],
            await PastAsync(press, [.. all.Where(other => other.Printing < printing && other.CopiesPrinted is not null)]),
            await shops.ListAsync(press),
            (await limits.LoadAsync(press)).Item);
    }

    /// <summary>Works a plan out as it would be, without saving it.</summary>
    public static PlanCosting Try(PlanCosting costing, PlanRecord plan) => PlanCosting.Of(costing.Source with { Plan = plan });

    /// <summary>Saves a plan and works it out again from what is stored; where somebody else was first, nothing is saved and theirs is answered.</summary>
    public async Task<(PlanCosting? Now, SaveAnswer Answer, PlanRecord? Theirs)> SaveAsync(PressId press, PlanRecord plan)
    {
        switch (await plans.SaveAsync(press, plan))
        {
            case SaveResult<PlanRecord>.Saved saved:
                return (await CostAsync(press, saved.Now.Id), new SaveAnswer(null, saved.Now.Version), null);
            case SaveResult<PlanRecord>.Conflict conflict:
                return (null, default, conflict.Theirs);
            case SaveResult<PlanRecord>.Refused refused:
                return (null, new SaveAnswer(Words.Standing(refused.Problems), null), null);
            default:
                return (null, new SaveAnswer(Say($"This plan has been taken out in between."), null), null);
        }
    }

    /// <summary>A plan worked out from what is stored, or null where it is gone.</summary>
    public async Task<PlanCosting?> CostAsync(PressId press, Guid plan) =>
        await plans.SourceAsync(press, plan) is { } source ? PlanCosting.Of(source) : null;

    /// <summary>The plan at another shop, on the price list that is in force there; a sentence where there is none.</summary>
    public async Task<(PlanRecord? Plan, string? Problem)> AtShopAsync(PressId press, PlanRecord plan, string shopId)
    {
        var today = time.Today();
        var list = await priceLists.InForceAsync(press, shopId, plan.Date) ?? await priceLists.InForceAsync(press, shopId, today);
        return list is null
            ? (null, Say($"This shop has no price list yet that is in force. Add one in the shops' library."))
            : (plan with { PriceListId = list.Id, ShopId = shopId, Finishing = [.. list.Prices.Finishing.Select(operation => operation.Name)], BenchSteps = StepsBeside(list.Prices, plan.BenchSteps) }, null);
    }

    /// <summary>A first plan for an edition that has none: at the first shop with a list in force, on all its finishing and every bench step.</summary>
    public async Task<(PlanCosting? Now, string? Problem)> StartAsync(PressId press, EditionRecord edition, int quantity)
    {
        var today = time.Today();
        foreach (var shop in await shops.ListAsync(press))
        {
            if (await priceLists.InForceAsync(press, shop.Id, today) is { } list)
            {
                var plan = new PlanRecord(
                    Guid.Empty, edition.Id, shop.Name, list.Id, shop.Id, today, quantity, null, new Dictionary<Guid, string>(), null, StepsBeside(list.Prices, null), true, 0);
                return await plans.AddAsync(press, plan) is SaveResult<PlanRecord>.Saved saved
                    ? (await CostAsync(press, saved.Now.Id), null)
                    : (null, Say($"The plan could not be stored."));
            }
        }

        return (null, Say($"No shop has a price list yet. Add one in the shops' library, and this page works out what a run costs there."));
    }

    // A shop that sells nothing but whole books leaves only packing to be done at home.
    private static IReadOnlyList<string>? StepsBeside(Shop prices, IReadOnlyList<string>? steps) =>
        prices.Sheets.Count > 0 || prices.BookPrices.Count == 0 ? steps : [BenchStep.Pack];

    /// <summary>A copy of a plan to try something beside it.</summary>
    public async Task<PlanCosting?> TryBesideAsync(PressId press, PlanRecord plan, string name) =>
        await plans.DuplicateAsync(press, plan.Id, name) is SaveResult<PlanRecord>.Saved saved ? await CostAsync(press, saved.Now.Id) : null;

    /// <summary>Makes a plan the one that the edition goes by.</summary>
    public async Task ChooseAsync(PressId press, Guid plan) => await plans.ChooseAsync(press, plan);

    /// <summary>Makes the edition go by a plan again, in place of the one that was chosen instead; a sentence where somebody chose yet another one since.</summary>
    public async Task<string?> ChooseAgainAsync(PressId press, Guid plan, Guid insteadOf)
    {
        if (await plans.LoadAsync(press, insteadOf) is not { Chosen: true })
        {
            return Say($"This printing goes by another plan since.");
        }

        await plans.ChooseAsync(press, plan);
        return null;
    }

    /// <summary>Takes a plan out; a sentence where the shelf goes by it or somebody else changed it.</summary>
    public async Task<string?> DeleteAsync(PressId press, PlanRecord plan)
    {
        if (await plans.LoadAsync(press, plan.Id) is { Chosen: true })
        {
            return Say($"The shelf goes by this plan. Go by another one first.");
        }

        return await plans.DeleteAsync(press, plan) is DeleteResult.Changed
            ? Say($"Somebody saved this in between, so it stays. Look at it again, and then take it out.")
            : null;
    }

    /// <summary>Puts a plan back that was taken out, after the one it stood behind; null where it cannot be any more.</summary>
    public async Task<PlanCosting?> PutBackAsync(PressId press, PlanRecord plan, Guid? after) =>
        await plans.PutBackAsync(press, plan, after) is SaveResult<PlanRecord>.Saved saved ? await CostAsync(press, saved.Now.Id) : null;

    private async Task<IReadOnlyList<PastRun>> PastAsync(PressId press, IReadOnlyList<EditionRecord> printed)
    {
        var past = new List<PastRun>();
        foreach (var edition in printed)
        {
            if (await ledger.PrintedAsync(press, edition.Id) is { Copies: > 0 and <= Job.MostCopies, Cost: > 0m } paid)
            {
                past.Add(new PastRun((int)paid.Copies, paid.Cost, Words.Printing(edition.Printing), Paid: true));
                continue;
            }

            var chosen = (await plans.OfEditionAsync(press, edition.Id)).FirstOrDefault(plan => plan.Chosen);
            if (chosen is not null
                && await plans.SourceAsync(press, chosen.Id) is { } source
                && PreparedJob.Prepare(source.Build()) is { Succeeded: true } prepared
                && prepared.Value.LandedCost(edition.CopiesPrinted!.Value, out var cost) is null)
            {
                past.Add(new PastRun(edition.CopiesPrinted.Value, cost, Words.Printing(edition.Printing), Paid: false));
            }
        }

        return past;
    }
}
