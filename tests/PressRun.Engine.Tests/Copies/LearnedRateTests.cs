using PressRun.Engine.Bench;
using PressRun.Engine.Copies;

namespace PressRun.Engine.Tests.Copies;

public class LearnedRateTests
{
    private static readonly BenchStep Stitch = new("stitch", 10m, 30m, 0m, 0m, 1, 0.02m);
    private static readonly BenchStep Collate = new("collate", 5m, 0m, 2m, 0m, 1, 0m);

    [Fact]
    public void A_rate_is_learned_from_all_runs_with_the_set_up_held_fixed()
    {
        var learned = Assert.Single(LearnedRate.Of([Stitch, Collate], [[Run("stitch", 95m, 152, 5, 152 * 30m)], [Run("stitch", 55m, 80, 1, 80 * 30m), Run("glue", 9m, 9, 0, 0m)]]));

        // (95 + 55 - 2 x 10) minutes for 152 + 80 copies, of which 6 went wrong.
        Assert.Equal(("stitch", 2, 232L, 6L), (learned.Now.Name, learned.Runs, learned.Copies, learned.Spoiled));
        Assert.Equal(130m * 60m / (232m * 30m), learned.Ratio);
        Assert.Equal((10m, 33.6m, 0.0259m), (learned.Learned.SetUpMinutes, learned.Learned.SecondsPerCopy, learned.Learned.Spoilage));
        Assert.Null(learned.Between);
    }

    [Fact]
    public void Times_for_a_piece_stay_times_for_a_piece_whatever_the_books_were()
    {
        // 8 pieces and 20 pieces a copy, both done at 2.6 s a piece.
        var learned = Assert.Single(LearnedRate.Of(
            [Collate], [[Run("collate", 5m + (100 * 8 * 2.6m / 60m), 100, 0, 100 * 8 * 2m)], [Run("collate", 5m + (60 * 20 * 2.6m / 60m), 60, 0, 60 * 20 * 2m)]]));

        Assert.Equal(1.3m, learned.Ratio, 12);
        Assert.Equal((0m, 2.6m), (learned.Learned.SecondsPerCopy, learned.Learned.SecondsPerPiece));
    }

    [Fact]
    public void The_interval_is_that_of_a_ratio_estimate_with_students_t()
    {
        // By hand: took 120, 250, 330 over rated 100, 200, 300: R = 700/600. Residuals 10/3, 50/3, -20; sum of squares 688.889; s^2 = 344.444;
        // standard error sqrt(344.444 / 3) / 200 = 0.0535758; t(2 df, 97.5 %) = 4.302653 (printed tables of Student's t).
        var learned = Assert.Single(LearnedRate.Of(
            [Stitch with { SetUpMinutes = 0m }], [[Run("stitch", 2m, 10, 0, 100m)], [Run("stitch", 250m / 60m, 20, 0, 200m)], [Run("stitch", 5.5m, 30, 0, 300m)]]));

        Assert.Equal(0.230518m, learned.HalfWidth!.Value, 5);
        var (quick, slow) = learned.Between!.Value;
        Assert.True(quick.SecondsPerCopy < learned.Learned.SecondsPerCopy && learned.Learned.SecondsPerCopy < slow.SecondsPerCopy);
    }

    [Fact]
    public void A_step_without_times_gets_seconds_for_a_copy()
    {
        var learned = Assert.Single(LearnedRate.Of([Stitch with { SecondsPerCopy = 0m }], [[Run("stitch", 30m, 100, 0, 0m)]]));

        Assert.Equal(12m, learned.Learned.SecondsPerCopy);
    }

    [Fact]
    public void A_step_in_which_all_went_wrong_still_gives_rates_that_a_table_can_have()
    {
        var fold = new BenchStep("fold", 99m, 1m, 0m, 0m, 1, 0m);
        var learned = Assert.Single(LearnedRate.Of([fold], [[Run("fold", 5m, 3, 3, 3m)]]));

        Assert.Equal((0m, 0m), (learned.Ratio, learned.Learned.SecondsPerCopy));
        Assert.InRange(learned.Learned.Spoilage, 0.99m, 0.9999m);
    }

    [Fact]
    public void A_step_done_on_two_evenings_is_one_step_of_its_run()
    {
        var printing = new PrintingActual(90, 0m, 0m, 0m, 0m, 0m, [new("stitch", 20m, 40, 1), new("stitch", 30m, 60, 2), new("glue", 9m, 9, 0)]);

        var run = Assert.Single(StepRun.Of(printing, [Stitch], (_, copies) => 10m + (copies / 2m)));

        Assert.Equal((new StepActual("stitch", 50m, 100, 3), 3000m), (run.Seen, run.RatedSeconds));
    }

    private static StepRun Run(string step, decimal minutes, int started, int spoiled, decimal rated) => new(new StepActual(step, minutes, started, spoiled), rated);
}
