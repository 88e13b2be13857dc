using System.Globalization;
using PressRun.Data;
using PressRun.Data.Bench;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Tallies;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Tallies;

/// <summary>The work of a plan, to be tallied.</summary>
/// <param name="PlanId">The plan.</param>
/// <param name="Plan">Its name.</param>
/// <param name="Copies">Copies that come to the table: those started, less what the shop usually spoils.</param>
/// <param name="Wanted">Good copies wanted.</param>
/// <param name="Steps">The steps at the press's own table, in order; none where the shop does it all.</param>
public sealed record PlannedWork(Guid PlanId, string Plan, long Copies, int Wanted, IReadOnlyList<TallyStep> Steps);

/// <summary>A printing at the binding table.</summary>
/// <param name="Title">The title.</param>
/// <param name="Edition">The printing.</param>
/// <param name="Planned">The work of its plan; null where it has none that can be worked out.</param>
/// <param name="Latest">The tally begun last; null for none.</param>
/// <param name="Now">Its sums.</param>
public sealed record TallyView(TitleRecord Title, EditionRecord Edition, PlannedWork? Planned, TallyWhole? Latest, TallyNow? Now)
{
    /// <summary>True while the tally goes on.</summary>
    public bool GoesOn => Latest is { Tally.Written: null };
}

/// <summary>Begins tallies, writes them down and sums them up for their page.</summary>
public sealed class TallyService(TitleStore titles, EditionStore editions, PlanStore plans, BenchLimitsStore limits, TallyStore tallies, TimeProvider time)
{
    private const int MinuteDecimals = 2;

    private long Now => time.GetUtcNow().ToUnixTimeMilliseconds();

    /// <summary>What the page shows, or null where there is no such printing.</summary>
    public async Task<TallyView?> LoadAsync(PressId press, string slug, int printing, Guid? planId)
    {
        if (await titles.FindAsync(press, slug) is not { } title || await editions.FindAsync(press, slug, printing) is not { } edition)
        {
            return null;
        }

        var at = Now;
        var all = await plans.OfEditionAsync(press, edition.Id);
        var plan = all.FirstOrDefault(candidate => candidate.Id == planId) ?? all.FirstOrDefault(candidate => candidate.Chosen) ?? (all.Count > 0 ? all[0] : null);
        var latest = await tallies.LatestAsync(press, edition.Id);
        return new TallyView(
            title, edition, plan is not null && await plans.SourceAsync(press, plan.Id) is { } source ? WorkOf(source, await LimitsAsync(press)) : null, latest, latest is null ? null : TallyNow.Of(latest, at));
    }

    /// <summary>Begins a tally of a plan's work as it is planned now. While another of the printing goes on, that one is gone on with.</summary>
    /// <returns>What became of it; null where there is no such plan of this printing.</returns>
    public async Task<TallyBegun?> BeginAsync(PressId press, TallyBegin asked, CultureInfo culture)
    {
        if (await plans.SourceAsync(press, asked.Plan) is not { } source || source.Edition.Id != asked.Edition || WorkOf(source, await LimitsAsync(press)) is not { } work)
        {
            return null;
        }

        if (Typed.Count(asked.Copies, culture) is not { } copies || Typed.Count(asked.Wanted, culture) is not { } wanted)
        {
            return new TallyBegun(Say($"Write how many copies lie on the table, and how many good ones are wanted, such as 110 and 100."));
        }

        return await tallies.BeginAsync(press, new NewTally(asked.Id, asked.Edition, work.Plan, copies, wanted, work.Steps)) switch
        {
            SaveResult<TallyRecord>.Saved => new TallyBegun(null),
            SaveResult<TallyRecord>.Refused refused => new TallyBegun(Words.Standing(refused.Problems)),
            _ => null,
        };
    }

    /// <summary>Writes entries down, and answers each with how the tally stands then; null where there is no such tally.</summary>
    public async Task<TallyAnswer?> TakeAsync(PressId press, TallyEntries sent, CancellationToken cancel) =>
        await tallies.WriteAsync(press, sent.Tally, [.. sent.Entries.Select(entry => entry.ToNew())], cancel) is { } outcomes && await StandAsync(press, sent.Tally, cancel) is { } now
            ? new TallyAnswer([.. outcomes.Select(outcome => outcome with { Problem = outcome.Problem is { } problem ? SayWhole(problem) : null })], now)
            : null;

    /// <summary>True, with how a tally stands where anything is new since a mark; false where there is no such tally.</summary>
    public async Task<(bool IsThere, TallyNow? News)> NewsAsync(PressId press, Guid tally, string since, CancellationToken cancel)
    {
        if (await tallies.MarkAsync(press, tally, cancel) is not { } mark)
        {
            return (false, null);
        }

        return (true, TallyNow.MarkOf(mark.Lines, mark.Written is not null) == since ? null : await StandAsync(press, tally, cancel));
    }

    /// <summary>The work of a plan at its quantity; null where it cannot be worked out as it stands.</summary>
    /// <param name="source">The plan.</param>
    /// <param name="limits">From where on the press scores what it folds.</param>
    public static PlannedWork? WorkOf(JobSource source, BenchLimits limits)
    {
        if (PreparedJob.Prepare(source.Build()) is not { Succeeded: true, Value: var prepared } || prepared.Estimate(source.Plan.Quantity) is not { Succeeded: true, Value: var estimate })
        {
            return null;
        }

        var scored = BenchCaution.Of(prepared, estimate, limits).Any(caution => caution.Code == BenchCautionCode.FoldUnscored);
        var work = WorkList.Of(prepared, estimate.CopiesToStart, source.Plan.Quantity, scored);
        return new PlannedWork(
            source.Plan.Id, source.Plan.Name, work.Count > 0 ? work[0].Copies : estimate.CopiesToStart, source.Plan.Quantity,
            [.. work.Select(step => new TallyStep(step.Name ?? Words.Of(step.Kind), step.Kind, step.Spoilage, step.Minutes is { } minutes ? decimal.Round(minutes, MinuteDecimals) : null))]);
    }

    private async Task<BenchLimits> LimitsAsync(PressId press) => (await limits.LoadAsync(press)).Item;

    private async Task<TallyNow?> StandAsync(PressId press, Guid tally, CancellationToken cancel)
    {
        var at = Now;
        return await tallies.FindAsync(press, tally, cancel) is { } whole ? TallyNow.Of(whole, at) : null;
    }
}
