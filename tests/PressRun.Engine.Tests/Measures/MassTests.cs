using CsCheck;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Tests.Measures;

public sealed class MassTests
{
    private static readonly Gen<decimal> Numbers = Gen.Select(Gen.Int[-100_000, 100_000], Gen.Int[0, 999], (whole, part) => whole + (part / 1000m));

    [Fact]
    public void Settling_takes_off_only_what_lies_past_twelve_decimals()
    {
        Assert.Equal(1m, Mass.FromGrams(1.0000000000000000000000000001m).Settled().Grams);
        Assert.Equal(1.000000000001m, Mass.FromGrams(1.000000000001m).Settled().Grams);
    }

    [Fact]
    public void It_can_be_written_as_text() => Assert.Contains("Grams = 1.5", Mass.FromGrams(1.5m).ToString(), StringComparison.Ordinal);

    [Fact]
    public void The_default_is_no_mass() => Assert.Equal(Mass.Zero, default);

    [Fact]
    public void A_pound_is_453_59237_grams_and_sixteen_ounces()
    {
        Assert.Equal(453.59237m, Mass.FromPounds(1m).Grams);
        Assert.Equal(Mass.FromPounds(1m), Mass.FromOunces(16m));
    }

    [Fact]
    public void Fifty_one_pounds_are_the_lifting_equations_load_constant_in_kilograms()
    {
        // SAF-01. Load constant of the revised NIOSH lifting equation, 51 lb (osha.gov, poultry eTool).
        Assert.Equal(23.13m, Mass.FromPounds(51m).Kilograms, 2);
    }

    [Fact]
    public void Pounds_ounces_and_kilograms_come_back_as_they_went_in() => Numbers.Sample(number =>
    {
        Assert.Equal(number, Mass.FromPounds(number).Pounds);
        Assert.Equal(number, Mass.FromOunces(number).Ounces);
        Assert.Equal(number, Mass.FromKilograms(number).Kilograms);
    });

    [Fact]
    public void Conversions_agree_with_a_units_library() => Numbers.Sample(number =>
    {
        Agrees(UnitsNet.Mass.FromPounds((double)number).Grams, Mass.FromPounds(number).Grams);
        Agrees(UnitsNet.Mass.FromOunces((double)number).Grams, Mass.FromOunces(number).Grams);
        Agrees(UnitsNet.Mass.FromGrams((double)number).Pounds, Mass.FromGrams(number).Pounds);
        Agrees(UnitsNet.Mass.FromGrams((double)number).Ounces, Mass.FromGrams(number).Ounces);
    });

    [Fact]
    public void Sums_products_and_order_follow_the_grams() => Gen.Select(Numbers, Numbers).Sample((a, b) =>
    {
        var (left, right) = (Mass.FromGrams(a), Mass.FromGrams(b));
        Assert.Equal(a + b, (left + right).Grams);
        Assert.Equal(a - b, (left - right).Grams);
        Assert.Equal(a * b, (left * b).Grams);
        Assert.Equal(left * b, b * left);
        Assert.Equal(a.CompareTo(b), left.CompareTo(right));
        Assert.Equal(a < b, left < right);
        Assert.Equal(a > b, left > right);
        Assert.Equal(a <= b, left <= right);
        Assert.Equal(a >= b, left >= right);
    });

    private static void Agrees(double oracle, decimal ours) => Assert.Equal(oracle, (double)ours, Math.Abs(oracle) * 1e-13);
}
