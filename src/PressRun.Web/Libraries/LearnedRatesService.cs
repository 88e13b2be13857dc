using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Engine.Bench;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;

namespace PressRun.Web.Libraries;

/// <summary>Learns the table's times and spoilage from the press's own runs.</summary>
public sealed class LearnedRatesService(CopiesLedgerStore ledger, PlanStore plans)
{
    /// <summary>Most runs that are looked at: the latest.</summary>
    public const int MostRuns = 60;

    /// <summary>What the runs say of the steps, in the order of the steps.</summary>
    public async Task<IReadOnlyList<LearnedRate>> LearnAsync(PressId press, BenchRates rates)
    {
        var printings = (await ledger.PrintingsAsync(press)).Where(printing => printing.Printing.Steps.Count > 0).TakeLast(MostRuns).ToList();
        var jobs = new Dictionary<Guid, PreparedJob?>();
        foreach (var edition in printings.Select(printing => printing.EditionId).Distinct())
        {
            jobs[edition] = await PreparedAsync(press, edition, rates);
        }

        return LearnedRate.Of(rates.Steps, [.. printings.Select(printing => StepRun.Of(printing.Printing, rates.Steps, Rated(jobs[printing.EditionId])))]);
    }

    private static Func<string, int, decimal?> Rated(PreparedJob? job) => (step, copies) =>
        copies > 0 ? job?.BenchSteps(copies).FirstOrDefault(planned => planned.Name == step)?.Minutes : null;

    // What a step takes hangs on the book's pieces and edges: they are those of the plan that its printing goes by, at all of today's steps.
    private async Task<PreparedJob?> PreparedAsync(PressId press, Guid edition, BenchRates rates)
    {
        var all = await plans.OfEditionAsync(press, edition);
        var plan = all.FirstOrDefault(candidate => candidate.Chosen) ?? (all.Count > 0 ? all[0] : null);
        return plan is not null && await plans.SourceAsync(press, plan.Id) is { } source && PreparedJob.Prepare(source.Build() with { Bench = rates }) is { Succeeded: true, Value: var job }
            ? job
            : null;
    }
}
