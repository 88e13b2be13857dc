using CsCheck;
using PressRun.Engine.Costing;
using PressRun.Engine.Reprint;
using PressRun.Engine.Tests.Support;

namespace PressRun.Engine.Tests.Reprint;

public class ReprintPacesTests
{
    private static readonly PreparedJob Job = PreparedJob.Prepare(ExampleJob.Create()).Value;

    [Fact]
    public void At_the_pace_of_now_the_table_says_what_the_plan_says() =>
        Gen.Select(Gen.Int[0, 40], Gen.Int[20, 140], Gen.Int[1, 60], Gen.Int[0, 150], Gen.Int[1, 200]).Sample(
            (onHand, mean, shape, salvage, own) =>
            {
                var request = Request(new NegativeBinomialDemand(mean, shape / 10m, 3)) with { OnHand = onHand, Salvage = salvage / 100m };
                var planner = ReprintPlanner.Prepare(Job, request).Value;
                var plan = planner.Plan().Value;
                var now = ReprintPaces.Of(planner, planner.Costs().Value, own).Value.Rows.Single(row => row.Pace == 1m);
                Assert.Equal(plan.BestQuantity, now.Best.Quantity);
                Assert.Equal(plan.ExpectedProfit, now.Best.ExpectedProfit);
                Assert.Equal(plan.Curve.Single(point => point.Quantity == own), now.Own);
                Assert.Equal(plan.ExpectedDemand, now.ExpectedDemand);
            },
            iter: 20,
            seed: "0000KmHiCeG7");

    [Theory]
    [MemberData(nameof(Demands))]
    public void Every_kind_of_demand_sells_by_the_pace_and_what_is_promised_stays(Demand demand)
    {
        var now = DemandDistributionTests.Of(demand).Mean;
        Assert.Equal(demand.Committed + ((now - demand.Committed) * 2), DemandDistributionTests.Of(demand.AtPace(2m)).Mean, 0.01);
        Assert.Equal(now, DemandDistributionTests.Of(demand.AtPace(1m)).Mean);
        Assert.Throws<ArgumentOutOfRangeException>(() => demand.AtPace(0m));
    }

    public static TheoryData<Demand> Demands =>
    [
        new TableDemand([0.1m, 0.4m, 0.5m], 4),
        new PoissonDemand(30m, 2),
        new NegativeBinomialDemand(30m, 4m, 0),
        new HistoryDemand([9, 14, 6, 11], 6m, 1.25m, 0.5m, 0m, 5),
        new OpinionDemand(20m, 40m, 90m, 1),
    ];

    [Fact]
    public void The_best_number_is_nearly_best_at_its_own_pace_and_one_too_many_by_far_only_at_a_quicker_one()
    {
        var planner = ReprintPlanner.Prepare(Job, Request(new PoissonDemand(100m, 0))).Value;
        var costs = planner.Costs().Value;
        var best = ReprintPaces.Of(planner, costs, planner.Best(costs).Quantity).Value;
        Assert.InRange(1m, best.NearlyFrom!.Value, best.NearlyTo!.Value);

        var tooMany = ReprintPaces.Of(planner, costs, 240).Value;
        Assert.True(tooMany.NearlyFrom > 1.5m);
        Assert.False(tooMany.Rows.Single(row => row.Pace == 1m).IsNearlyBest);
        Assert.All(tooMany.Rows, row => Assert.True(row.Short >= 0m));
    }

    [Fact]
    public void No_pace_makes_a_number_best_that_the_cash_does_not_pay_for()
    {
        var planner = ReprintPlanner.Prepare(Job, Request(new PoissonDemand(100m, 0)) with { Cash = 60m }).Value;
        var plan = planner.Plan().Value;
        Assert.True(plan.BestQuantity > plan.WithinCash.Quantity);
        var paces = ReprintPaces.Of(planner, planner.Costs().Value, plan.BestQuantity).Value;
        Assert.Equal(plan.WithinCash, paces.Rows.Single(row => row.Pace == 1m).Best);
        Assert.All(paces.Rows, row => Assert.True(row.Best.CashOut <= 60m && !row.OwnIsPaidFor && !row.IsNearlyBest));
        Assert.Null(paces.NearlyFrom);
    }

