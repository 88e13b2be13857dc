using PressRun.Engine.Costing;
using PressRun.Engine.Reprint;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Reprint.ReprintPlannerTests;

namespace PressRun.Engine.Tests.Reprint;

public class ReprintAdviceTests
{
    [Fact]
    public void One_more_than_the_newsvendors_best_brings_less_than_it_costs_by_the_odds_that_it_is_asked_for()
    {
        // NV-04: stockpyl docstring citing Snyder and Shen, Fundamentals of Supply Chain Theory: Poisson demand of 50, holding 0.18, penalty 0.7, order 56.
        // A copy costs 1.00 and keeps 1.70 sold, 0.82 unsold, so the 57th brings 0.82 and 0.88 more where it is asked for (marginal analysis, the same book).
        var advice = Of(Linear(1.00m), Request(new PoissonDemand(50m, 0), 1.70m, 0.82m, 120), 56);
        var next = advice.Next!.Value;
        Assert.Equal((57, 1, 1.00m), (next.To, next.More, next.Costs));
        Assert.Equal(0.82 + (0.88 * DemandDistributionTests.Of(new PoissonDemand(50m, 0)).AtLeast(57)), (double)next.Brings, 1e-9);
        Assert.True(next.Brings < next.Costs);
        Assert.Equal(advice.Best.Futures.Count(future => future.Copies >= 57), next.Asked);
        Assert.Equal(0m, advice.OwnShort);
        Assert.Null(advice.WithMoreCash);
    }

    [Fact]
    public void Past_a_leap_of_the_cost_the_best_place_beyond_it_is_what_the_best_is_held_against()
    {
        var job = ExampleJob.Create();
        var sold = PreparedJob.Prepare(job with { Shop = job.Shop with { Quantities = [50, 100, 150, 200, 400] } }).Value;
        var advice = Of(sold, Request(new PoissonDemand(90m, 0), 5m, 0m, 250), 60);
        var next = advice.Next!.Value;
        Assert.True(next.More > 1, $"{advice.Best.Point.Quantity} to {next.To}");
        Assert.True(next.Brings <= next.Costs);
        Assert.Equal(advice.Best.Point.LandedCost + next.Costs, ReprintPlanner.Prepare(sold, Request(new PoissonDemand(90m, 0), 5m, 0m, 250)).Value.LookAt(next.To).Value.Point.LandedCost);
    }

    [Fact]
    public void Where_nothing_more_is_looked_at_nothing_is_said_of_more() =>
        Assert.Null(Of(Linear(1m), Request(new PoissonDemand(50m, 0), 3m, 0m, 20), 10).Next);

    [Fact]
    public void What_the_cash_forbids_is_not_the_answer_and_what_more_of_it_would_do_is_said()
    {
        var request = Request(new PoissonDemand(50m, 0), 1.70m, 0.82m, 120) with { Cash = 30m };
        var advice = Of(Linear(1.00m), request, 70);
        Assert.Equal((30, 56), (advice.Answer.Point.Quantity, advice.Best.Point.Quantity));
        Assert.Equal(26m, advice.WithMoreCash!.Value.More);
        Assert.Equal(advice.Best.Point.ExpectedProfit - advice.Answer.Point.ExpectedProfit, advice.WithMoreCash.Value.Gains);
        Assert.Equal(40m, advice.OwnBeyondCash);
        Assert.True(advice.OwnShort < 0m);
    }

    [Fact]
    public void Copies_given_away_are_those_that_there_are_and_none_where_none_is_printed()
    {
        var job = PreparedJob.Prepare(ExampleJob.Create()).Value;
        var planner = ReprintPlanner.Prepare(job, Request(new PoissonDemand(50m, 0), 5m, 0m, 120)).Value;
        Assert.Equal(6, job.Job.FreeCopies);
        Assert.Equal((0, 4, 6), (planner.LookAt(0).Value.GivenAway, planner.LookAt(4).Value.GivenAway, planner.LookAt(50).Value.GivenAway));
        Assert.True(planner.LookAt(50).Value.HoursUnpaid);
        Assert.False(planner.LookAt(0).Value.HoursUnpaid);
        var paid = PreparedJob.Prepare(ExampleJob.Create() with { Bench = job.Job.Bench with { Paid = true } }).Value;
        Assert.False(ReprintPlanner.Prepare(paid, Request(new PoissonDemand(50m, 0), 5m, 0m, 120)).Value.LookAt(50).Value.HoursUnpaid);
    }

    private static ReprintAdvice Of(PreparedJob job, ReprintRequest request, int own)
    {
        var planner = ReprintPlanner.Prepare(job, request).Value;
        return ReprintAdvice.Of(planner, planner.Plan().Value, own).Value;
    }
}
