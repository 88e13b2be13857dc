using System.Globalization;
using Microsoft.AspNetCore.Components;
using PressRun.Data.RunPlans;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Web.Bindery;
using PressRun.Web.Editions;
using PressRun.Web.Papers;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.RunPlans;

public sealed partial class RunPlanPage
{
    private const int FirstQuantity = 100;

    private readonly UndoStack edits = new();
    private readonly OneAtATime saves = new();
    private bool loaded;
    private string? problem;
    private int? looked;
    private int? wanted;
    private bool moving;

    // What is being typed: a quantity that can be worked out, or something that is none.
    private int? typing;
    private bool unread;
    private PlanProblem? refusedTyped;
    private (PlanCosting Costing, int Quantity, Outcome<RunAnswer> Answer)? answered;

    [Inject]
    private RunPlanService Service { get; set; } = default!;

    [Inject]
    private TimeProvider Time { get; set; } = default!;

    /// <summary>The plan that is open; the chosen one where none is named.</summary>
    [SupplyParameterFromQuery(Name = "plan")]
    public string? PlanIdAsked { get; set; }

    private Guid? PlanId => FromAddress.Id(PlanIdAsked);

    private RunPlanView? Page { get; set; }

    private PlanCosting? Open =>
        Page?.Plans.FirstOrDefault(plan => plan.Source.Plan.Id == PlanId)
        ?? Page?.Plans.FirstOrDefault(plan => plan.Source.Plan.Chosen)
        ?? (Page?.Plans.Count > 0 ? Page.Plans[0] : null);

    private PageCount Pages => PageCount.Of(Page!.Edition.Binding, [.. Page.Edition.Parts.Select(part => part.Part)]);

    // Looked at while the marker is dragged, else the plan's own.
    private int Quantity => looked ?? Open!.Source.Plan.Quantity;

    private RunAnswer? Answer => Open is { Worked: { } worked } && At(worked) is { Succeeded: true } answer ? answer.Value : null;

    private IReadOnlyList<PlanProblem> Problems
    {
        get
        {
            var standing = Open is { Worked: { } worked } ? At(worked).Problems : Open!.Problems;
            return [.. standing.Select(found => PlanProblem.Of(found, Open.Source, EditionAddress, Format))];
        }
    }

    // Worked out once for each quantity.
    private Outcome<RunAnswer> At(WorkedPlan worked)
    {
        var quantity = typing ?? Quantity;
        if (answered is not { } known || known.Costing != Open || known.Quantity != quantity)
        {
            answered = (Open!, quantity, worked.At(quantity));
        }

        return answered.Value.Answer;
    }

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        adding.Again();
        looked = typing = null;
        (unread, refusedTyped) = (false, null);
        if (Press is not null && (Page is null || Page.Title.Slug != Slug || Page.Edition.Printing != Printing))
        {
            // Nothing of the printing before is shown under this one's name while it is fetched, nor can it be changed.
            (Page, loaded) = (null, false);
            Page = await LoadAsync($"run/{Slug}/{Printing}", () => Service.LoadAsync(Press.Record.Id, Slug, Printing));
            conflict = null;
            edits.Clear();
        }

