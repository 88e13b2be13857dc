using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Web.Editions;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Editions;

public class EditionDifferenceTests
{
    [Fact]
    public void Two_equal_versions_differ_in_nothing()
    {
        var edition = Records.Edition();
        Assert.Empty(EditionDifference.Of(edition, edition with { Version = 9 }, id => id, Written.Metric));
    }

    [Fact]
    public void Each_field_that_differs_is_named_with_both_values()
    {
        var mine = Records.Edition();
        var theirs = mine with
        {
            Page = new Size(Length.FromMillimetres(148m), Length.FromMillimetres(210m)),
            Parts = [mine.Parts[0], mine.Parts[1] with { Part = mine.Parts[1].Part with { Pages = 28 } }],
        };
        Assert.Equal(
            [
                new EditionDifference("Page", "140 × 200 mm", "148 × 210 mm"),
                new EditionDifference("Part 2", "inside: 24 pages of Thin, black", "inside: 28 pages of Thin, black"),
                new EditionDifference("Part 3", "centre: 4 pages of green, black", "none"),
            ],
            EditionDifference.Of(mine, theirs, id => id == "thin" ? "Thin" : id, Written.Metric));
    }

    [Fact]
    public void How_many_copies_there_are_of_two_printings_is_no_change_of_the_book()
    {
        var first = Records.Edition();
        var planned = first with { Printing = 3, CopiesPrinted = null, PrintedOn = null, CopiesOnHand = 0, Price = 7m };
        Assert.Equal(["Price"], EditionDifference.OfBook(first, planned, id => id, Written.Metric).Select(difference => difference.What));
    }

    [Fact]
    public void A_save_that_changes_nothing_is_known_as_such()
    {
        var edition = Records.Edition();
        Assert.True(EditionDifference.None(edition, edition with { Parts = [.. edition.Parts], FixedCosts = [.. edition.FixedCosts], Version = 9 }));
        Assert.False(EditionDifference.None(edition, edition with { Parts = [.. edition.Parts.Skip(1)] }));
        Assert.False(EditionDifference.None(edition, edition with { Price = 7m }));
    }
}
