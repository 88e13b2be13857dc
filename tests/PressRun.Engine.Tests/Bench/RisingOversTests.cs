using CsCheck;
using MathNet.Numerics.Distributions;
using PressRun.Engine.Bench;

namespace PressRun.Engine.Tests.Bench;

public sealed class RisingOversTests
{
    private const int Rungs = 300;

    private static readonly Gen<int> First = Gen.OneOf(Gen.Int[1, 50], Gen.Int[1, 5_000], Gen.Int[1, 999_000]);
    private static readonly Gen<decimal> Rate = Gen.OneOf(
        Gen.Int[1, 300].Select(thousandths => thousandths / 1000m),
        Gen.Int[700, 999].Select(thousandths => thousandths / 1000m),
        Gen.Int[1, 1000].Select(parts => parts / 1_000_000_000_000m));

    private static readonly Gen<decimal> Confidence = Gen.OneOf(
        Gen.Int[1, 999].Select(thousandths => thousandths / 1000m),
        Gen.Int[1, 1000].Select(parts => 1m - (parts / 10_000_000_000_000m)),
        Gen.Int[1, 1000].Select(parts => parts / 10_000_000_000_000m));

    [Fact]
    public void A_walk_gives_what_each_quantity_by_itself_gives() =>
        Gen.Select(First, Rate, Confidence, Gen.Int[1, 4]).Sample(
            (first, rate, confidence, step) => AgreesOver(Overs(confidence, rate), first, step, first > 5_000 ? 12 : Rungs),
            iter: 150);

    [Fact]
    public void A_walk_by_wide_steps_gives_what_each_quantity_by_itself_gives() =>
        Gen.Select(First, Rate, Confidence, Gen.Int[5, 5_000]).Sample(
            (first, rate, confidence, step) => AgreesOver(Overs(confidence, rate), Math.Min(first, 900_000), step, 12),
            iter: 100);

    [Theory]
    [InlineData(0.75, 0.5)] // One copy of two at one half is three quarters exactly.
    [InlineData(0.5, 0.5)] // By symmetry the middle of an odd number of copies is one half exactly.
    [InlineData(0.05, 0.01)] // So little confidence that the copies wanted are enough at first.
    [InlineData(0.95, 0.0000001)] // So little spoilage that the first over comes after half a million copies.
    [InlineData(0.95, 0.9999)]
    [InlineData(0.95, 0.9999999)]
    public void A_walk_from_the_first_copy_agrees_where_probabilities_tie_or_hardly_move(double confidence, double rate) =>
        AgreesOver(Overs((decimal)confidence, (decimal)rate), 1, 1, 1000);

    [Fact]
    public void A_walk_over_the_first_over_of_a_hardly_spoiled_run_agrees() => AgreesOver(Overs(0.95m, 0.0000001m), 512_900, 1, 100);

    [Fact]
    public void A_walk_ends_where_a_quantity_by_itself_would_start_too_many()
    {
        var overs = Overs(0.95m, 0.99999m);
        var last = Enumerable.Range(1, 20_000).Last(copies => overs.For(copies) is not null);
        AgreesOver(overs, last - 20, 1, 40);
        Assert.InRange(overs.For(last)!.Value, CopiesToStart.Most - 200_000, CopiesToStart.Most);
    }

    [Fact]
    public void A_walk_may_skip_turn_back_and_stand_still()
    {
        var overs = Overs(0.95m, 0.03m, 0.01m);
        var walk = overs.Rising();
        Assert.All([150, 151, 151, 20, 5_000, 5_900, 5_901, 900_000, 900_001], copies => Assert.Equal(overs.For(copies), walk.For(copies)));
    }

    [Fact]
    public void Every_twenty_thousandth_of_a_million_quantities_agrees_with_a_numerical_librarys_binomial()
    {
        var walk = Overs(0.95m, 0.03m, 0.01m).Rising();
        for (var copies = 1; copies <= 1_000_000; copies++)
        {
            var started = walk.For(copies)!.Value;
            if (copies % 20_000 == 0)
            {
                // The library's incomplete beta is good to about ten digits.
                Assert.True(1d - Binomial.CDF(0.97 * 0.99, (int)started, copies - 1) >= 0.95 - 1e-9);
                Assert.True(1d - Binomial.CDF(0.97 * 0.99, (int)started - 1, copies - 1) < 0.95 + 1e-9);
            }
        }
    }

    [Fact]
    public void Plain_overs_walk_too()
    {
        var overs = new CopiesToStart([0.07m], new Overs(OversMode.Plain, 0.95m));
        AgreesOver(overs, 1, 1, 500);
    }

    private static CopiesToStart Overs(decimal confidence, params decimal[] rates) => new(rates, new Overs(OversMode.Assured, confidence));

    private static void AgreesOver(CopiesToStart overs, int first, int step, int rungs)
    {
        var walk = overs.Rising();
        for (var copies = first; copies < first + (rungs * step); copies += step)
        {
            Assert.Equal((copies, overs.For(copies)), (copies, walk.For(copies)));
        }
    }
}
