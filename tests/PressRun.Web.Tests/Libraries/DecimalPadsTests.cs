using PressRun.Data.Import.Tables;
using PressRun.JobFile;
using PressRun.Web.Libraries.Grid;

namespace PressRun.Web.Tests.Libraries;

public sealed class DecimalPadsTests
{
    [Theory]
    [InlineData("0.005", "")]
    [InlineData("1.25", "0")]
    [InlineData("12", ".000")]
    [InlineData("12 kg", "")]
    [InlineData("", "")]
    public void Numbers_are_filled_up_to_the_longest_of_their_column(string text, string pad)
    {
        string[] texts = ["0.005", "1.25", "12", "12 kg", ""];
        var pads = new DecimalPads(
            [.. texts.Select((cell, at) => new GridRow($"{at}", [cell]))], [new Column("price", "Price", new MoneyCell(JobRules.Amount))], decimalComma: false);

        Assert.Equal(pad, pads.PadOf(0, text));
    }
}
