using PressRun.Data.RunPlans;
using PressRun.Web.Shared;

namespace PressRun.Web.RunPlans;

/// <content>Plans added, chosen, taken out and taken back, and the choice between two people's versions of one.</content>
public sealed partial class RunPlanPage
{
    private readonly Once adding = new();
    private (PlanRecord Mine, PlanRecord Theirs)? conflict;

    private IReadOnlyList<(string, string, string)> Differences => conflict is var (mine, theirs) && Page!.Plans.FirstOrDefault(plan => plan.Source.Plan.Id == mine.Id) is { } costing
        ? PlanVersions.Differences(mine, theirs, costing.Source, Page.Shops, Format)
        : [];

    private Task StartAsync() => adding.DoAsync(async () =>
    {
        (var now, problem) = await Service.StartAsync(Press!.Record.Id, Page!.Edition, FirstQuantity);
        if (now is not null)
        {
            Page = Page with { Plans = [.. Page.Plans, now] };
        }

        return now is not null;
    });

    private Task TryBesideAsync() => adding.DoAsync(async () =>
    {
        var from = Open!.Source.Plan;
        if (await Service.TryBesideAsync(Press!.Record.Id, from, string.Join(", ", from.Name, Say($"another way"))) is { } now)
        {
            var added = now.Source.Plan;
            Page = Page! with { Plans = [.. Page.Plans, now] };
            edits.Add(Say($"trying {added.Name}"), () => TakenBackAsync(() => OutAsync(added with { Version = edits.Standing(added.Id, added.Version) }), from.Id));
            Navigation.NavigateTo(Address(added.Id));
            return true;
        }

        return false;
    });

    private async Task ChooseAsync()
    {
        var (chosen, before) = (Open!.Source.Plan, Page!.Plans.FirstOrDefault(plan => plan.Source.Plan.Chosen)?.Source.Plan);
        await Service.ChooseAsync(Press!.Record.Id, chosen.Id);
        await AgainAsync();
        if (before is not null)
        {
            edits.Add(Say($"going by {chosen.Name}"), () => saves.DoAsync(async () =>
            {
                var refused = await Service.ChooseAgainAsync(Press.Record.Id, before.Id, insteadOf: chosen.Id);
                await AgainAsync();
                if (refused is not null)
                {
                    edits.Clear();
                }

                return refused;
            }));
        }
    }

    // To be chosen, or no longer, is a new version of a plan that says what it said, unless somebody else has changed it too.
    private async Task AgainAsync()
    {
        var known = Page!.Plans;
        Page = await Service.LoadAsync(Press!.Record.Id, Slug, Printing);
        foreach (var was in known.Select(plan => plan.Source.Plan))
        {
            if (Stored(was.Id) is { } now && PlanVersions.Same(was with { Chosen = now.Chosen }, now))
            {
                edits.SaysAgain(was.Id, was.Version, now.Version);
            }
        }
    }

    private async Task TakeOutAsync()
    {
        var plan = Open!.Source.Plan;
        var place = Page!.Plans.TakeWhile(other => other.Source.Plan.Id != plan.Id).Count();
        var after = place > 0 ? Page.Plans[place - 1].Source.Plan.Id : (Guid?)null;
        problem = await saves.DoAsync(() => OutAsync(plan));
        if (problem is null)
        {
            edits.Add(Say($"taking out {plan.Name}"), () => TakenBackAsync(() => BackAsync(plan, place, after), plan.Id));
            Navigation.NavigateTo(Address(null));
        }
    }

    private async Task<string?> OutAsync(PlanRecord plan)
    {
        if (await Service.DeleteAsync(Press!.Record.Id, plan) is { } refused)
        {
            // What somebody else made of it is shown, so that one can look at it again and then take it out.
            if (await Service.CostAsync(Press.Record.Id, plan.Id) is { } theirs)
            {
                Replace(plan.Id, theirs);
            }

            edits.Clear();
            StateHasChanged();
            return refused;
        }

        Replace(plan.Id, null);
        return null;
    }

    private async Task<string?> BackAsync(PlanRecord plan, int place, Guid? after)
    {
        if (await Service.PutBackAsync(Press!.Record.Id, plan, after) is not { } now)
        {
            edits.Clear();
            return Say($"The plan could not be put back: what it was made of is gone.");
        }

        edits.SaysAgain(plan.Id, plan.Version, now.Source.Plan.Version);
        Page = Page! with { Plans = [.. Page.Plans.Take(place), now, .. Page.Plans.Skip(place)] };
        return null;
    }

    // Shows the plan that an edit was about once it is taken back.
    private async Task<SaveAnswer> TakenBackAsync(Func<Task<SaveAnswer>> work, Guid plan)
    {
        var answer = await saves.DoAsync(work);
        if (answer.Problem is null && Open?.Source.Plan.Id != plan)
        {
            Navigation.NavigateTo(Address(plan));
        }

        return answer;
    }

    private async Task<string?> TakenBackAsync(Func<Task<string?>> work, Guid plan) => (await TakenBackAsync(async () => new SaveAnswer(await work(), null), plan)).Problem;

    private async Task KeepMineAsync()
    {
        var (mine, theirs) = conflict!.Value;
        conflict = null;
        problem = (await saves.DoAsync(() => StoreAsync(mine with { Version = theirs.Version }))).Problem;
    }

    private void TakeTheirs() => conflict = null;

    private void Replace(Guid id, PlanCosting? now) =>
        Page = Page! with { Plans = [.. Page.Plans.Select(plan => plan.Source.Plan.Id == id ? now : plan).OfType<PlanCosting>()] };

    private string Address(Guid? plan) =>
        $"{EditionAddress}/run{(plan is { } named ? $"?plan={named}" : "")}";
}
