using PressRun.Data.Titles;
using PressRun.Web.Shelf;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Shelf;

public class ShelfViewTests
{
    [Fact]
    public void A_printing_that_is_only_planned_is_not_counted_among_those_that_copies_are_left_of()
    {
        var made = Records.Edition();
        var planned = made with { Id = Guid.NewGuid(), Printing = 3, CopiesPrinted = null, PrintedOn = null, CopiesOnHand = 0 };
        var title = new TitleRecord(made.TitleId, "marsh-letters", "Marsh Letters", "", "#8a4b36", "", false, 1);
        var view = new ShelfView([new TitleOnShelf(title, [On(planned), On(made)])], 1);
        Assert.Equal((1, 40, 1), (view.Printings, view.CopiesOnHand, view.Planned));
    }

    private static EditionOnShelf On(EditionRecord edition) => new(edition, null, null, default, null);
}
