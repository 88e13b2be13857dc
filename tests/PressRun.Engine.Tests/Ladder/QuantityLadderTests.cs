using CsCheck;
using PressRun.Engine.Costing;
using PressRun.Engine.Ladder;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Ladder;

public sealed class QuantityLadderTests
{
    private static readonly Gen<(Job Job, int From, int To, int Step)> Ranges =
        Gen.Select(JobGen.Any, Gen.Int[1, 200], Gen.Int[0, 250], Gen.Int[1, 40], (job, from, length, step) => (job, from, from + length, step));

    // 0.10 an impression up to 199 of them and 0.05 from 200 on: 99 copies cost 24.75, a hundred 15.00.
    private static readonly Job Step = Plain().With(shop => shop with { Print = [Black(0.10m) with { Steps = Steps((1, 0.10m), (200, 0.05m)) }] });

    [Fact]
    public void A_price_step_makes_every_quantity_just_below_it_a_better_buy()
    {
        var ladder = Step.Ladder(50, 110).Value;
        Assert.Equal(100, ladder.LowestUnitCostQuantity);
        Assert.Equal(new BetterBuy(60, 100, 0m), ladder.BetterBuys[0]);
        Assert.Equal(new BetterBuy(99, 100, 9.75m), ladder.BetterBuys[^1]);
        Assert.Equal(Enumerable.Range(60, 40), ladder.BetterBuys.Select(buy => buy.From));
    }

    [Fact]
    public void A_better_buy_may_lie_between_the_rungs_but_not_past_the_last()
    {
        Assert.Equal(new BetterBuy(80, 100, 5m), Assert.Single(Step.Ladder(50, 110, 30).Value.BetterBuys));
        Assert.Empty(Step.Ladder(50, 99, 20).Value.BetterBuys);
    }

    [Fact]
    public void Of_equal_unit_costs_the_smaller_quantity_is_the_lowest() => Assert.Equal(7, Plain().Ladder(7, 40, 3).Value.LowestUnitCostQuantity);

    [Fact]
    public void Every_rung_equals_the_single_costing_of_its_quantity() => Ranges.Sample(range =>
    {
        var (job, from, to, step) = range;
        if (job.Ladder(from, to, step) is not { Succeeded: true } outcome)
        {
            return;
        }

        var prepared = job.Prepared();
        var quantities = Enumerable.Range(0, int.MaxValue).Select(index => from + (index * step)).TakeWhile(quantity => quantity <= to);
        Assert.Equal(quantities.Select(quantity => new Rung(quantity, prepared.Estimate(quantity).Value.Totals.LandedCost)), outcome.Value.Rungs);
    });

    [Fact]
    public void Better_buys_are_real_and_the_smallest_by_a_plain_double_loop() => Ranges.Sample(range =>
    {
        var (job, from, to, step) = range;
        if (job.Ladder(from, to, step) is not { Succeeded: true } outcome)
        {
            return;
        }

        var prepared = job.Prepared();
        var last = outcome.Value.Rungs[^1].Quantity;
        var expected = new List<BetterBuy>();
        foreach (var rung in outcome.Value.Rungs)
        {
            for (var more = rung.Quantity + 1; more <= last; more++)
            {
                if (prepared.LandedCost(more) <= rung.LandedCost)
                {
                    expected.Add(new BetterBuy(rung.Quantity, more, rung.LandedCost - prepared.LandedCost(more)));
                    break;
                }
            }
        }

        Assert.Equal(expected, outcome.Value.BetterBuys);
    });

    [Fact]
    public void No_rung_has_a_lower_unit_cost_than_the_lowest_nor_an_equal_one_before_it() => Ranges.Sample(range =>
    {
        if (range.Job.Ladder(range.From, range.To, range.Step) is { Succeeded: true } outcome)
        {
            var lowest = outcome.Value.Rungs.Single(rung => rung.Quantity == outcome.Value.LowestUnitCostQuantity);
            Assert.All(outcome.Value.Rungs, rung =>
            {
                var difference = (rung.LandedCost * lowest.Quantity) - (lowest.LandedCost * rung.Quantity);
                Assert.True(rung.Quantity < lowest.Quantity ? difference > 0m : difference >= 0m);
            });
        }
    });

    [Theory]
    [InlineData(0, 10, 1)]
    [InlineData(10, 9, 1)]
    [InlineData(1, 10, 0)]
    [InlineData(1, 10_001, 1)]
    [InlineData(999_999, 1_000_001, 1)]
    [InlineData(int.MinValue, int.MaxValue, 1)]
    public void A_ladder_without_an_end_a_step_or_a_measure_is_refused(int from, int to, int step) =>
        Assert.All(Plain().Ladder(from, to, step).Problems, problem => Assert.StartsWith("$.ladder", problem.Path, StringComparison.Ordinal));

    [Fact]
    public void A_ladder_with_a_quantity_that_the_shop_cannot_take_is_refused_at_the_ladder() =>
        Assert.Equal("$.ladder", Assert.Single(Plain().With(shop => shop with { Quantities = [25, 50] }).Ladder(40, 60).Problems).Path);

    [Fact]
    public void Work_on_a_long_curve_can_be_ended()
    {
        using var ended = new CancellationTokenSource();
        ended.Cancel();
        Assert.Throws<OperationCanceledException>(() => Plain().Prepared().Curve(1, 1000, ended.Token));
    }
}
