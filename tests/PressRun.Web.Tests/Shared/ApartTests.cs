using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Tests.Shared;

public class ApartTests
{
    [Theory]
    [InlineData("ספר הים", "\u2068ספר הים\u2069")]
    [InlineData("كتاب 7", "\u2068كتاب 7\u2069")]
    [InlineData("Left \u202Etfel", "\u2068Left \u202Etfel\u2069")]
    [InlineData("a\u2069b", "\u2068ab\u2069")]
    [InlineData("\U0001E900", "\u2068\U0001E900\u2069")]
    [InlineData("Étude № 3", "Étude № 3")]
    [InlineData("海の本", "海の本")]
    [InlineData("", "")]
    public void Words_that_run_or_turn_the_other_way_are_set_apart_and_others_stay(string words, string apart) => Assert.Equal(apart, Apart.Of(words));
}
