using System.Globalization;
using Microsoft.AspNetCore.Components;
using PressRun.Data.RunPlans;
using PressRun.Engine.Costing;
using PressRun.Engine.Reprint;
using PressRun.Web.Charts;
using PressRun.Web.Editions;
using PressRun.Web.RunPlans;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Reprint;

public sealed partial class ReprintPage
{
    private readonly UndoStack edits = new();
    private readonly OneAtATime saves = new();
    private bool loaded;
    private string? problem;
    private int? looked;

    // What is looked at is being typed, and not dragged.
    private bool typing;
    private (PlanRecord Mine, PlanRecord Theirs)? conflict;
    private (JobSource Source, Outcome<ReprintWorked> Worked)? worked;
    private (ReprintWorked Worked, IReadOnlyList<ReprintPoint> Points)? points;
    private (ReprintWorked Worked, int Quantity, NumberSeen? Said)? seen;

    [Inject]
    private ReprintService Service { get; set; } = default!;

    /// <summary>The plan that is open; the chosen one where none is named.</summary>
    [SupplyParameterFromQuery(Name = "plan")]
    public string? PlanIdAsked { get; set; }

    private Guid? PlanId => FromAddress.Id(PlanIdAsked);

    private ReprintView? View { get; set; }

    private JobSource? Open =>
        View?.Plans.FirstOrDefault(source => source.Plan.Id == PlanId)
        ?? View?.Plans.FirstOrDefault(source => source.Plan.Chosen)
        ?? (View?.Plans.Count > 0 ? View.Plans[0] : null);

    private Outcome<ReprintWorked> Outcome
    {
        get
        {
            if (worked is not { } known || known.Source != Open)
            {
                worked = (Open!, ReprintWorked.Of(Open!, View!.Ledger));
            }

            return worked.Value.Worked;
        }
    }

    private ReprintWorked? Worked => Outcome.Succeeded ? Outcome.Value : null;

    // Worked out once for each quantity.
    private NumberSeen? Seen
    {
        get
        {
            var quantity = looked ?? Open!.Plan.Quantity;
            if (Worked is { } now && (seen is not { } known || known.Worked != now || known.Quantity != quantity))
            {
                seen = (now, quantity, now.At(quantity));
            }

            return Worked is null ? null : seen?.Said;
        }
    }

    // What does not change with the quantity is kept while one drags: the picture knows its points by their list.
    private IReadOnlyList<ReprintPoint> Points
    {
        get
        {
            if (points is not { } known || known.Worked != Worked)
            {
                points = (Worked!, [.. Worked!.Plan.Curve.TakeWhile(point => point.Quantity <= Worked.LastShown)]);
            }

            return points.Value.Points;
        }
    }

    private IReadOnlyList<MarkedQuantity> Marks
    {
        get
        {
            var plan = Worked!.Plan;
            var marks = new List<MarkedQuantity> { new(plan.BestQuantity, Say("number of copies in a picture", $"best")) };
            if (plan.WithinCash.Quantity != plan.BestQuantity)
            {
                marks.Add(new MarkedQuantity(plan.WithinCash.Quantity, Say($"best for the cash")));
            }

            if (Open!.Plan.Quantity != plan.BestQuantity)
            {
                marks.Add(new MarkedQuantity(Open.Plan.Quantity, Say($"your number")));
            }

            return marks;
        }
    }

    private IReadOnlyList<PlanProblem> Problems => [.. Outcome.Problems.Select(found => PlanProblem.Of(found, Open!, Address(null), Format))];

    private IReadOnlyList<(string, string, string)> Differences => conflict is var (mine, theirs)
        ? PlanVersions.Differences(mine, theirs, Open!, View!.Shops, Format)
        : [];

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        (looked, typing) = (null, false);
        if (Press is not null && (View is null || View.Title.Slug != Slug || View.Edition.Printing != Printing))
        {
            (View, loaded, conflict) = (null, false, null);
            View = await LoadAsync($"reprint/{Slug}/{Printing}", () => Service.LoadAsync(Press.Record.Id, Slug, Printing));
            edits.Clear();
        }

