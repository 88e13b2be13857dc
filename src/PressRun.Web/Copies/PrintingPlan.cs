using PressRun.Data.RunPlans;
using PressRun.Engine.Bench;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;

namespace PressRun.Web.Copies;

/// <summary>A printing as its plan has it: what the fields of a printing are held against.</summary>
/// <param name="Name">Name of the plan.</param>
/// <param name="Estimate">The plan's estimate at its quantity.</param>
/// <param name="Steps">What each step at the table takes.</param>
/// <param name="HourlyRate">Price of an hour at the table.</param>
/// <param name="TaxReclaimed">Tax of the shop that comes back.</param>
public sealed record PrintingPlan(string Name, Estimate Estimate, IReadOnlyList<PlannedStep> Steps, decimal HourlyRate, decimal TaxReclaimed)
{
    /// <summary>Works a plan out; null where it cannot be worked out as it stands.</summary>
    public static PrintingPlan? Of(JobSource source) =>
        PreparedJob.Prepare(source.Build()) is { Succeeded: true, Value: var prepared } && prepared.Estimate(source.Plan.Quantity) is { Succeeded: true, Value: var estimate }
            ? new PrintingPlan(
                source.Plan.Name, estimate, prepared.BenchSteps(estimate.CopiesToStart), prepared.Job.Bench.HourlyRate, prepared.Job.ReclaimTax ? estimate.Totals.Tax : 0m)
            : null;

    /// <summary>A printing held against this plan.</summary>
    /// <param name="actual">What the printing really was.</param>
    /// <param name="minorUnits">Decimals of the currency.</param>
    public PrintingHeld Against(PrintingActual actual, int minorUnits) => new(
        ActualAgainstPlan.Compare(Estimate, actual, minorUnits), ActualAgainstPlan.Invoice(Estimate, actual), ActualAgainstPlan.WhyUnitCost(Estimate, actual, minorUnits),
        [.. Steps.Where(planned => planned.Minutes > 0m && actual.Steps.All(step => step.Step != planned.Name))]);
}

/// <summary>A printing held against its plan.</summary>
/// <param name="Variances">Every figure that both have.</param>
/// <param name="Invoice">The parts of the shop's invoice; empty where only its total was written down.</param>
/// <param name="Why">What other costs than planned, and other copies, make of what a copy cost.</param>
/// <param name="Untimed">Planned steps of which no time was written down: their hours are missing in what it cost, which so looks cheaper than it was.</param>
public sealed record PrintingHeld(IReadOnlyList<Variance> Variances, IReadOnlyList<InvoiceVariance> Invoice, (decimal ByCost, decimal ByCopies) Why, IReadOnlyList<PlannedStep> Untimed)
{
    /// <summary>Good copies.</summary>
    public Variance Copies => Of(VarianceSubject.GoodCopies);

    /// <summary>All that the printing cost.</summary>
    public Variance Landed => Of(VarianceSubject.LandedCost);

    /// <summary>What a good copy cost.</summary>
    public Variance Each => Of(VarianceSubject.UnitCost);

    private Variance Of(VarianceSubject subject) => Variances.Single(variance => variance.Subject == subject);
}
