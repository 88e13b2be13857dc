using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Web.Editions;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Editions;

public class EditionConsequencesTests
{
    [Theory]
    [InlineData("0.0000000000000000000000000001", "148", "page.width")]
    [InlineData("105", "0.0000000000000000000000000001", "page.height")]
    [InlineData("105", "99999999", "page.height")]
    public void A_page_that_cannot_be_is_told_while_it_is_typed(string width, string height, string place)
    {
        var source = Records.Source();
        var page = new Size(Length.FromMillimetres(decimal.Parse(width, System.Globalization.CultureInfo.InvariantCulture)), Length.FromMillimetres(decimal.Parse(height, System.Globalization.CultureInfo.InvariantCulture)));

        var consequences = EditionConsequences.Of(source, source.Edition with { Page = page }, "#336699");

        Assert.Null(consequences.Estimate);
        Assert.NotNull(consequences.At(place));
    }
}
