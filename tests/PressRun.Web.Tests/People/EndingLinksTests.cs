using PressRun.Web.People;

namespace PressRun.Web.Tests.People;

public sealed class EndingLinksTests
{
    [Fact]
    public void Whoever_loses_the_right_to_make_links_is_told_of_with_the_open_ones_and_their_quotes()
    {
        Assert.Equal("3 open links that they made end too, to quotes 4 and 7. Their readers need new ones.", EndingLinks.TakenOut([4, 4, 7]));
        Assert.Equal("One open link that they made ends too, to quote 4. Its reader needs a new one.", EndingLinks.TakenOut([4]));
        Assert.Equal("Making them a reader ends 2 open links of theirs, to quote 4.", EndingLinks.AsReader([4, 4]));
        Assert.Equal("Making them a reader ends one open link of theirs, to quote 4.", EndingLinks.AsReader([4]));
        Assert.Equal("2 open links that you made end with it, to quotes 4 and 7. Their readers need new ones.", EndingLinks.Left([4, 7]));
        Assert.Equal("One open link that you made ends with it, to quote 7. Its reader needs a new one.", EndingLinks.Left([7]));
        Assert.Equal((null, null, null), (EndingLinks.TakenOut([]), EndingLinks.AsReader([]), EndingLinks.Left([])));
    }
}
