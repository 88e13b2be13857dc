using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;

namespace PressRun.Web.Libraries;

/// <summary>A run that is being planned, to choose from.</summary>
/// <param name="Plan">Its plan.</param>
/// <param name="Name">Title and printing.</param>
public sealed record PlannedRun(Guid Plan, string Name);

/// <summary>What is done where: names of the shop's operations and of the bench's steps.</summary>
/// <param name="Finishing">What the shop does.</param>
/// <param name="Steps">What is done at the bench.</param>
public sealed record Division(IReadOnlyList<string> Finishing, IReadOnlyList<string> Steps);

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
               where edition.Edition.CopiesPrinted is null && edition.Plan is not null
               select new PlannedRun(edition.Plan!.Id, $"{title.Title.Title}, printing {edition.Edition.Printing}"),
        ];
    }

    /// <summary>All that a plan's costing needs; null where it is gone.</summary>
    public Task<JobSource?> SourceAsync(PressId press, Guid plan) => plans.SourceAsync(press, plan);

    /// <summary>Compares two divisions of the work of one plan.</summary>
    public static Outcome<BenchAgainstShop> Compare(JobSource source, Division atShop, Division atBench) =>
        BenchAgainstShop.Compare(JobOf(source, atShop), JobOf(source, atBench), source.Plan.Quantity);

    private static Job JobOf(JobSource source, Division division) =>
        (source with { Plan = source.Plan with { Finishing = division.Finishing, BenchSteps = division.Steps } }).Build();
}
