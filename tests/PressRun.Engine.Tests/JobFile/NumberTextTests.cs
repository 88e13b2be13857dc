using System.Globalization;
using CsCheck;
using PressRun.JobFile.Reading;

namespace PressRun.Engine.Tests.JobFile;

public class NumberTextTests
{
    [Theory]
    [InlineData("0", "0")]
    [InlineData("-0", "0")]
    [InlineData("-0.00", "0")]
    [InlineData("12.50", "12.5")]
    [InlineData("1e3", "1000")]
    [InlineData("1.5E+2", "150")]
    [InlineData("-25e-1", "-2.5")]
    [InlineData("0.0000000000000000000000000001", "0.0000000000000000000000000001")]
    [InlineData("79228162514264337593543950335", "79228162514264337593543950335")]
    [InlineData("100e-30", "0.0000000000000000000000000001")]
    [InlineData("0e99999", "0")]
    public void Reads_numbers_exactly(string text, string expected)
    {
        Assert.True(NumberText.TryParse(text, out var number));
        Assert.Equal(expected, NumberText.Plain(number));
    }

    [Theory]
    [InlineData("")]
    [InlineData("-")]
    [InlineData(".")]
    [InlineData("e5")]
    [InlineData("1e")]
    [InlineData("1e+")]
    [InlineData("--1")]
    [InlineData("+1")]
    [InlineData(" 1")]
    [InlineData("1 ")]
    [InlineData("1,000")]
    [InlineData("0x10")]
    [InlineData("NaN")]
    [InlineData("Infinity")]
    [InlineData("١")]
    [InlineData("1e29")]
    [InlineData("1e99999999999999999999")]
    [InlineData("1e-29")]
    [InlineData("1e-99999999999999999999")]
    [InlineData("79228162514264337593543950336")]
    [InlineData("1.00000000000000000000000000001")]
    public void Refuses_what_is_no_number_or_cannot_be_held_exactly(string text) => Assert.False(NumberText.TryParse(text, out _));

    [Fact]
    public void Every_decimal_reads_back_as_it_was_written() => Gen.Decimal.Sample(number =>
    {
        var written = NumberText.Plain(number);
        Assert.True(NumberText.TryParse(written, out var read));
        Assert.Equal(number, read);
        Assert.Equal(written, NumberText.Plain(read));
    });

    [Fact]
    public void The_framework_reads_the_same_number() => Gen.Select(Gen.Long, Gen.Int[0, 28], Gen.Int[-9, 9]).Sample((digits, scale, exponent) =>
    {
        var text = string.Create(CultureInfo.InvariantCulture, $"{new decimal((int)digits, (int)(digits >> 32), 0, digits < 0, (byte)scale)}e{exponent}");
        if (NumberText.TryParse(text, out var read))
        {
            Assert.Equal(decimal.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture), read);
        }
    });
}
