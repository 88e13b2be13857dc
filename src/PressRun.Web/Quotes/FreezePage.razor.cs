using System.Globalization;
using Microsoft.AspNetCore.Components;
using PressRun.Data.Quotes;
using PressRun.Data.RunPlans;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Quotes;

public sealed partial class FreezePage
{
    private const int UsualDays = 30;

    private readonly Once once = new();
    private FreezeForm form = new();
    private FieldEdit? noteField;
    private DayInput? untilField;
    private bool loaded;
    private bool recalling;
    private bool recalled;
    private string? problem;
    private IReadOnlyList<QuoteEvent> said = [];

    [Inject]
    private QuoteService Service { get; set; } = default!;

    [Inject]
    private Drafts Drafts { get; set; } = default!;

    /// <summary>The plan; the chosen one where none is named.</summary>
    [SupplyParameterFromQuery(Name = "plan")]
    public string? PlanIdAsked { get; set; }

    private Guid? PlanId => FromAddress.Id(PlanIdAsked);

    /// <summary>Number of the quote whose place this one takes.</summary>
    [SupplyParameterFromQuery(Name = "replaces")]
    public string? ReplacesAsked { get; set; }

    private int? Replaces => FromAddress.Number(ReplacesAsked);

    private FreezeView? View { get; set; }

    private PlanRecord Plan => View!.Costing.Source.Plan;

    private string BillKey => $"quote-bill/{Plan.Id}/rows";

    private string RunAddress => $"{EditionAddress}/run" + (View is null ? "" : $"?plan={Plan.Id}");

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (Press is not null && View is null)
        {
            View = await LoadAsync($"freeze/{Slug}/{Printing}/{PlanId}/{Replaces}", () => Service.LoadAsync(Press.Record.Id, Slug, Printing, PlanId, Replaces));
            if (View is null)
            {
                Navigation.NotFound();
            }

            form = FreezeForm.From(View?.Replaces, Service.Today.AddDays(UsualDays));
        }

        loaded = true;
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (View is null || recalling)
        {
            return;
        }

        recalling = true;
        if (await Drafts.RecallAsync(BillKey) is { } draft && DraftRows.Read(draft, BillRow.Fields) is { } rows)
        {
            form.Bill.Clear();
            form.Bill.AddRange(rows.Select(BillRow.Of));
            recalled = true;
            StateHasChanged();
        }
    }

    private Task KeepBillAsync() => Drafts.KeepAsync(BillKey, DraftRows.Write(form.Bill.Select(row => row.Texts)));

    private Task<string?> Keep(Action change)
    {
        change();
        StateHasChanged();
        return Task.FromResult<string?>(null);
    }

    private Task FreezeAsync() => once.DoAsync(async () =>
    {
        problem = null;
        if (!await noteField!.SaveTypedAsync())
        {
            return false;
        }

        if (untilField?.Problem is { } unread)
        {
            problem = unread;
            return false;
        }

        var (terms, wrong) = form.Read(Format.Culture);
        if (terms is null)
        {
            problem = wrong;
            return false;
        }

        var done = await Service.FreezeAsync(Press!.Record.Id, form.Id, View!, terms, Press.Name);
        (problem, said) = (done.Problem, []);
        if (done.Now is { } quote)
        {
            await Drafts.ForgetAsync(BillKey);
            Navigation.NavigateTo(string.Create(CultureInfo.InvariantCulture, $"quotes/{quote.Number}"));
        }
        else if (await Service.SinceAsync(Press.Record.Id, View!) is var (now, since))
        {
            // Shown here they are seen, so that the next time is meant.
            (View, said) = (View! with { Replaces = now }, since);
        }

        return done.Now is not null;
    });
}
