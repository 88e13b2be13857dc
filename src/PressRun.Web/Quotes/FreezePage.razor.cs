using System.Globalization;
using Microsoft.AspNetCore.Components;
using PressRun.Data.RunPlans;
using PressRun.Engine.Quoting;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Quotes;

public sealed partial class FreezePage
{
    private const int UsualDays = 30;

    private readonly Once once = new();
    private FreezeForm form = new();
    private FieldEdit? noteField;
    private bool loaded;
    private string? problem;

    [Inject]
    private QuoteService Service { get; set; } = default!;

    /// <summary>The plan; the chosen one where none is named.</summary>
    [SupplyParameterFromQuery(Name = "plan")]
    public Guid? PlanId { get; set; }

    /// <summary>Number of the quote whose place this one takes.</summary>
    [SupplyParameterFromQuery(Name = "replaces")]
    public int? Replaces { get; set; }

    private FreezeView? View { get; set; }

    private PlanRecord Plan => View!.Costing.Source.Plan;

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

    private static bool IsOne(BillRow row) => row.Carries.Trim() == "1";

    private void AddPart()
    {
        if (form.Bill.Count == 0)
        {
            form.Bill.Add(new BillRow { Name = Press!.Name });
        }

        form.Bill.Add(new BillRow());
    }

    private IReadOnlyList<decimal>? Amounts(decimal total) =>
        form.Read(Format.Culture).Terms is { } terms && BillSplit.Of(total, terms.Bill, Format.Currency) is { Succeeded: true } split ? split.Value.Amounts : null;

    private string? Split(decimal total) => form.Read(Format.Culture) switch
    {
        ({ } terms, _) => BillSplit.Of(total, terms.Bill, Format.Currency).Problems is [var first, ..] ? first.Rule : null,
        var (_, wrong) => wrong,
    };

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

        var (terms, wrong) = form.Read(Format.Culture);
        if (terms is null)
        {
            problem = wrong;
            return false;
        }

        var done = await Service.FreezeAsync(Press!.Record.Id, form.Id, View!, terms, Press.Name);
        problem = done.Problem;
        if (done.Now is { } quote)
        {
            Navigation.NavigateTo(string.Create(CultureInfo.InvariantCulture, $"quotes/{quote.Number}"));
        }

        return done.Now is not null;
    });
}
