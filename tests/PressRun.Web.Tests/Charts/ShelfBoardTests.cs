using PressRun.Web.Charts;

namespace PressRun.Web.Tests.Charts;

public class ShelfBoardTests
{
    [Fact]
    public void Piles_are_as_wide_as_their_copies_are_thick_and_as_high_as_their_pages()
    {
        var board = ShelfBoard.Of([Pile(200, 2, 10), Pile(100, 2, 30)], 400, 110);
        var (first, second) = (board.Piles[0], board.Piles[1]);
        Assert.Equal(2, first.Height / second.Height, 6);
        Assert.Equal(3, (second.Width - 6) / (first.Width - 6), 6);
        Assert.Equal(110, first.Y + first.Height, 6);
    }

    [Fact]
    public void All_of_them_stand_on_the_board()
    {
        var board = ShelfBoard.Of([.. Enumerable.Repeat(Pile(200, 2, 40), 30)], 1000, 150);
        Assert.True(board.Piles[^1].X + board.Piles[^1].Width <= 1000.001);
    }

    [Fact]
    public void A_single_pile_is_no_thicker_than_it_is_to_scale_and_does_not_fill_the_board()
    {
        var pile = Assert.Single(ShelfBoard.Of([Pile(200, 2, 50)], 1000, 110).Piles);

        Assert.Equal(100, pile.Height, 6);
        Assert.Equal(50 + 6, pile.Width, 6);
    }

    [Fact]
    public void Copies_can_be_counted_where_they_are_wide_enough()
    {
        Assert.Equal(4, ShelfBoard.Of([Pile(200, 10, 5)], 200, 100).Piles[0].Backs.Count(move => move == 'M'));
        Assert.Empty(ShelfBoard.Of([Pile(200, 2, 5000)], 200, 100).Piles[0].Backs);
    }

    [Fact]
    public void A_sold_out_printing_still_has_a_place_to_point_at() =>
        Assert.True(ShelfBoard.Of([Pile(200, 2, 0), Pile(200, 2, 10)], 200, 100).Piles[0].Width >= 6);

    [Fact]
    public void An_empty_shelf_is_an_empty_board() => Assert.Empty(ShelfBoard.Of([], 100, 100).Piles);

    private static StandingPile Pile(double height, double thickness, int copies) => new("", "", height, thickness, copies, "#334455", false, "Title");
}
