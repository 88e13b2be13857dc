using PressRun.Data.RunPlans;
using PressRun.Engine.Costing;

namespace PressRun.Browser.Tests.Running;

/// <summary>What the engine says, asked directly: what a page must show.</summary>
internal static class Reckoned
{
    /// <summary>The plan at its own quantity, or at another.</summary>
    public static Estimate At(JobSource source, int? quantity = null)
    {
        var estimate = Prepared(source).Estimate(quantity ?? source.Plan.Quantity);
        Assert.True(estimate.Succeeded, string.Join(" ", estimate.Problems.Select(problem => problem.Rule)));
        return estimate.Value;
    }

    /// <summary>The plan's job, prepared.</summary>
    public static PreparedJob Prepared(JobSource source)
    {
        var prepared = PreparedJob.Prepare(source.Build());
        Assert.True(prepared.Succeeded, string.Join(" ", prepared.Problems.Select(problem => problem.Rule)));
        return prepared.Value;
    }
}
