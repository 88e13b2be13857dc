using CsCheck;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Bench;

public sealed class PileRunTests
{
    [Fact]
    public void Leaves_of_a_part_are_one_run_and_every_part_has_its_own()
    {
        var job = Plain().WithEdition(_ => Edition(Binding.Side, Part(2, "cover"), Part(84), Part(2, "back")));
        Assert.Equal([(1, 1), (2, 43), (44, 44)], RunsOf(job).Select(run => (run.First.Number, run.Last.Number)));
    }

    [Fact]
    public void A_leaf_whose_back_is_blank_stands_by_itself()
    {
        var job = Plain().WithEdition(_ => Edition(Binding.Loose, Part(7)));
        Assert.Equal([(1, 3), (4, 4)], RunsOf(job).Select(run => (run.First.Number, run.Last.Number)));
    }

    [Fact]
    public void Every_pile_is_in_one_run_in_its_order_and_pages_go_on_by_one_step() => JobGen.Any.Sample(job =>
    {
        if (job.Prepared().Estimate(job.Quantity) is not { Succeeded: true } estimate)
        {
            return;
        }

        var sheet = BenchSheet.Of(job.Prepared(), estimate.Value, BenchLimits.Usual);
        var runs = PileRun.Of(sheet.Piles);
        Assert.Equal(sheet.Piles, runs.SelectMany(run => run.Piles));
        Assert.All(runs, run => Assert.True(run.Piles.Zip(run.Piles.Skip(1), (one, next) => next.Outer[^1] - one.Outer[^1]).Distinct().Count() < 2));
        Assert.All(runs, run => Assert.Single(run.Piles.Select(pile => pile.Pieces).Distinct()));
    });

    private static IReadOnlyList<PileRun> RunsOf(Job job) => PileRun.Of(BenchSheet.Of(job.Prepared(), job.Prepared().Estimate(10).Value, BenchLimits.Usual).Piles);
}