        loaded = true;
        if (Press is not null && Page is null)
        {
            Navigation.NotFound();
        }
    }

    private string StockName(string id) => Open?.Source.Stocks.FirstOrDefault(stock => stock.Id == id)?.Name is { } name ? Apart.Of(name) : id;

    private string ServiceName(string id) => Open?.Source.Postage.FirstOrDefault(service => service.Id == id)?.Name is { } name ? Apart.Of(name) : id;

    private BreakEvenWords PaidFor(RunAnswer answer) => BreakEvenWords.Of(answer.Estimate, Open!.Worked!.Prepared.Job, EditionAddress, Format);

    private List<string> LookHere(WorkedPlan worked, RunAnswer at)
    {
        List<BenchCaution> cautions = [.. worked.Cautions(at.Estimate, Page!.Limits)];
        var unrated = worked.Unrated(cautions);
        return
        [
            .. at.Estimate.Warnings.Select(warning => WarningWords.Of(warning, at.Estimate, Page.Edition.Trim, Format)),
            .. cautions.Select(caution => CautionWords.Of(caution, Page.Limits, Format)),
            .. unrated.Count == 0 ? Array.Empty<string>() : [CautionWords.Unrated(unrated)],
        ];
    }

    private void LookAt(int quantity) => looked = quantity;

    // The sentence follows what is typed; where that is no quantity it says whose figures it shows.
    private void Type(string text)
    {
        var count = Typed.Count(text, Format.Culture);
        var read = count is >= 1 and <= Job.MostCopies;
        refusedTyped = read && Open is { Worked: { } worked } open && worked.Prepared.LandedCost(count!.Value, out _) is { } refused
            ? PlanProblem.Of(refused, open.Source, EditionAddress, Format)
            : null;
        unread = !read;
        typing = read && refusedTyped is null && count != Quantity ? count : null;
    }

    // Keys come faster than saves: of the quantities that pile up only the last is stored.
    private async Task MoveToAsync(int quantity)
    {
        looked = wanted = quantity;
        if (moving)
        {
            return;
        }

        moving = true;
        try
        {
            while (wanted is { } next)
            {
                wanted = null;
                problem = await SaveQuantityAsync(next.ToString(CultureInfo.InvariantCulture), isStep: true);
            }
        }
        finally
        {
            moving = false;
        }
    }

    private Task<string?> SaveQuantityAsync(string typed) => SaveQuantityAsync(typed, isStep: false);

    private async Task<string?> SaveQuantityAsync(string typed, bool isStep)
    {
        if (Typed.Count(typed, Format.Culture) is not { } quantity || quantity is < 1 or > Job.MostCopies)
        {
            return Say($"Write a whole number of copies from 1 to {Format.Count(Job.MostCopies)}.");
        }

        if (Open!.Worked?.Prepared.LandedCost(quantity, out _) is { } refused)
        {
            return PlanProblem.Of(refused, Open.Source, EditionAddress, Format).Words;
        }

        // Looked at until it is stored, so that nothing falls back in between.
        (typing, unread, refusedTyped, looked) = (null, false, null, quantity);
        var problem = await SavePlanAsync(now => now with { Quantity = quantity }, (before, stored) =>
        {
            // A number that was typed is an edit of its own; who goes by keys means where they end.
            if (isStep)
            {
                edits.AddStep(before.Id, before, before.Version, stored, Time.GetUtcNow(), What, Back);
            }
            else
            {
                edits.Add(What(before), before.Id, before.Version, stored, over => Back(before, over));
            }
        });
        looked = wanted;
        return problem;

        string What(PlanRecord first) => Say($"{Words.Copies(first.Quantity, Format.Count)} to {Format.Count(quantity)}");
        Task<SaveAnswer> Back(PlanRecord first, uint over) => TakenBackAsync(() => StoreAsync(first with { Version = over }), first.Id);
    }

    private Task<string?> SavePlanAsync(Func<PlanRecord, PlanRecord> change, string what) => SavePlanAsync(
        change, (before, stored) => edits.Add(what, before.Id, before.Version, stored, over => TakenBackAsync(() => StoreAsync(before with { Version = over }), before.Id)));

    private Task<string?> SavePlanAsync(Func<PlanRecord, PlanRecord> change, Action<PlanRecord, uint> remember)
    {
        var id = Open!.Source.Plan.Id;
        return saves.DoAsync(async () =>
        {
            if (Stored(id) is not { } before)
            {
                return Say($"This plan has been taken out in between.");
            }

            var after = change(before);
            if (PlanVersions.Same(before, after))
            {
                looked = wanted;
                return null;
            }

            var answer = await StoreAsync(after);
            if (answer.Version is { } stored)
            {
                remember(before, stored);
            }

            StateHasChanged();
            return answer.Problem;
        });
    }

    private PlanRecord? Stored(Guid id) => Page?.Plans.FirstOrDefault(plan => plan.Source.Plan.Id == id)?.Source.Plan;

    private async Task<SaveAnswer> StoreAsync(PlanRecord plan)
    {
        var (now, answer, theirs) = await Service.SaveAsync(Press!.Record.Id, plan);
        if (theirs is not null)
        {
            conflict = (plan, theirs);
            now = await Service.CostAsync(Press.Record.Id, theirs.Id);
            edits.Clear();
        }
        else if (answer.Problem is not null)
        {
            return answer;
        }

        Replace(plan.Id, now);
        looked = wanted;
        StateHasChanged();
        return answer;
    }

    private string Called(PlanRecord plan, string shopId)
    {
        var names = Page!.Shops.ToDictionary(shop => shop.Id, shop => shop.Name, StringComparer.Ordinal);
        return names.TryGetValue(plan.ShopId, out var was) && names.TryGetValue(shopId, out var now)
            ? CalledPlan.AtShop(plan.Name, was, now, Page.Plans.Select(other => other.Source.Plan).Where(other => other.Id != plan.Id).Select(other => other.Name))
            : plan.Name;
    }

    private async Task<string?> SaveShopAsync(string shopId)
    {
        var (plan, refused) = await Service.AtShopAsync(Press!.Record.Id, Open!.Source.Plan, shopId);
        return plan is null
            ? refused
            : await SavePlanAsync(now => now with { Name = Called(now, shopId), PriceListId = plan.PriceListId, ShopId = plan.ShopId, Finishing = plan.Finishing, BenchSteps = plan.BenchSteps }, Say("a change", $"shop"));
    }
}
