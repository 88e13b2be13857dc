using PressRun.Web.Papers;
using PressRun.Web.Start;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Papers;

public class PaperChoiceTests
{
    private static readonly PapersView View = APost.View();

    [Fact]
    public void A_first_visit_tries_every_priced_paper_on_the_part_with_the_most_pages_at_the_plans_quantity()
    {
        var choice = PaperChoice.Read(View, null, null, null);

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

        var read = PaperChoice.Read(View, choice.TriedText, choice.QuantitiesText, choice.ChannelId);

        Assert.Equal(choice.Tried, read.Tried);
        Assert.Equal(choice.Quantities, read.Quantities);
        Assert.Equal("", read.ChannelId);
    }

    [Fact]
    public void A_mailer_to_a_region_can_be_chosen_where_no_way_of_selling_posts_anything()
    {
        var none = View with { Source = View.Source with { Channels = [] } };

        // The page lies in the board envelope only, and the carrier goes to one region.
        Assert.Equal("board~home", PaperChoice.Read(none, null, null, null).ChannelId);
        Assert.Equal("board~home", PaperChoice.Read(View, null, null, "board~home").ChannelId);
        Assert.Equal("post", PaperChoice.Read(View, null, null, "note~home").ChannelId);
        Assert.Equal(1.50m, PapersAnswer.Of(none.Through("board~home"), PaperChoice.Read(none, null, null, null)).Readings[100]!.Now!.Postage!.Price);
    }

    [Fact]
    public void What_is_missing_for_the_post_is_said_and_papers_are_compared_without_it()
    {
        var bare = View with { Mailers = [], Source = View.Source with { Channels = [], Postage = [] } };

        Assert.Null(View.MissingForPost);
        Assert.Equal("There is no mailer and no carrier's price yet.", bare.MissingForPost);
        Assert.Equal("The page lies in none of your mailers.", (View with { Mailers = [APost.Note] }).MissingForPost);
        Assert.Equal("", PaperChoice.Read(bare, null, null, null).ChannelId);
        Assert.NotNull(PapersAnswer.Of(bare.Source, PaperChoice.Read(bare, null, null, null)).Readings[100]!.Now);
    }

    [Fact]
    public void Papers_of_the_first_book_are_called_examples_and_passed_over_once_there_are_others()
    {
        var example = View.Source.Stocks.First(stock => stock.Id == "g70") with { Id = FirstNumber.InsideStockId, Name = "Inside paper" };
        var prices = View.Source.PriceList.Paper;
        var withExample = APost.View(View.Source with
        {
            Stocks = [.. View.Source.Stocks, example],
            PriceList = View.Source.PriceList with { Paper = [.. prices, prices[0] with { StockId = example.Id }] },
        });

        Assert.DoesNotContain(example.Id, withExample.ToTry(1));
        Assert.Equal("Inside paper (example)", withExample.StockName(example.Id));
        Assert.Equal([example.Id], (withExample with { Offered = [example.Id] }).ToTry(1));
        Assert.Equal("Inside paper of ours", APost.View(View.Source with { Stocks = [example with { Name = "Inside paper of ours" }] }).StockName(example.Id));
    }

    [Theory]
    [InlineData("9.g70~1.absent.g95~x", "0.-4.zebra.99999999999", "nobody")]
    [InlineData("~~..", "..", " ")]
    public void An_address_that_says_nonsense_harms_nothing(string tried, string copies, string by)
    {
        var choice = PaperChoice.Read(View, tried, copies, by);

        Assert.All(choice.Tried, part => Assert.True(part.Key == 1 && part.Value.SequenceEqual(["g95"])));
        Assert.Equal([100], choice.Quantities);
        Assert.Equal("post", choice.ChannelId);
    }
}
