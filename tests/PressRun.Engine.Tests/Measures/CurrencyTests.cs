using PressRun.Engine.Measures;

namespace PressRun.Engine.Tests.Measures;

public sealed class CurrencyTests
{
    private static readonly Currency Yen = Currency.Find("JPY")!;
    private static readonly Currency Dollar = Currency.Find("USD")!;

    [Theory]
    [InlineData("JPY", 0)] // MON-14. OPC UA Part 3, 8.61, currency table (ISO 4217).
    [InlineData("USD", 2)] // MON-15. The same table.
    [InlineData("BHD", 3)] // MON-17. HCL Commerce, table of ISO currency codes.
    [InlineData("KWD", 3)] // ISO 4217 list one, from memory.
    [InlineData("UYW", 4)] // ISO 4217 list one, from memory.
    public void The_minor_unit_has_the_digits_of_ISO_4217(string code, int digits)
    {
        var currency = Currency.Find(code)!;
        Assert.Equal(digits, currency.MinorDigits);
        Assert.Equal((decimal)Math.Pow(10, -digits), currency.MinorUnit);
    }

    [Theory]
    [InlineData("2.5", "3")] // MON-01. MidpointRounding table, dotnet/dotnet-api-docs.
    [InlineData("3.5", "4")] // MON-02. The same table.
    [InlineData("2.8", "3")] // MON-04. The same table.
    [InlineData("-2.5", "-3")] // The same table.
    public void Halves_go_away_from_zero(string amount, string rounded) => Assert.Equal(Number(rounded), Yen.Round(Number(amount)));

    [Theory]
    [InlineData("526.925", "526.93")] // MON-06. cnblogs.com/hugoNB/p/7170967; binary floating point gives 526.92.
    [InlineData("3.376", "3.38")] // POS-36. DMM P013, archive of 2003-08-10: rounding off.
    public void Half_a_cent_goes_up_whatever_binary_floating_point_would_say(string amount, string rounded) =>
        Assert.Equal(Number(rounded), Dollar.Round(Number(amount)));

    [Fact]
    public void Amounts_are_written_with_the_digits_of_the_minor_unit()
    {
        Assert.Equal("305.80", Dollar.Format(305.8m));
        Assert.Equal("306", Yen.Format(306m));
        Assert.Equal("-0.500", Currency.Find("KWD")!.Format(-0.5m));
    }

    [Fact]
    public void Unknown_and_lower_case_codes_are_not_found()
    {
        Assert.Null(Currency.Find("XXX"));
        Assert.Null(Currency.Find("usd"));
    }

    [Fact]
    public void Every_currency_is_found_by_its_own_code() => Assert.All(Currency.All, currency => Assert.Same(currency, Currency.Find(currency.Code)));

    private static decimal Number(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
