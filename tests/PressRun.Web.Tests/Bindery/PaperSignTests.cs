using PressRun.Engine.Bench;
using PressRun.Web.Bindery.Drawn;
using PressRun.Web.Tests.Support;

namespace PressRun.Web.Tests.Bindery;

public sealed class PaperSignTests
{
    // As a bench sheet on paper draws a pile: four in a row of 483 points, 194 units of the picture each (A4 less its margins).
    private const double PointsPerUnit = ((483d / 4) - 6) / 194;

    [Fact]
    public void Six_papers_are_told_apart_without_any_colour() =>
        Assert.Equal(6, Enumerable.Range(0, 6).Select(paper => string.Join(' ', Strokes(paper).Select(stroke => $"{stroke.X1:0.0},{stroke.Y1:0.0},{stroke.X2:0.0},{stroke.Y2:0.0}"))).Distinct().Count());

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(5)]
    public void A_pattern_stays_open_at_the_size_in_which_it_is_printed(int paper)
    {
        var strokes = Strokes(paper);
        // Neighbouring strokes of one direction, measured across them: at least twice the pen lies between.
        var across = strokes.Select(Across).Distinct().Order().ToList();
        var nearest = across.Zip(across.Skip(1), (one, next) => next - one).Where(gap => gap > 0.01).Min() * PointsPerUnit;
        Assert.True(nearest > 3 * PenLook.Of(Pen.Sign).Width * PdfPicture.PointsPerMillimetre, $"Strokes of paper {paper} lie {nearest:0.00} points apart.");
    }

    [Fact]
    public void Every_paper_of_a_book_has_its_own()
    {
        var view = ABench.View();
        Assert.Equal(view.Sheet!.Piles.Select(pile => pile.Part.Stock.Id).Distinct().Count(), PileRun.Of(view.Sheet.Piles).Select(run => view.SignOf(run.First.PartIndex)).Distinct().Count());
    }

    private static List<LineMark> Strokes(int paper) => [.. PaperSign.In(paper, 0, 0, 92, 12).Cast<LineMark>()];

    // How far a stroke's line passes from the corner, square to it.
    private static double Across(LineMark stroke)
    {
        var (dx, dy) = (stroke.X2 - stroke.X1, stroke.Y2 - stroke.Y1);
        return Math.Round(((stroke.X1 * dy) - (stroke.Y1 * dx)) / Math.Max(0.001, Math.Sqrt((dx * dx) + (dy * dy))), 3);
    }
}
