using Bunit;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Paper;
using PressRun.Web.Start;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Start;

public class NextStepTests
{
    private static readonly Stock Own = ARun.Stocks[0];

    private static readonly IReadOnlyList<Stock> Examples = FirstNumber.For(PaperRegion.Iso).Stocks;

    private static readonly Shop FirstList = FirstNumber.For(PaperRegion.Iso).Shop("Willow Prints", ARun.Day);

    [Fact]
    public async Task A_press_that_was_just_set_up_is_led_through_all_in_the_order_in_which_it_is_needed()
    {
        await using var page = new BunitContext();
        var line = Line(page, StillNeeded.Of(Examples, [("willow", FirstList)], mailer: false, postage: false));

        Assert.Equal(
            "Next, to see which paper is worth it: your own papers (or with their prices from one file), then your shop's prices for them, then a mailer and your carrier's postage.",
            string.Join(' ', line.Find("p").TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
        Assert.Equal(["papers", "shops/willow/import", "shops/willow", "post"], Links(line));
        Assert.Equal(["papers", "papers/import", "shops"], Links(Line(page, StillNeeded.Of(Examples, [], mailer: true, postage: true))));
    }

    [Fact]
    public async Task What_is_there_is_not_asked_for_again()
    {
        await using var page = new BunitContext();

        Assert.Equal(["shops/willow", "shops/willow/import"], Links(Line(page, StillNeeded.Of([.. Examples, Own], [("willow", FirstList)], mailer: true, postage: true))));
        Assert.Equal(["post"], Links(Line(page, StillNeeded.Of([Own], [("willow", ARun.Shop)], mailer: true, postage: false))));
        Assert.Equal(["post"], Links(Line(page, StillNeeded.Of([Own], [("willow", FirstList), ("birch", ARun.Shop)], mailer: false, postage: true))));
        Assert.Equal(["shops"], Links(Line(page, StillNeeded.Of([Own], [], mailer: true, postage: true))));
    }

    [Fact]
    public async Task The_line_is_gone_when_nothing_is_missing()
    {
        await using var page = new BunitContext();
        var view = APost.View();

        Assert.Empty(Line(page, StillNeeded.Of([Own], [("willow", ARun.Shop)], mailer: true, postage: true)).Markup.Trim());
        Assert.Empty(Line(page, view.Needed).Markup.Trim());

        // A mailer that is archived and still posts is none to ask for.
        Assert.False((view with { Mailers = [] }).Needed.Any);
        Assert.True((view with { Mailers = [], Source = view.Source with { Channels = [] } }).Needed.Mailer);
    }

    [Fact]
    public async Task Comparing_comes_last_and_is_all_that_is_left_while_a_book_is_planned_on_example_papers()
    {
        await using var page = new BunitContext();
        var book = new PrintingName("Marsh Letters", "marsh-letters", 1);
        var lacking = Line(page, StillNeeded.Of([.. Examples, Own], [("willow", ARun.Shop)], mailer: true, postage: false), book);
        var ready = StillNeeded.Of([.. Examples, Own], [("willow", ARun.Shop)], mailer: true, postage: true);

        Assert.Equal(["post", "titles/marsh-letters/1/papers"], Links(lacking));
        Assert.Equal(Examples.Select(stock => stock.Id), ready.Examples);
        Assert.Equal(["titles/marsh-letters/1/papers"], Links(Line(page, ready, book)));
        Assert.Contains("compare your papers for", Line(page, ready, book).Find("a").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void A_shop_that_prices_whole_books_on_any_paper_prices_ones_own()
    {
        var books = FirstList with { BookPrices = [new BookPrice(Binding.Saddle, 4, 100, null, [new BookStep(1, 2m, 0m)])] };

        Assert.False(StillNeeded.Of([Own], [("willow", books)], mailer: true, postage: true).Any);
        Assert.True(StillNeeded.Of(Examples, [("willow", books)], mailer: true, postage: true).Prices);
    }

    private static IRenderedComponent<NextStep> Line(BunitContext page, StillNeeded needed, PrintingName? compare = null) =>
        page.Render<NextStep>(parameters => parameters.Add(line => line.Needed, needed).Add(line => line.Compare, compare));

    private static IEnumerable<string?> Links(IRenderedComponent<NextStep> line) => line.FindAll("a").Select(link => link.GetAttribute("href"));
}
