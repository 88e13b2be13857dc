using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Engine.Costing;
using PressRun.Engine.Paper;
using PressRun.Web.RunPlans;

namespace PressRun.Web.Tests.Support;

/// <summary>Plans of the invented run.</summary>
public static class APlan
{
    /// <summary>What a plan is costed from.</summary>
    public static JobSource Source(int quantity = 100, Func<PlanRecord, PlanRecord>? change = null)
    {
        var press = new PressRecord(PressId.New(), "A press", "USD", UnitSystem.Metric, PaperRegion.Iso, false, 1);
        var plan = new PlanRecord(
            Guid.NewGuid(), Guid.NewGuid(), "A plan", Guid.NewGuid(), "willow", ARun.Day, quantity, null, new Dictionary<Guid, string>(), null, null, true, 1);
        return new JobSource(press, Records.Edition(), change?.Invoke(plan) ?? plan, ARun.Shop, ARun.Stocks, ARun.Job.Bench, [], [], ARun.Job.Channels);
    }

    /// <summary>A plan with its answer at its own quantity.</summary>
    public static (PlanCosting Costing, RunAnswer Answer) Worked(JobSource source)
    {
        var costing = PlanCosting.Of(source);
        return (costing, costing.Worked!.At(source.Plan.Quantity).Value);
    }

    /// <summary>The estimate of a job at its own quantity.</summary>
    public static Estimate Estimate(Job job) => PreparedJob.Prepare(job).Value.Estimate(job.Quantity).Value;
}
