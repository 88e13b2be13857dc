using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Bench;

public sealed class BenchWorkTests
{
    [Fact]
    public void Every_step_adds_its_set_up_and_its_seconds_for_copies_pieces_and_cuts()
    {
        var job = Plain()
            .WithEdition(edition => edition with { Parts = [Part(12)], Trim = new Trim(Mm(1), Mm(1), Mm(1), Length.Zero) })
            .WithBench(bench => bench with
            {
                HourlyRate = 12m,
                Steps = [Step("collate", setUpMinutes: 10, perPiece: 2), Step("stitch", perCopy: 9), Step("trim", perCut: 20, pile: 3)],
            }) with
        { Quantity = 100 };
        // 600 + 100 × (3 × 2 + 9) + 3 edges × 20 × ceil(100 / 3) = 4140 s.
        var onSheets = job.With(shop => shop with { Sheets = [Sheet(width: 210, height: 210)] });
        var estimate = onSheets.Estimate();
        Assert.Equal(4140m / 3600m, estimate.Totals.BenchHours);
        Assert.Equal(
            [new PlannedStep("collate", 1200m / 60m), new PlannedStep("stitch", 900m / 60m), new PlannedStep("trim", 2040m / 60m)],
            PreparedJob.Prepare(onSheets).Value.BenchSteps(estimate.CopiesToStart));
        var labour = estimate.Line(CostCode.BenchLabour);
        Assert.Equal((1.15m, 12m, 13.80m), (labour.Quantity, labour.Each, labour.Amount));
    }

    [Fact]
    public void Labour_is_rounded_once_from_exact_seconds()
    {
        // 150 s at 15.00 an hour are 0.625: half a cent that a rounded number of hours would lose.
        var job = Plain().WithBench(bench => bench with { HourlyRate = 15m, Steps = [Step("stitch", perCopy: 1.5m)] });
        Assert.Equal(0.63m, job.Estimate().Totals.BenchLabour);
        Assert.Equal(0.0417m, job.Estimate().Line(CostCode.BenchLabour).Quantity);
    }

    [Fact]
    public void Hours_are_told_even_where_they_cost_nothing()
    {
        var estimate = Plain().WithBench(bench => bench with { Steps = [Step("stitch", perCopy: 36)] }).Estimate();
        Assert.Equal(1m, estimate.Totals.BenchHours);
        Assert.DoesNotContain(estimate.Lines, line => line.Code == CostCode.BenchLabour);
    }

    [Theory]
    [InlineData(Collating.Never, false, true)]
    [InlineData(Collating.Always, false, false)]
    [InlineData(Collating.SameStock, false, false)]
    [InlineData(Collating.SameStock, true, true)]
    public void Where_the_shop_collates_the_bench_leaves_that_step_out_with_its_time_and_spoilage(Collating collates, bool twoStocks, bool atTheBench)
    {
        var job = Plain()
            .With(shop => shop with { Collates = collates, Paper = [PaperAt(0.05m), PaperAt(0.05m, "other")] })
            .WithEdition(edition => edition with { Parts = [Part(4, "cover", twoStocks ? "other" : "plain"), Part(4)] })
            .WithBench(bench => bench with { Steps = [Step("collate", perCopy: 36, spoilage: 0.2m)] }) with
        { Stocks = [PlainStock(), PlainStock("other")] };
        var estimate = job.Estimate();
        Assert.Equal(atTheBench ? 125 : 100, estimate.CopiesToStart);
        Assert.Equal(atTheBench ? 1.25m : 0m, estimate.Totals.BenchHours);
    }

    [Fact]
    public void The_shops_own_spoilage_joins_the_rates_of_the_bench()
    {
        var job = Plain().With(shop => shop with { Spoilage = 0.5m }).WithBench(bench => bench with { Steps = [Step("stitch", spoilage: 0.5m)] });
        Assert.Equal(400, job.Estimate().CopiesToStart);
    }

    [Fact]
    public void Consumables_are_counted_on_the_copies_started()
    {
        var job = Plain().WithBench(bench => bench with { Steps = [Step("stitch", spoilage: 0.2m)], Consumables = [new Consumable("staples", 0.004m)] });
        var line = job.Estimate().Line(CostCode.BenchConsumable);
        Assert.Equal(("staples", 125m, 0.004m, 0.50m), (line.Subject, line.Quantity, line.Each, line.Amount));
    }

    [Fact]
    public void Hours_are_cash_only_where_they_are_paid()
    {
        var job = Plain().WithBench(bench => bench with { HourlyRate = 10m, Steps = [Step("stitch", perCopy: 36)] });
        Assert.Equal((35m, 25m), (job.Estimate().Totals.LandedCost, job.Estimate().Totals.CashOut));
        Assert.Equal(35m, job.WithBench(bench => bench with { Paid = true }).Estimate().Totals.CashOut);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(-0.1)]
    public void Spoilage_of_all_or_less_than_none_is_refused(double rate)
    {
        Assert.Equal("$.shop.spoilage", Assert.Single(Plain().With(shop => shop with { Spoilage = (decimal)rate }).Problems()).Path);
        var bench = Plain().WithBench(bench => bench with { Steps = [Step("stitch"), Step("trim", spoilage: (decimal)rate)] });
        Assert.Equal("$.bench.steps[1].spoilage", Assert.Single(bench.Problems()).Path);
    }
}
