using PressRun.Web.Papers;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Papers;

public class PaperChoiceTests
{
    private static readonly PapersView View = APost.View();

    [Fact]
    public void A_first_visit_tries_every_priced_paper_on_the_part_with_the_most_pages_at_the_plans_quantity()
    {
        var choice = PaperChoice.Read(View.Source, View.Offered, null, null, null);

        var (part, papers) = Assert.Single(choice.Tried);
        Assert.Equal(1, part);
        Assert.Equal(8, papers.Count);
        Assert.DoesNotContain("unpriced", papers);
        Assert.Equal([100], choice.Quantities);
        Assert.Equal("post", choice.ChannelId);
    }

    [Fact]
    public void What_stands_in_the_address_comes_back_as_it_was()
    {
        var choice = new PaperChoice(new Dictionary<int, IReadOnlyList<string>> { [0] = ["thick", "g150"], [1] = ["g70"] }, [100, 250], "");

        var read = PaperChoice.Read(View.Source, View.Offered, choice.TriedText, choice.QuantitiesText, choice.ChannelId);

        Assert.Equal(choice.Tried, read.Tried);
        Assert.Equal(choice.Quantities, read.Quantities);
        Assert.Equal("", read.ChannelId);
    }

    [Theory]
    [InlineData("9.g70~1.absent.g95~x", "0.-4.zebra.99999999999", "nobody")]
    [InlineData("~~..", "..", " ")]
    public void An_address_that_says_nonsense_harms_nothing(string tried, string copies, string by)
    {
        var choice = PaperChoice.Read(View.Source, View.Offered, tried, copies, by);

        Assert.All(choice.Tried, part => Assert.True(part.Key == 1 && part.Value.SequenceEqual(["g95"])));
        Assert.Equal([100], choice.Quantities);
        Assert.Equal("post", choice.ChannelId);
    }
}
