using CsCheck;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Tests.Measures;

public sealed class SharesTests
{
    [Fact]
    public void Seats_of_the_1790_census_fall_as_Hamilton_apportioned_them()
    {
        // MON-10. Hamilton's method on the census of 1790, 60 seats; electowiki, "Hamilton method".
        decimal[] population =
        [
            630560, 475327, 432879, 353523, 331589, 278514, 236841, 206236, 179570, 141822, 85533, 70835, 68705, 68446, 55540,
        ];

        Assert.Equal([11, 8, 7, 6, 6, 5, 4, 3, 3, 2, 1, 1, 1, 1, 1], Shares.Of(60, population));
    }

    [Fact]
    public void Of_equal_remainders_the_earliest_takes_the_odd_cent()
    {
        // MON-13, computed: 100.00 between three.
        Assert.Equal([33.34m, 33.33m, 33.33m], Shares.Of(100.00m, [1m, 1m, 1m], Currency.Find("USD")!));
    }

    [Fact]
    public void A_refund_is_split_as_the_charge_was() =>
        Assert.Equal([-33.34m, -33.33m, -33.33m], Shares.Of(-100.00m, [1m, 1m, 1m], Currency.Find("USD")!));

    [Fact]
    public void A_currency_without_a_minor_unit_is_split_in_whole_units() =>
        Assert.Equal([34m, 33m, 33m], Shares.Of(100m, [0.1m, 0.1m, 0.1m], Currency.Find("JPY")!));

    [Fact]
    public void Who_has_no_weight_pays_nothing() => Assert.Equal([0m, 0.01m], Shares.Of(0.01m, [0m, 3m], Currency.Find("USD")!));

    [Fact]
    public void An_amount_with_more_digits_than_the_currency_is_refused() =>
        Assert.Throws<ArgumentException>(() => Shares.Of(1.005m, [1m], Currency.Find("USD")!));

    [Fact]
    public void Weights_that_add_up_to_nothing_are_refused()
    {
        Assert.Throws<ArgumentException>(() => Shares.Of(10, [0m, 0m]));
        Assert.Throws<ArgumentException>(() => Shares.Of(10, []));
    }

    [Fact]
    public void Negative_weights_and_units_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Shares.Of(10, [1m, -1m, 3m]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Shares.Of(-1, [1m]));
    }

    [Fact]
    public void Amounts_and_weights_of_any_size_are_split() =>
        Assert.Equal([500_000_000_000_000.01m, 500_000_000_000_000.00m], Shares.Of(1_000_000_000_000_000.01m, [decimal.MaxValue, decimal.MaxValue], Currency.Find("USD")!));

    [Fact]
    public void Shares_add_up_and_none_is_a_whole_unit_off_its_quota() =>
        Gen.Select(Gen.Long[0, 1_000_000], Gen.Decimal[0m, 1000m].Array[1, 12].Where(weights => weights.Sum() > 0m))
            .Sample((units, weights) =>
            {
                var shares = Shares.Of(units, weights);
                Assert.Equal(units, shares.Sum());
                Assert.All(weights.Zip(shares), pair => Assert.True(Math.Abs(pair.Second - (units * pair.First / weights.Sum())) < 1m + 1e-12m));
            });
}
