using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Tests.Support;

namespace PressRun.Engine.Tests.Editions;

public class OnStocksTests
{
    private static readonly Edition Weighed = ExampleJob.Create().Edition with { Weighed = new Weighed(Mass.FromGrams(200m), Length.FromMillimetres(9m)) };

    private static readonly IReadOnlyList<Stock> Papers = ExampleJob.Create().Stocks;

    private static IReadOnlyList<string> Own => [.. Weighed.Parts.Select(part => part.StockId)];

    [Fact]
    public void There_and_back_the_scale_says_what_it_said()
    {
        string[] other = [.. Weighed.Parts.Select((part, place) => place == 1 ? Papers.First(stock => stock.Id != part.StockId).Id : part.StockId)];
        var there = Weighed.OnStocks(other, Papers);

        Assert.Equal(other, there.Parts.Select(part => part.StockId));
        Assert.NotEqual(Weighed.Weighed, there.Weighed);
        Assert.Equal(Weighed.Weighed, there.OnStocks(Own, Papers).Weighed);
    }

    [Fact]
    public void On_its_own_papers_it_is_the_book_that_was_weighed() => Assert.Same(Weighed, Weighed.OnStocks(Own, Papers));

    [Fact]
    public void Of_a_paper_that_nobody_knows_the_scale_says_nothing()
    {
        string[] unknown = [.. Own.Skip(1).Prepend("nobody-knows")];

        Assert.Null(Weighed.OnStocks(unknown, Papers).Weighed);
        Assert.Null(Weighed.OnStocks(Own.Reverse().ToArray(), []).Weighed);
    }

    [Fact]
    public void A_scale_that_was_far_off_never_makes_a_copy_weigh_less_than_nothing()
    {
        var light = Papers[0] with { Id = "light", Weight = PaperWeight.FromGrammage(20m) };
        var nearlyNothing = Weighed with { Weighed = new Weighed(Mass.FromGrams(0.1m), null) };

        Assert.Equal(new Weighed(Mass.Zero, null), nearlyNothing.OnStocks([.. Own.Select(_ => light.Id)], [.. Papers, light]).Weighed);
    }
}
