using PressRun.JobFile.Reading;

namespace PressRun.Engine.Tests.JobFile;

public class JsonPathTests
{
    // RFC 9535, section 2.5.1: what member-name-shorthand cannot say stands in brackets and quotes.
    [Theory]
    [InlineData("pages", "$.pages")]
    [InlineData("_x1", "$._x1")]
    [InlineData("größe", "$.größe")]
    [InlineData("silk-cover", "$['silk-cover']")]
    [InlineData("80lb", "$['80lb']")]
    [InlineData("", "$['']")]
    [InlineData("it's", @"$['it\'s']")]
    [InlineData(@"a\b", @"$['a\\b']")]
    [InlineData("a\nb", @"$['a\u000ab']")]
    public void Writes_member_names_as_the_rfc_does(string name, string path) => Assert.Equal(path, JsonPath.Root.Member(name).ToString());

    [Fact]
    public void Goes_on_from_a_place() =>
        Assert.Equal("$.shops[2].priceLists[0].sheets", JsonPath.StartingAt("$.shops[2]").Member("priceLists").Item(0).Member("sheets").ToString());
}
