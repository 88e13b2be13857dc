using CsCheck;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Tests.Measures;

public sealed class LengthTests
{
    private static readonly Gen<decimal> Inches = Gen.Select(Gen.Int[-100_000, 100_000], Gen.Int[1, 64], (whole, part) => whole + (part / 64m));

    [Fact]
    public void Settling_takes_off_only_what_lies_past_twelve_decimals()
    {
        Assert.Equal(1m, Length.FromMillimetres(1.0000000000000000000000000001m).Settled().Millimetres);
        Assert.Equal(1.000000000001m, Length.FromMillimetres(1.000000000001m).Settled().Millimetres);
    }

    [Fact]
    public void It_can_be_written_as_text() => Assert.Contains("Millimetres = 1.5", Length.FromMillimetres(1.5m).ToString(), StringComparison.Ordinal);

    [Fact]
    public void The_default_is_no_length() => Assert.Equal(Length.Zero, default);

    [Fact]
    public void An_inch_is_25_4_millimetres() => Assert.Equal(25.4m, Length.FromInches(1m).Millimetres);

    [Fact]
    public void Seventeen_inches_hold_eight_and_a_half_exactly_twice() =>
        Assert.Equal(2m, Length.FromInches(17m).Millimetres / Length.FromInches(8.5m).Millimetres);

    [Fact]
    public void A_caliper_in_inches_reads_in_millimetres_as_in_the_table()
    {
        // PAP-22. Paper weights and conversion tables, row of 20 lb bond and 50 lb offset, mcgpaper.com.
        Assert.Equal(0.097m, Length.FromInches(0.0038m).Millimetres, 3);
    }

    [Fact]
    public void Inches_come_back_as_they_went_in() => Inches.Sample(inches => Assert.Equal(inches, Length.FromInches(inches).Inches));

    [Fact]
    public void Micrometres_and_centimetres_come_back_as_they_went_in() => Inches.Sample(number =>
    {
        Assert.Equal(number, Length.FromMicrometres(number).Micrometres);
        Assert.Equal(number * 10m, Length.FromCentimetres(number).Millimetres);
    });

    [Fact]
    public void Conversions_agree_with_a_units_library() => Inches.Sample(number =>
    {
        Agrees(UnitsNet.Length.FromInches((double)number).Millimeters, Length.FromInches(number).Millimetres);
        Agrees(UnitsNet.Length.FromMillimeters((double)number).Inches, Length.FromMillimetres(number).Inches);
        Agrees(UnitsNet.Length.FromCentimeters((double)number).Inches, Length.FromCentimetres(number).Inches);
        Agrees(UnitsNet.Length.FromMicrometers((double)number).Millimeters, Length.FromMicrometres(number).Millimetres);
    });

    [Fact]
    public void Sums_products_and_order_follow_the_millimetres() => Gen.Select(Inches, Inches).Sample((a, b) =>
    {
        var (left, right) = (Length.FromMillimetres(a), Length.FromMillimetres(b));
        Assert.Equal(a + b, (left + right).Millimetres);
        Assert.Equal(a - b, (left - right).Millimetres);
        Assert.Equal(a * b, (left * b).Millimetres);
        Assert.Equal(left * b, b * left);
        Assert.Equal(a.CompareTo(b), left.CompareTo(right));
        Assert.Equal(a < b, left < right);
        Assert.Equal(a > b, left > right);
        Assert.Equal(a <= b, left <= right);
        Assert.Equal(a >= b, left >= right);
    });

    private static void Agrees(double oracle, decimal ours) => Assert.Equal(oracle, (double)ours, Math.Abs(oracle) * 1e-13);
}
