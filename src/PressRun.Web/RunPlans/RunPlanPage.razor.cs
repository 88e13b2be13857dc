using System.Globalization;
using Microsoft.AspNetCore.Components;
using PressRun.Data.RunPlans;
using PressRun.Engine.Costing;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.RunPlans;

public sealed partial class RunPlanPage : IDisposable
{
    private const int FirstQuantity = 100;

    private readonly UndoStack edits = new();
    private readonly OneAtATime saves = new();
    private bool loaded;
    private string? problem;
    private int? looked;
    private int? wanted;
    private bool moving;
    private (PlanCosting Costing, int Quantity, RunAnswer? Answer)? answered;

    [Inject]
    private RunPlanService Service { get; set; } = default!;

    [Inject]
    private Handover Handover { get; set; } = default!;

    [Inject]
    private NavigationManager Navigation { get; set; } = default!;

    [CascadingParameter]
    private PressView? Press { get; set; }

    /// <summary>The title in the address.</summary>
    [Parameter]
    public string Slug { get; set; } = "";

    /// <summary>The printing in the address.</summary>
    [Parameter]
    public int Printing { get; set; }

    /// <summary>The plan that is open; the chosen one where none is named.</summary>
    [SupplyParameterFromQuery(Name = "plan")]
    public Guid? PlanId { get; set; }

    private RunPlans.RunPlanPage? Self => this;

    private RunPlanView? Page { get; set; }

    private PressFormat Format => Press!.Format;

    private PlanCosting? Open =>
        Page?.Plans.FirstOrDefault(plan => plan.Source.Plan.Id == PlanId)
        ?? Page?.Plans.FirstOrDefault(plan => plan.Source.Plan.Chosen)
        ?? (Page?.Plans.Count > 0 ? Page.Plans[0] : null);

    private int Pages => Page!.Edition.Parts.Sum(part => part.Part.Pages);

    // The answer at the quantity looked at, or at the plan's own; worked out once for each.
    private RunAnswer? Answer
    {
        get
        {
            if (Open is not { Worked: { } worked } open)
            {
                return null;
            }

            var quantity = looked ?? open.Source.Plan.Quantity;
            if (answered is not { } known || known.Costing != open || known.Quantity != quantity)
            {
                var outcome = worked.At(quantity);
                answered = (open, quantity, outcome.Succeeded ? outcome.Value : null);
            }

            return answered.Value.Answer;
        }
    }

    /// <inheritdoc/>
    public void Dispose() => saves.Dispose();

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        looked = null;
        if (Press is not null && (Page is null || Page.Title.Slug != Slug || Page.Edition.Printing != Printing))
        {
            // Nothing of the printing before is shown under this one's name while it is fetched, nor can it be changed.
            (Page, loaded) = (null, false);
            Page = await Handover.LoadAsync($"run/{Slug}/{Printing}", () => Service.LoadAsync(Press.Record.Id, Slug, Printing));
            edits.Clear();
        }

        loaded = true;
        if (Press is not null && Page is null)
        {
            Navigation.NotFound();
        }
    }

    private string StockName(string id) => Open?.Source.Stocks.FirstOrDefault(stock => stock.Id == id)?.Name ?? id;

    private string ServiceName(string id) => Open?.Source.Postage.FirstOrDefault(service => service.Id == id)?.Name ?? id;

    private void LookAt(int quantity) => looked = quantity;

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
                problem = await SaveQuantityAsync(next.ToString(CultureInfo.InvariantCulture));
            }
        }
        finally
        {
            moving = false;
        }
    }

    private async Task<string?> SaveQuantityAsync(string typed)
    {
        if (Typed.Count(typed, Format.Culture) is not { } quantity || quantity is < 1 or > Job.MostCopies)
        {
            return $"Write a whole number of copies from 1 to {Format.Count(Job.MostCopies)}.";
        }

        var plan = Open!.Source.Plan;
        if (Open.Worked?.Prepared.LandedCost(quantity, out _) is { } refused)
        {
            return refused.Rule;
        }

        return await SavePlanAsync(now => now with { Quantity = quantity }, $"{Format.Count(plan.Quantity)} copies to {Format.Count(quantity)}");
    }

    private Task<string?> SavePlanAsync(Func<PlanRecord, PlanRecord> change, string what)
    {
        var id = Open!.Source.Plan.Id;
        return saves.DoAsync(async () =>
        {
            if (Stored(id) is not { } before)
            {
                return "This plan has been taken out in between.";
            }

            if (await StoreAsync(change(before)) is { } refused)
            {
                return refused;
            }

            edits.Add(what, () => saves.DoAsync(() => StoreAsync(before with { Version = Stored(id)?.Version ?? before.Version })));
            StateHasChanged();
            return null;
        });
    }

    private PlanRecord? Stored(Guid id) => Page?.Plans.FirstOrDefault(plan => plan.Source.Plan.Id == id)?.Source.Plan;

    private async Task<string?> StoreAsync(PlanRecord plan)
    {
        var (now, refused, theirs) = await Service.SaveAsync(Press!.Record.Id, plan);
        if (theirs is not null)
        {
            now = await Service.CostAsync(Press.Record.Id, theirs.Id);
            edits.Clear();
        }

        Replace(plan.Id, now);
        looked = wanted;
        StateHasChanged();
        return refused;
    }

    private async Task<string?> SaveShopAsync(string shopId)
    {
        var (plan, refused) = await Service.AtShopAsync(Press!.Record.Id, Open!.Source.Plan, shopId);
        return plan is null
            ? refused
            : await SavePlanAsync(now => now with { PriceListId = plan.PriceListId, ShopId = plan.ShopId, Finishing = plan.Finishing }, "shop");
    }

    private async Task StartAsync()
    {
        (var now, problem) = await Service.StartAsync(Press!.Record.Id, Page!.Edition, FirstQuantity);
        if (now is not null)
        {
            Page = Page with { Plans = [.. Page.Plans, now] };
        }
    }

    private async Task TryBesideAsync()
    {
        var name = $"{Open!.Source.Plan.Name}, another way";
        if (await Service.TryBesideAsync(Press!.Record.Id, Open.Source.Plan, name) is { } now)
        {
            Page = Page! with { Plans = [.. Page.Plans, now] };
            Navigation.NavigateTo(Address(now.Source.Plan.Id));
        }
    }

    private async Task ChooseAsync()
    {
        await Service.ChooseAsync(Press!.Record.Id, Open!.Source.Plan.Id);
        Page = await Service.LoadAsync(Press.Record.Id, Slug, Printing);
    }

    private async Task TakeOutAsync()
    {
        await Service.DeleteAsync(Press!.Record.Id, Open!.Source.Plan.Id);
        Replace(Open.Source.Plan.Id, null);
        edits.Clear();
        Navigation.NavigateTo($"titles/{Slug}/{Printing.ToString(CultureInfo.InvariantCulture)}/run");
    }

    private void Replace(Guid id, PlanCosting? now) =>
        Page = Page! with { Plans = [.. Page.Plans.Select(plan => plan.Source.Plan.Id == id ? now : plan).OfType<PlanCosting>()] };

    private string Address(Guid plan) => $"titles/{Slug}/{Printing.ToString(CultureInfo.InvariantCulture)}/run?plan={plan}";
}
