using CsCheck;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Reprint;
using PressRun.Engine.Tests.Support;

namespace PressRun.Engine.Tests.Reprint;

public class ReprintPlannerTests
{
    [Fact]
    public void Where_costs_are_linear_the_best_quantity_is_the_newsvendors_and_so_is_its_profit()
    {
        // NV-04: stockpyl docstring citing Snyder and Shen, Fundamentals of Supply Chain Theory, Poisson example with holding 0.18, penalty 0.7
        // and mean 50: order 56 at an expected cost of 1.797235. Here a copy costs 1.00, leaves 1.70 sold and 0.82 unsold.
        var plan = Plan(Linear(1.00m), Request(new PoissonDemand(50m, 0), net: 1.70m, salvage: 0.82m, to: 120));
        Assert.Equal(56, plan.BestQuantity);
        Assert.Equal((0.70 * 50) - 1.797235211809178, (double)plan.ExpectedProfit, 1e-6);
    }

    [Fact]
    public void The_calendar_problem_has_its_answer()
    {
        // NV-27: calendars at 11.99 that cost 6 and sell off at 3, Poisson demand of 70; the answer is computed.
        var plan = Plan(Linear(6m), Request(new PoissonDemand(70m, 0), net: 11.99m, salvage: 3m, to: 150));
        Assert.Equal(73, plan.BestQuantity);
    }

    [Fact]
    public void The_newspaper_problem_has_its_answer()
    {
        // NV-19: Hillier and Lieberman, Introduction to Operations Research, the newspaper stand; the answer is computed.
        var table = new TableDemand([.. Enumerable.Repeat(0m, 15), 0.4m, 0.2m, 0.3m, 0.1m], 0);
        var plan = Plan(Linear(1.50m), Request(table, net: 2.50m, salvage: 0.50m, to: 30));
        Assert.Equal(16, plan.BestQuantity);
        Assert.Equal(15.2m, decimal.Round(plan.ExpectedProfit, 9));
    }

    [Fact]
    public void Every_figure_equals_a_plain_double_sum()
    {
        var job = PreparedJob.Prepare(ExampleJob.Create()).Value;
        Gen.Select(Gen.Int[0, 60], Gen.Int[1, 400], Gen.Int[1, 80], Gen.Int[0, 300], Gen.Int[0, 200], Gen.Int[0, 40]).Sample((onHand, mean, shape, salvage, penalty, holding) =>
        {
            var demand = new NegativeBinomialDemand(mean, shape / 10m, 0);
            var request = Request(demand, net: 5.20m, salvage: salvage / 100m, to: 220) with
            {
                OnHand = onHand,
                Penalty = penalty / 100m,
                Holding = holding / 100m,
                Step = 20,
            };
            var plan = ReprintPlanner.Prepare(job, request).Value.Plan().Value;
            var distribution = DemandDistributionTests.Of(demand);
            foreach (var point in plan.Curve)
            {
                var forSale = point.Quantity == 0 ? onHand : Math.Max(0, onHand + point.Quantity - job.Job.FreeCopies);
                var sum = 0d;
                for (var copies = 0; copies <= distribution.Largest; copies++)
                {
                    var profit = (5.20 * Math.Min(copies, forSale)) + ((salvage - holding) / 100d * Math.Max(forSale - copies, 0))
                        - (penalty / 100d * Math.Max(copies - forSale, 0)) - (double)point.LandedCost;
                    sum += distribution.Probability(copies) * profit;
                }

                Assert.Equal(sum, (double)point.ExpectedProfit, 1e-6);
            }

            Assert.Equal(plan.Curve.Max(point => point.ExpectedProfit), plan.ExpectedProfit);
        }, iter: 40, seed: "0000KmHiCeG7");
    }

