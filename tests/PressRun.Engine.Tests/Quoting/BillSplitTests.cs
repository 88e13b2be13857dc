using CsCheck;
using PressRun.Engine.Measures;
using PressRun.Engine.Quoting;

namespace PressRun.Engine.Tests.Quoting;

public sealed class BillSplitTests
{
    private static readonly Currency Dollars = Currency.Find("USD")!;

    [Fact]
    public void Three_equal_shares_add_up_and_the_first_carries_the_coin_left_over()
    {
        Assert.Equal([101.95m, 101.94m, 101.94m], Split(305.83m, new BillPart.Share("A", 1m), new BillPart.Share("B", 1m), new BillPart.Share("C", 1m)));
    }

    /// <summary>Largest remainder: the sixty seats of 1790 by population, as the method of Hamilton gives them (electowiki, <i>Hamilton method</i>,
    /// 1790 census), here as sixty coins.</summary>
    [Fact]
    public void Sixty_coins_are_shared_as_the_published_example_shares_sixty_seats()
    {
        decimal[] people = [630560, 475327, 432879, 353523, 331589, 278514, 236841, 206236, 179570, 141822, 85533, 70835, 68705, 68446, 55540];

        Assert.Equal(
            [0.11m, 0.08m, 0.07m, 0.06m, 0.06m, 0.05m, 0.04m, 0.03m, 0.03m, 0.02m, 0.01m, 0.01m, 0.01m, 0.01m, 0.01m],
            Split(0.60m, [.. people.Select((count, index) => new BillPart.Share($"{index}", count))]));
    }

    [Fact]
    public void A_fixed_part_comes_first_and_the_rest_is_shared()
    {
        Assert.Equal([40m, 133.33m, 66.67m], Split(240m, new BillPart.Fixed("Shop", 40m), new BillPart.Share("A", 2m), new BillPart.Share("B", 1m)));
    }

    [Fact]
    public void A_currency_without_a_minor_unit_is_shared_in_whole_units()
    {
        Assert.Equal([334m, 333m, 333m], BillSplit.Of(1000m, [new BillPart.Share("A", 1m), new BillPart.Share("B", 1m), new BillPart.Share("C", 1m)], Currency.Find("JPY")!).Value.Amounts);
    }

    [Fact]
    public void Any_bill_adds_up_to_the_coin_and_no_share_strays_a_coin_from_its_part()
    {
        Gen.Select(Gen.Int[0, 10_000_000], Gen.Decimal[0.001m, 900m].Array[1, 8]).Sample((cents, weights) =>
        {
            var total = cents / 100m;
            var amounts = Split(total, [.. weights.Select((weight, index) => new BillPart.Share($"{index}", weight))]);
            Assert.Equal(total, amounts.Sum());
            Assert.All(amounts.Zip(weights), pair => Assert.True(Math.Abs(pair.First - (total * pair.Second / weights.Sum())) < 0.01m));
        });
    }

    [Theory]
    [InlineData("30", "40", "more than the bill")]
    [InlineData("30", "20", "is nobody's")]
    public void Fixed_parts_alone_must_meet_the_bill(string total, string part, string words)
    {
        var refused = BillSplit.Of(
            decimal.Parse(total, System.Globalization.CultureInfo.InvariantCulture),
            [new BillPart.Fixed("A", decimal.Parse(part, System.Globalization.CultureInfo.InvariantCulture))],
            Dollars);

        Assert.Contains(words, Assert.Single(refused.Problems).Rule, StringComparison.Ordinal);
    }

    [Fact]
    public void What_no_bill_can_hold_is_refused_where_it_stands()
    {
        var refused = BillSplit.Of(
            100m, [new BillPart.Share("A", 0m), new BillPart.Fixed("a ", 1.005m), new BillPart.Share(" ", 1m), new BillPart.Fixed("B", -1m)], Dollars);

        Assert.Equal(["$[0].weight", "$[1].name", "$[1].amount", "$[2].name", "$[3].amount"], refused.Problems.Select(problem => problem.Path));
    }

    [Fact]
    public void A_bill_that_nobody_shares_is_not_cut()
    {
        Assert.Empty(Split(100m));
    }

    private static IReadOnlyList<decimal> Split(decimal total, params BillPart[] parts) => BillSplit.Of(total, parts, Dollars).Value.Amounts;
}
