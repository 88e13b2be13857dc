using CsCheck;
using PressRun.Engine.Bench;

namespace PressRun.Engine.Tests.Bench;

public sealed class SureCountsTests
{
    private static readonly Gen<int> Copies = Gen.OneOf(Gen.Int[1, 50], Gen.Int[1, 5_000], Gen.Int[1, 1_000_000]);
    private static readonly Gen<decimal> Rate = Gen.OneOf(
        Gen.Int[1, 300].Select(thousandths => thousandths / 1000m),
        Gen.Int[300, 9_999].Select(parts => parts / 10_000m),
        Gen.Int[1, 10_000].Select(parts => 1m - (parts / 10_000_000m)),
        Gen.Int[1, 1000].Select(parts => parts / 1_000_000_000_000m),
        Gen.Int[1, 1000].Select(parts => parts / 10_000_000_000_000_000_000_000_000_000m));

    private static readonly Gen<decimal> Confidence = Gen.OneOf(
        Gen.Int[1, 999].Select(thousandths => thousandths / 1000m),
        Gen.Int[1, 1000].Select(parts => 1m - (parts / 100_000_000m)),
        Gen.Int[1, 1000].Select(parts => 1m - (parts / 10_000_000_000_000m)),
        Gen.Int[1, 1000].Select(parts => parts / 10_000_000_000_000m));

    [Fact]
    public void What_is_sure_beforehand_changes_nothing_that_the_search_finds() =>
        Gen.Select(Copies, Rate, Confidence).Sample((copies, rate, confidence) => Agrees(copies, rate, confidence), iter: 400);

    [Theory]
    [InlineData(1, 0.5, 0.75)] // One copy of two at one half is three quarters exactly.
    [InlineData(999_983, 0.5, 0.5)] // By symmetry.
    [InlineData(1_000_000, 0.995, 0.95)]
    [InlineData(1_000_000, 0.9989, 0.95)] // Nearly as many as may be started,
    [InlineData(1_000_000, 0.999, 0.95)] // and just more than that.
    [InlineData(1, 0.999999998, 0.7)]
    [InlineData(1, 0.999999998, 0.9)]
    [InlineData(500_000, 0.0000001, 0.95)]
    public void The_same_at_the_edges(int copies, double rate, double confidence) => Agrees(copies, (decimal)rate, (decimal)confidence);

    [Fact]
    public void A_usual_run_leaves_nothing_to_search_after_a_few_sums_of_the_tail() =>
        Gen.Select(Copies, Gen.Int[1, 995].Select(thousandths => thousandths / 1000d), Gen.Int[100, 999].Select(thousandths => thousandths / 1000d)).Sample(
            (copies, rate, confidence) =>
            {
                var sure = SureCounts.Of(1d - rate, confidence, SureCounts.Score(confidence), copies);
                Assert.Equal(sure.Enough, sure.TooFew + 1);
            },
            iter: 300);

    private static void Agrees(int copies, decimal rate, decimal confidence)
    {
        var overs = new CopiesToStart([rate], new Overs(OversMode.Assured, confidence));
        Assert.Equal((copies, rate, confidence, Searched(copies, rate, overs.Survival, (double)confidence - 1e-12)), (copies, rate, confidence, overs.For(copies)));
    }

    // The search by sums alone: from the plain overs upwards until there are enough, then by halves.
    private static long? Searched(int goodCopies, decimal rate, double survival, double wanted)
    {
        var plain = new CopiesToStart([rate], new Overs(OversMode.Plain, 0.95m)).For(goodCopies);
        if (plain is not { } high)
        {
            return null;
        }

        long low = goodCopies;
        while (!Enough(high))
        {
            if (high == CopiesToStart.Most)
            {
                return null;
            }

            low = high + 1;
            high = Math.Min(CopiesToStart.Most, high + Math.Max(4, (high - goodCopies) / 2));
        }

        while (low < high)
        {
            var middle = low + ((high - low) / 2);
            (low, high) = Enough(middle) ? (low, middle) : (middle + 1, high);
        }

        return low;

        bool Enough(long started) => BinomialTail.Of(started, survival, goodCopies).AtLeast >= wanted;
    }
}
