using System.Globalization;
using PressRun.Data.Import.Tables;

namespace PressRun.Data.Tests.Import;

public sealed class NumberCellsTests
{
    [Theory]
    [InlineData("en", "1.5", "1.5")]
    [InlineData("en", "1,5", "1.5")]
    [InlineData("en", "1,200", "1200")]
    [InlineData("en", "0,120", "0.12")]
    [InlineData("en", "1,234.50", "1234.5")]
    [InlineData("en", "1.234,50", "1234.5")]
    [InlineData("de", "1,5", "1.5")]
    [InlineData("de", "1.200", "1200")]
    [InlineData("de", "1.5", "1.5")]
    [InlineData("de", "0.120", "0.12")]
    [InlineData("de", "1,200", "1.2")]
    [InlineData("fr", "1\u202F234,5", "1234.5")]
    [InlineData("de-CH", "1'234.5", "1234.5")]
    [InlineData("en", "1,200,000", "1200000")]
    public void A_number_is_read_as_it_was_meant_where_that_is_plain(string culture, string text, string wanted)
    {
        Assert.True(NumberCells.TryParse(text, CultureInfo.GetCultureInfo(culture), out var number));

        Assert.Equal(decimal.Parse(wanted, CultureInfo.InvariantCulture), number);
    }

    [Theory]
    [InlineData("1,2,3")]
    [InlineData("1.2.3")]
    [InlineData("12 mm")]
    [InlineData("one")]
    [InlineData("1,23,456.7")]
    [InlineData("")]
    public void What_is_no_number_is_refused(string text) => Assert.False(NumberCells.TryParse(text, CultureInfo.InvariantCulture, out _));
}
