using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Web.Shared;

namespace PressRun.Web.Libraries;

/// <summary>A run that is being planned, to choose from.</summary>
/// <param name="Plan">Its plan.</param>
/// <param name="Name">Title and printing.</param>
public sealed record PlannedRun(Guid Plan, string Name);

/// <summary>What is done where: names of the shop's operations and of the bench's steps.</summary>
/// <param name="Finishing">What the shop does.</param>
/// <param name="Steps">What is done at the bench.</param>
public sealed record Division(IReadOnlyList<string> Finishing, IReadOnlyList<string> Steps)
{
    /// <summary>The same with one of the shop's operations, or without it.</summary>
    public Division Finish(string operation, bool taken) => this with { Finishing = With(Finishing, operation, taken) };

    /// <summary>The same with one of the bench's steps, or without it.</summary>
    public Division Do(string step, bool taken) => this with { Steps = With(Steps, step, taken) };

    /// <summary>Whether the same is done at the same places.</summary>
    public bool Same(Division other) => Finishing.ToHashSet().SetEquals(other.Finishing) && Steps.ToHashSet().SetEquals(other.Steps);

    private static IReadOnlyList<string> With(IReadOnlyList<string> names, string name, bool taken) =>
        taken ? [.. names, name] : [.. names.Where(other => other != name)];
}

/// <summary>Two ways of finishing a run, to begin with.</summary>
/// <param name="Source">What its costing needs.</param>
/// <param name="AtShop">The way in which the shop binds.</param>
/// <param name="AtBench">The way in which the press does.</param>
public sealed record TwoWays(JobSource Source, Division AtShop, Division AtBench);

/// <summary>Compares what the shop's finishing costs with one's own hours.</summary>
public sealed class BenchOrShopService(PlanStore plans, ShelfQuery shelf)
{
    /// <summary>Runs that are being planned, by title.</summary>
    public async Task<IReadOnlyList<PlannedRun>> PlannedAsync(PressId press)
    {
        const int most = 200;
        var page = await shelf.ShowAsync(press, new ShelfFilter(Take: most));
        return
        [
            .. from title in page.Titles
               from edition in title.Editions
               where edition is { CopiesPrinted: null, Plan: not null }
               select new PlannedRun(edition.Plan!.Id, string.Join(", ", title.Title, Words.Printing(edition.Printing))),
        ];
    }

    /// <summary>
    /// The plan's own way, beside that of another plan of its printing by the same price list which is bound at the other place; where there is none
    /// both are the plan's own, for a person to tick what differs. Null where the plan is gone.
    /// </summary>
    public async Task<TwoWays?> WaysAsync(PressId press, Guid plan)
    {
        if (await plans.SourceAsync(press, plan) is not { } source)
        {
            return null;
        }

        var siblings = await plans.OfEditionAsync(press, source.Edition.Id);
        var atHome = BoundAtHome(source);
        var own = Of(source);
        var other = siblings.Where(sibling => sibling.Id != plan && sibling.PriceListId == source.Plan.PriceListId)
            .Select(sibling => source with { Plan = sibling }).Where(sibling => BoundAtHome(sibling) is { } bound && bound != atHome).Select(Of).FirstOrDefault() ?? own;
        return atHome == false ? new TwoWays(source, own, other) : new TwoWays(source, other, own);
    }

    /// <summary>Compares two divisions of the work of one plan.</summary>
    public static Outcome<BenchAgainstShop> Compare(JobSource source, Division atShop, Division atBench) =>
        BenchAgainstShop.Compare(JobOf(source, atShop), JobOf(source, atBench), source.Plan.Quantity);

    private static bool? BoundAtHome(JobSource source)
    {
        var prepared = PreparedJob.Prepare(source.Build());
        return prepared.Succeeded ? prepared.Value.BoundAtHome : null;
    }

    private static Division Of(JobSource source) => new(
        source.Plan.Finishing ?? [.. source.PriceList.Finishing.Select(operation => operation.Name)],
        source.Plan.BenchSteps ?? [.. source.Bench.Steps.Select(step => step.Name)]);

    private static Job JobOf(JobSource source, Division division) =>
        (source with { Plan = source.Plan with { Finishing = division.Finishing, BenchSteps = division.Steps } }).Build();
}
