using PressRun.Engine.Bench;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;
using PressRun.Engine.Tests.Support;

namespace PressRun.Engine.Tests.Copies;

public class PrintingActualTests
{
    private static readonly PrintingActual Evening = new(
        144, 250.10m, 12m, 4.30m, 25m, 12.50m, [new("stitch", 95m, 152, 5), new("fold", 61m, 147, 3)]);

    [Fact]
    public void The_hours_at_their_price_and_all_that_was_paid_are_the_landed_cost()
    {
        Assert.Equal(2.6m, Evening.Hours);
        Assert.Equal(32.50m, Evening.Labour(2));
        Assert.Equal(250.10m - 12m + 4.30m + 25m + 32.50m, Evening.LandedCost(2));
    }

    [Fact]
    public void The_amounts_of_plan_and_printing_each_add_up_to_their_landed_cost()
    {
        var plan = PreparedJob.Prepare(ExampleJob.Create()).Value.Estimate(150).Value;

        var variances = ActualAgainstPlan.Compare(plan, Evening, 2);

        VarianceSubject[] amounts = [VarianceSubject.Shop, VarianceSubject.Labour, VarianceSubject.Consumables, VarianceSubject.FixedCosts];
        var landed = variances.Single(variance => variance.Subject == VarianceSubject.LandedCost);
        Assert.Equal(landed.Planned, variances.Where(variance => amounts.Contains(variance.Subject)).Sum(variance => variance.Planned));
        Assert.Equal(landed.Actual, variances.Where(variance => amounts.Contains(variance.Subject)).Sum(variance => variance.Actual));
        Assert.Equal(plan.Totals.LandedCost, landed.Planned);
        Assert.Equal(-6m, variances[0].Difference);
        Assert.Equal(landed.Actual / 144, variances[^1].Actual);
    }

    [Fact]
    public void A_rate_is_learned_from_all_runs_with_the_set_up_held_fixed()
    {
        BenchStep[] steps = [new("stitch", 10m, 30m, 0m, 0m, 1, 0.02m), new("trim", 5m, 0m, 0m, 20m, 5, 0m)];
        var second = Evening with { Steps = [new("stitch", 40m, 60, 0), new("stitch", 15m, 20, 1), new("glue", 9m, 9, 0)] };

        var learned = Assert.Single(LearnedRate.Of(steps, [Evening, second]));

        // (95 + 55 − 2 × 10) minutes for 152 + 80 copies, of which 6 went wrong.
        Assert.Equal(("stitch", 2, 232L), (learned.Step, learned.Runs, learned.Copies));
        Assert.Equal(130m * 60m / 232m, learned.SecondsPerCopy);
        Assert.Equal(6m / 232m, learned.Spoilage);
        var applied = learned.Applied(steps[0]);
        Assert.Equal((10m, 33.6m, 0.0259m), (applied.SetUpMinutes, applied.SecondsPerCopy, applied.Spoilage));
    }

    [Fact]
    public void A_step_in_which_all_went_wrong_still_gives_rates_that_a_table_can_have()
    {
        var learned = Assert.Single(LearnedRate.Of([new("fold", 99m, 0m, 0m, 0m, 1, 0m)], [Evening with { Steps = [new("fold", 5m, 3, 3)] }]));

        Assert.Equal((0m, 1m), (learned.SecondsPerCopy, learned.Spoilage));
        Assert.True(learned.Applied(new("fold", 99m, 0m, 0m, 0m, 1, 0m)).Spoilage < 1m);
    }
}
