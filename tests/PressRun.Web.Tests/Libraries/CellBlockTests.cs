using PressRun.Web.Libraries.Grid;

namespace PressRun.Web.Tests.Libraries;

public sealed class CellBlockTests
{
    [Theory]
    [InlineData("a\tb\nc\td", "a|b / c|d")]
    [InlineData("a\tb\r\nc\td\r\n", "a|b / c|d")]
    [InlineData("a\t\tb", "a||b")]
    [InlineData("\"two\nlines\"\tb", "two lines|b")]
    [InlineData("\"say \"\"hi\"\"\"\tb", "say \"hi\"|b")]
    [InlineData("5\" x 7\"\tb", "5\" x 7\"|b")]
    [InlineData("\"5.5\tb", "\"5.5|b")]
    [InlineData("one", "one")]
    [InlineData("", "")]
    public void A_block_is_read_as_spreadsheets_write_it(string text, string wanted) =>
        Assert.Equal(wanted, string.Join(" / ", CellBlock.Read(text).Select(row => string.Join('|', row))));

    [Fact]
    public void A_block_without_end_is_cut_off() =>
        Assert.True(CellBlock.Read(string.Concat(Enumerable.Repeat("x\t", 200_000))).Sum(row => row.Count) <= CellBlock.MostCells + 1);
}
