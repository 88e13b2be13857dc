using PressRun.Data.RunPlans;
using PressRun.Engine.Costing;
using PressRun.Web.Charts;

namespace PressRun.Web.RunPlans;

/// <summary>A plan with its job prepared and the staircase over its range, both worked out when they are first looked at: of the plans of a printing a
/// page shows one or two. Immutable.</summary>
public sealed class PlanCosting
{
    private readonly Lazy<Outcome<WorkedPlan>> worked;

    private PlanCosting(JobSource source) => (Source, worked) = (source, new Lazy<Outcome<WorkedPlan>>(() => WorkOut(source)));

    /// <summary>What it is worked out from.</summary>
    public JobSource Source { get; }

    /// <summary>What stands in the way; empty where <see cref="Worked"/> is there.</summary>
    public IReadOnlyList<Problem> Problems => worked.Value.Problems;

    /// <summary>The job and its staircase; null where something stands in the way.</summary>
    public WorkedPlan? Worked => worked.Value.Succeeded ? worked.Value.Value : null;

    /// <summary>The costing of a plan.</summary>
    public static PlanCosting Of(JobSource source) => new(source);

    private static Outcome<WorkedPlan> WorkOut(JobSource source)
    {
        var prepared = PreparedJob.Prepare(source.Build());
        return prepared.Succeeded
            ? WorkedPlan.Of(prepared.Value, ShownRange.Of(prepared.Value, source.Plan.Quantity, source.Plan.Ladder))
            : Outcome<WorkedPlan>.Refused(prepared.Problems);
    }
}
