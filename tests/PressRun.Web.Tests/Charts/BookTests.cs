using PressRun.Engine.Editions;
using PressRun.Web.Charts;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Charts;

public class BookTests
{
    private static readonly BookShape Shape = BookShape.Of(ARun.Prepared.Block, ARun.Prepared.Impose(), "#446688");

    [Fact]
    public void Its_edges_are_its_papers_from_the_outside_in() =>
        Assert.Equal([0, 1, 1, 1, 1, 1, 1, 2], Shape.Edges.Select(edge => edge.Tint));

    [Fact]
    public void It_is_stapled_at_a_quarter_and_three_quarters_of_its_height() =>
        Assert.Equal([0.25, 0.75], Shape.Staples);

    [Fact]
    public void It_lies_open_at_its_middle_pages() =>
        Assert.Equal((16, 17), Shape.CentrePages);

    [Fact]
    public void Its_spread_keeps_the_proportions_of_its_pages()
    {
        var narrow = BookGeometry.Open(Shape with { Width = 100, Height = 200 }, 400);
        var wide = BookGeometry.Open(Shape with { Width = 200, Height = 100 }, 400);
        Assert.True(narrow.Height > 2.5 * wide.Height);
    }

    [Fact]
    public void A_closed_one_fits_its_place_and_keeps_its_proportions()
    {
        var drawn = BookGeometry.Closed(Shape, 46, 52);
        Assert.True(drawn.Width <= 46.001);
        Assert.True(drawn.Height <= 52.001);
        var tall = BookGeometry.Closed(Shape with { Width = 50, Height = 200 }, 46, 52);
        Assert.True(tall.Width < tall.Height / 2);
    }

    [Fact]
    public void A_thick_book_draws_fewer_lines_and_still_one_of_every_part_in_order()
    {
        var edges = new List<PaperEdge> { new(0, 0.3, 0) };
        edges.AddRange(Enumerable.Repeat(new PaperEdge(1, 0.1, 1), 200));
        edges.Add(new PaperEdge(2, 0.1, 2));
        var drawn = (Shape with { Edges = edges }).EdgesDrawn(8);
        Assert.Equal(8, drawn.Count);
        Assert.Equal([0, 1, 2], drawn.Select(edge => edge.Part).Distinct());
    }

    [Fact]
    public void Other_bindings_have_no_middle_and_loose_leaves_no_staples()
    {
        var job = ARun.Job with { Edition = ARun.Edition(Binding.Loose) };
        var prepared = PressRun.Engine.Costing.PreparedJob.Prepare(job).Value;
        var shape = BookShape.Of(prepared.Block, prepared.Impose(), null);
        Assert.Null(shape.CentrePages);
        Assert.Empty(shape.Staples);
        Assert.Equal(BookShape.PlainCover, shape.CoverColour);
    }

    // Luminance of the sRGB primaries: WCAG 2.2, definition of relative luminance.
    [Theory]
    [InlineData("#ffffff", 1.0)]
    [InlineData("#000000", 0.0)]
    [InlineData("#ff0000", 0.2126)]
    [InlineData("#00ff00", 0.7152)]
    [InlineData("#0000ff", 0.0722)]
    public void Luminance_is_that_of_the_web_content_guidelines(string colour, double luminance) =>
        Assert.Equal(luminance, Contrast.Luminance(colour), 4);
}