    [Fact]
    public void A_number_that_is_right_at_no_pace_is_said_to_be_so()
    {
        var planner = ReprintPlanner.Prepare(Job, Request(new PoissonDemand(100m, 0)) with { NetPerCopy = 1m }).Value;
        var paces = ReprintPaces.Of(planner, planner.Costs().Value, 300).Value;
        Assert.Null(paces.NearlyFrom);
        Assert.Null(paces.NearlyTo);
    }

    [Fact]
    public void A_pace_at_which_too_many_would_be_asked_for_is_left_out()
    {
        var planner = ReprintPlanner.Prepare(Job, Request(new PoissonDemand(600_000m, 0))).Value;
        Assert.DoesNotContain(ReprintPaces.Of(planner, planner.Costs().Value, 10).Value.Rows, row => row.Pace == 2m);
    }

    [Fact]
    public void Two_assumptions_are_each_best_under_themselves()
    {
        var first = ReprintPlanner.Prepare(Job, Request(new PoissonDemand(60m, 0))).Value;
        var second = ReprintPlanner.Prepare(Job, Request(new OpinionDemand(100m, 150m, 220m, 0))).Value;
        var both = TwoAssumptions.Of(first, second, first.Costs().Value).Value;
        Assert.Equal(first.Plan().Value.BestQuantity, both.FirstBest.Quantity);
        Assert.Equal(second.Plan().Value.BestQuantity, both.SecondBest.Quantity);
        Assert.True(both.FirstBest.UnderFirst.Point.ExpectedProfit >= both.SecondBest.UnderFirst.Point.ExpectedProfit);
        Assert.True(both.SecondBest.UnderSecond.Point.ExpectedProfit >= both.FirstBest.UnderSecond.Point.ExpectedProfit);
        Assert.Equal(second.LookAt(both.FirstBest.Quantity).Value.Odds, both.FirstBest.UnderSecond.Odds);
    }

    [Fact]
    public void A_look_counts_the_futures_that_the_odds_weigh()
    {
        var planner = ReprintPlanner.Prepare(Job, Request(new PoissonDemand(140m, 0)) with { NetPerCopy = 3m }).Value;
        var look = planner.LookAt(150).Value;
        Assert.Equal(50, look.Futures.Count);
        Assert.All(look.Futures, future => Assert.Equal(future.Copies >= look.Odds.ForSale, future.SoldOut));
        Assert.Equal(look.Odds.SellingOut, look.SoldOut / 50d, 0.0201);
        Assert.Equal(look.Odds.Loss, look.Losses / 50d, 0.0201);
        Assert.Equal(planner.Plan().Value.Curve.Single(point => point.Quantity == 150), look.Point);
    }

    [Fact]
    public void What_is_left_over_fills_cartons_by_mass_and_holds_its_part_of_the_cash()
    {
        var planner = ReprintPlanner.Prepare(Job, Request(new PoissonDemand(40m, 0))).Value;
        var look = planner.LookAt(150).Value;
        var most = look.Leftovers[2];
        Assert.Equal(0.9m, most.Probability);
        Assert.Equal(look.Odds.Leftover90, most.Copies);
        Assert.Equal(look.Point.CashOut * most.Copies / 150, most.TiedUp);
        var capacity = Job.Job.Shop.Order.Carton?.Capacity.Grams;
        Assert.Equal(capacity is { } grams ? (long)decimal.Ceiling(most.Copies * Job.Copy.Mass.Grams / grams) : null, most.Cartons);
    }

    [Fact]
    public void Printing_none_ties_up_nothing_though_copies_are_left()
    {
        var look = ReprintPlanner.Prepare(Job, Request(new PoissonDemand(1m, 0)) with { OnHand = 60 }).Value.LookAt(0).Value;
        Assert.True(look.Leftovers[0].Copies > 0);
        Assert.All(look.Leftovers, left => Assert.Equal(0m, left.TiedUp));
        Assert.Equal(0m, look.Point.CashOut);
    }

    private static ReprintRequest Request(Demand demand) => new(0, demand, 5.2m, 0.5m, 0m, 0m, null, 0, 300, 1);
}
