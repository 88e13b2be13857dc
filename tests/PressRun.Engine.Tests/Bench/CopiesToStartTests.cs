using CsCheck;
using MathNet.Numerics.Distributions;
using PressRun.Engine.Bench;

namespace PressRun.Engine.Tests.Bench;

public sealed class CopiesToStartTests
{
    private static readonly Gen<decimal> Rate = Gen.Int[1, 300].Select(thousandths => thousandths / 1000m);

    [Fact]
    public void A_hundred_copies_at_a_fifth_spoiled_are_exactly_a_hundred_and_twenty_five() => Assert.Equal(125, Plain(100, 0.20m));

    [Theory]
    [InlineData(7, 0.3)] // In binary floating point 7 / (1 − 0.3) is 10.000000000000002.
    [InlineData(9, 0.1)]
    [InlineData(93, 0.07)]
    public void A_division_that_comes_out_even_is_never_rounded_up(int copies, double rate) =>
        Assert.Equal((long)Math.Round(copies / (1 - rate)), Plain(copies, (decimal)rate));

    [Fact]
    public void Without_spoilage_no_more_are_started_than_wanted()
    {
        Assert.Equal(150, Plain(150, 0m, 0m));
        Assert.Equal(150, Assured(150, 0.99m, 0m));
    }

    [Fact]
    public void Rates_multiply() => Assert.Equal(157, Plain(150, 0.03m, 0.01m));

    [Fact]
    public void So_much_spoilage_that_the_copies_would_pass_a_thousand_million_gives_no_answer()
    {
        Assert.Null(new CopiesToStart([0.9999999m, 0.9999999m], Mode(OversMode.Plain, 0.95m)).For(1));
        Assert.Null(new CopiesToStart([0.9999999m], Mode(OversMode.Assured, 0.95m)).For(1_000_000));
    }

    [Fact]
    public void Plain_overs_leave_the_copies_wanted_and_one_fewer_would_not() =>
        Gen.Select(Gen.Int[1, 100_000], Rate.Array[1, 4]).Sample((copies, rates) =>
        {
            var survives = rates.Aggregate(1m, (product, rate) => product * (1m - rate));
            var started = Plain(copies, rates);
            Assert.True(started * survives >= copies);
            Assert.True((started - 1) * survives < copies);
        });

    [Fact]
    public void Assured_overs_are_the_fewest_by_a_numerical_librarys_binomial() =>
        Gen.Select(Gen.Int[1, 2000], Rate.Array[1, 3], Gen.Int[500, 999]).Sample((copies, rates, confidence) =>
        {
            var survives = (double)rates.Aggregate(1m, (product, rate) => product * (1m - rate));
            var started = Assured(copies, confidence / 1000m, rates);
            var wanted = confidence / 1000d;
            // The library's incomplete beta is good to about ten digits; a probability that near to the confidence may fall on either side.
            Assert.True(AtLeast(started, survives, copies) >= wanted - 1e-9);
            Assert.True(started == copies || AtLeast(started - 1, survives, copies) < wanted + 1e-9);
        });

    [Fact]
    public void Assured_overs_of_a_large_run_agree_with_the_library()
    {
        var started = Assured(1_000_000, 0.95m, 0.03m, 0.01m);
        Assert.True(AtLeast(started, 0.97 * 0.99, 1_000_000) >= 0.95 - 1e-9);
        Assert.True(AtLeast(started - 1, 0.97 * 0.99, 1_000_000) < 0.95 + 1e-9);
    }

    [Fact]
    public void A_low_confidence_may_start_fewer_than_plain_but_never_fewer_than_wanted() =>
        Gen.Select(Gen.Int[1, 500], Rate).Sample((copies, rate) => Assert.InRange(Assured(copies, 0.01m, rate)!, copies, Plain(copies, rate)));

    [Fact]
    public void A_probability_that_equals_the_confidence_is_enough()
    {
        // One copy of two at one half: P = 3/4 exactly.
        Assert.Equal(2, Assured(1, 0.75m, 0.5m));
        Assert.Equal(3, Assured(1, 0.7500001m, 0.5m));
    }

    private static long Plain(int copies, params decimal[] rates) => new CopiesToStart(rates, Mode(OversMode.Plain, 0.95m)).For(copies)!.Value;

    private static long Assured(int copies, decimal confidence, params decimal[] rates) =>
        new CopiesToStart(rates, Mode(OversMode.Assured, confidence)).For(copies)!.Value;

    private static Overs Mode(OversMode mode, decimal confidence) => new(mode, confidence);

    private static double AtLeast(long started, double survives, int copies) =>
        copies == 0 ? 1d : 1d - Binomial.CDF(survives, (int)started, copies - 1);
}