    [Fact]
    public void The_odds_are_the_distributions_own()
    {
        var job = PreparedJob.Prepare(ExampleJob.Create()).Value;
        var demand = new PoissonDemand(140m, 0);
        var planner = ReprintPlanner.Prepare(job, Request(demand, net: 3m, salvage: 0m, to: 300)).Value;
        job.LandedCost(150, out var landed);
        var odds = planner.OddsAt(150, landed);
        var distribution = DemandDistributionTests.Of(demand);
        Assert.Equal(144, odds.ForSale);
        Assert.Equal(1 - distribution.AtMost(143), odds.SellingOut, 1e-12);

        // 3.00 each against a landed cost of 305.83: a loss up to copy 101.
        Assert.Equal(distribution.AtMost(101), odds.Loss, 1e-12);
        Assert.Equal(Leftover(0.1), odds.Leftover10);
        Assert.Equal(Leftover(0.5), odds.Leftover50);
        Assert.Equal(Leftover(0.9), odds.Leftover90);

        long Leftover(double probability)
        {
            var most = 0L;
            while (Enumerable.Range(0, distribution.Largest + 1).Where(copies => Math.Max(144 - copies, 0) <= most).Sum(copies => distribution.Probability(copies)) < probability)
            {
                most++;
            }

            return most;
        }
    }

    [Fact]
    public void Printing_none_is_an_answer()
    {
        var plan = Plan(Linear(4m), Request(new PoissonDemand(5m, 0), net: 3m, salvage: 0m, to: 100) with { OnHand = 9 });
        Assert.Equal(0, plan.BestQuantity);
        Assert.Equal(0m, plan.LandedCost);
        Assert.Equal(9, plan.Odds.ForSale);
    }

    [Fact]
    public void More_cash_never_lowers_the_profit_within_it_and_no_plan_passes_it()
    {
        var job = PreparedJob.Prepare(ExampleJob.Create()).Value;
        var before = decimal.MinValue;
        for (var cash = 0m; cash <= 600m; cash += 50m)
        {
            var request = Request(new NegativeBinomialDemand(160m, 4m, 0), net: 5.2m, salvage: 0.5m, to: 300) with { Cash = cash };
            var within = ReprintPlanner.Prepare(job, request).Value.Plan().Value.WithinCash;
            Assert.True(within.CashOut <= cash);
            Assert.True(within.ExpectedProfit >= before);
            before = within.ExpectedProfit;
        }
    }

    [Fact]
    public void A_higher_price_never_lowers_the_best_quantity_where_costs_are_linear()
    {
        var job = Linear(2m);
        var before = 0;
        for (var net = 1m; net <= 8m; net += 0.5m)
        {
            var best = Plan(job, Request(new NegativeBinomialDemand(60m, 3m, 0), net, salvage: 0.5m, to: 250)).BestQuantity;
            Assert.True(best >= before, $"{best} at {net}");
            before = best;
        }
    }

    [Fact]
    public void The_net_left_out_is_the_channels_by_their_mix()
    {
        var job = PreparedJob.Prepare(ExampleJob.Create()).Value;
        var planner = ReprintPlanner.Prepare(job, Request(new PoissonDemand(50m, 0), net: null, salvage: 0m, to: 50)).Value;
        Assert.Equal(job.Estimate(150).Value.BreakEven.NetPerCopy, planner.NetPerCopy);
    }

    [Fact]
    public void Where_no_channel_leaves_anything_a_net_is_asked_for()
    {
        var job = PreparedJob.Prepare(ExampleJob.Create() with { Channels = [] }).Value;
        var outcome = ReprintPlanner.Prepare(job, Request(new PoissonDemand(50m, 0), net: null, salvage: 0m, to: 50));
        Assert.Equal("$.reprint.netPerCopy", Assert.Single(outcome.Problems).Path);
    }

    private static ReprintPlan Plan(PreparedJob job, ReprintRequest request) => ReprintPlanner.Prepare(job, request).Value.Plan().Value;

    internal static ReprintRequest Request(Demand demand, decimal? net, decimal salvage, int to) => new(0, demand, net, salvage, 0m, 0m, null, 0, to, 1);

    // A shop that asks the same for every copy, and no costs besides.
    internal static PreparedJob Linear(decimal each)
    {
        var example = ExampleJob.Create();
        var shop = example.Shop with
        {
            BookPrices = [new BookPrice(Binding.Saddle, 1, 100, null, [new BookStep(1, each, 0m)])],
            Delivers = null,
            SetUp = default,
            Finishing = [],
            Order = OrderRules.None,
        };
        return PreparedJob.Prepare(example with { Shop = shop, Bench = BenchRates.None, FreeCopies = 0, Edition = example.Edition with { FixedCosts = [] } }).Value;
    }
}
