using PressRun.Web.Papers;
using PressRun.Web.Start;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Papers;

public class PaperChoiceTests
{
    private static readonly PapersView View = APost.View();

    // Priced papers of 70 to 150 g/m² serve inside, those of 150 and 250 as a cover: seven by two can all be named.
    [Fact]
    public void A_first_visit_tries_the_priced_papers_that_suit_the_inside_and_the_cover_at_the_plans_quantity()
    {
        var choice = PaperChoice.Read(View, null, null, null);

        Assert.Equal(["thin", "green", "g70", "g95", "g110", "g130", "g150"], choice.Tried[1]);
        Assert.Equal(["thick", "g150"], choice.Tried[0]);
        Assert.Empty(choice.Without);
        Assert.Equal([100], choice.Quantities);
        Assert.Equal("post", choice.ChannelId);
    }

    [Fact]
    public void The_cover_waits_to_be_asked_for_where_more_would_come_of_it_than_can_be_named()
    {
        var more = View.Source.Stocks.First(stock => stock.Id == "thick");
        var (source, price) = (View.Source, View.Source.PriceList.Paper[0]);
        var many = APost.View(source with { Stocks = [.. source.Stocks, more with { Id = "thicker" }], PriceList = source.PriceList with { Paper = [.. source.PriceList.Paper, price with { StockId = "thicker" }] } });

        Assert.Equal([1], PaperChoice.Read(many, null, null, null).Tried.Keys);
        Assert.Equal(["thick", "g150", "thicker"], many.ToTry(0));
    }

    [Fact]
    public void A_comparison_starts_from_ones_own_papers_where_the_plan_still_stands_on_examples()
    {
        var number = FirstNumber.For(Engine.Paper.PaperRegion.Iso);
        var (source, price) = (View.Source, View.Source.PriceList.Paper[0]);
        var parts = source.Edition.Parts;
        var onExamples = APost.View(source with
        {
            Edition = source.Edition with
            {
                Parts = [parts[0] with { Part = parts[0].Part with { StockId = FirstNumber.CoverStockId } }, parts[1] with { Part = parts[1].Part with { StockId = FirstNumber.InsideStockId } }],
            },
            Stocks = [.. source.Stocks, .. number.Stocks],
            PriceList = source.PriceList with { Paper = [.. source.PriceList.Paper, price with { StockId = FirstNumber.CoverStockId }, price with { StockId = FirstNumber.InsideStockId }] },
        });

        var choice = PaperChoice.Read(onExamples, null, null, null);
        var reading = PapersAnswer.Of(onExamples.Source, choice).Readings[100]!;

        Assert.Equal([0, 1], choice.Without.Order());
        Assert.All(reading.Rows, row => Assert.DoesNotContain(row.StockIds, id => id is FirstNumber.CoverStockId or FirstNumber.InsideStockId));
        Assert.Null(reading.Now);
        Assert.Same(reading.Cheapest, reading.Start);
        var again = PaperChoice.Read(onExamples, choice.TriedText, null, null);
        Assert.Equal(choice.Without.Order(), again.Without.Order());
        Assert.Equal(choice.TriedText, again.TriedText);
        Assert.Contains(PapersAnswer.Of(onExamples.Source, choice with { Without = new HashSet<int>() }).Readings[100]!.Rows, row => row.StockIds[1] == FirstNumber.InsideStockId);
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