        loaded = true;
        if (Press is not null && View is null)
        {
            Navigation.NotFound();
        }
    }

    private string Address(string? page) => page is null ? EditionAddress : $"{EditionAddress}/{page}";

    private int Shown => typing ? Open!.Plan.Quantity : looked ?? Open!.Plan.Quantity;

    private void LookAt(int quantity) => (looked, typing) = (quantity, false);

    private void Type(string text)
    {
        typing = true;
        looked = Typed.Count(text, Format.Culture) is { } quantity && quantity is >= 1 and <= Job.MostCopies && Worked is { } worked && worked.Refusal(quantity) is null ? quantity : null;
    }

    private async Task MoveToAsync(int quantity)
    {
        // A plan is of one copy or more: none can be looked at, and is done by printing nothing.
        problem = quantity == 0 ? Say($"To print none, leave the plan as it is.") : await SaveQuantityAsync(quantity.ToString(CultureInfo.InvariantCulture));
        if (quantity == 0)
        {
            looked = null;
        }
    }

    private async Task<string?> SaveQuantityAsync(string typed)
    {
        if (Typed.Count(typed, Format.Culture) is not { } quantity || quantity is < 1 or > Job.MostCopies)
        {
            return Say($"Write a whole number of copies from 1 to {Format.Count(Job.MostCopies)}.");
        }

        if (Worked?.Refusal(quantity) is { } refusal)
        {
            return PlanProblem.Of(refusal, Open!, Address(null), Format).Words;
        }

        (looked, typing) = (quantity, false);
        var said = await SaveAsync(plan => plan with { Quantity = quantity }, plan => Say($"{Words.Copies(plan.Quantity, Format.Count)} to {Format.Count(quantity)}"));
        looked = null;
        return said;
    }

    // Every change takes the ledger's figures of today with it.
    private Task<string?> ChangeAsync(Func<PlanReprint, PlanReprint> change, string what) => SaveAsync(
        plan => plan with { Reprint = ReprintWorked.Settled(change(plan.Reprint ?? ReprintWorked.First(plan, View!.Ledger)), Open! with { Plan = plan }, View!.Ledger) }, _ => what);

    private Task<string?> SaveAsync(Func<PlanRecord, PlanRecord> change, Func<PlanRecord, string> what)
    {
        var id = Open!.Plan.Id;
        return saves.DoAsync(async () =>
        {
            if (Stored(id) is not { } before)
            {
                return Say($"This plan has been taken out in between.");
            }

            var after = change(before);
            var answer = PlanVersions.Same(before, after) ? default : await StoreAsync(after);
            if (answer.Version is { } stored)
            {
                edits.Add(what(before), id, before.Version, stored, over => saves.DoAsync(() => StoreAsync(before with { Version = over })));
            }

            StateHasChanged();
            return answer.Problem;
        });
    }

    private PlanRecord? Stored(Guid id) => View?.Plans.FirstOrDefault(source => source.Plan.Id == id)?.Plan;

    private async Task<SaveAnswer> StoreAsync(PlanRecord plan)
    {
        var (now, answer, theirs) = await Service.SaveAsync(Press!.Record.Id, plan);
        if (answer.Problem is not null)
        {
            return answer;
        }

        if (theirs is not null)
        {
            conflict = (plan, theirs);
            edits.Clear();
        }

        View = View!.With(plan.Id, now);
        StateHasChanged();
        return answer;
    }

    private async Task KeepMineAsync()
    {
        var (mine, theirs) = conflict!.Value;
        conflict = null;
        problem = (await saves.DoAsync(() => StoreAsync(mine with { Version = theirs.Version }))).Problem;
    }
}
