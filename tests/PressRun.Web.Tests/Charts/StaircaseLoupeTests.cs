using PressRun.Engine.Ladder;
using PressRun.Web.Charts;

namespace PressRun.Web.Tests.Charts;

public class StaircaseLoupeTests
{
    [Fact]
    public void It_shows_the_copies_next_to_the_marker_and_lies_where_the_line_is_not()
    {
        var loupe = Loupe(new CostCurve(25, [.. Enumerable.Range(25, 476).Select(copies => (decimal)copies)]), 150)!;
        Assert.Equal((138, 162), (loupe.From, loupe.To));
        Assert.Equal(25, loupe.Dots.Count);
        Assert.Equal(StaircaseFrame.Wide.Top, loupe.Top);
    }

    [Fact]
    public void At_the_end_of_the_range_it_looks_one_way_only() =>
        Assert.Equal((488, 500), Loupe(new CostCurve(25, [.. Enumerable.Range(25, 476).Select(copies => (decimal)copies)]), 500) is { } loupe ? (loupe.From, loupe.To) : default);

    [Fact]
    public void Where_the_line_starts_high_it_lies_below_it() =>
        Assert.True(Loupe(new CostCurve(100, [.. Enumerable.Range(0, 200).Select(more => 300m + (more / 100m))]), 150)!.Top > StaircaseFrame.Wide.Top + 100);

    [Fact]
    public void Where_no_corner_is_free_there_is_none() =>
        Assert.Null(Loupe(new CostCurve(1, [.. Enumerable.Repeat(170m, 199), 300m]), 100));

    [Fact]
    public void On_a_phone_it_hides_no_shaded_band()
    {
        var curve = new CostCurve(25, [.. Enumerable.Range(25, 376).Select(copies => (copies * 2m) - (copies >= 90 ? 12m : 0m) - (copies >= 210 ? 16m : 0m) + 120m)]);
        var drawing = StaircaseDrawing.Of(curve, curve.DearBands(), LadderJump.Of(curve), StaircaseFrame.Narrow);
        var loupe = StaircaseLoupe.Of(curve, curve.DearBands(), 205, drawing)!;
        Assert.Equal(2, drawing.Bands.Count);
        Assert.All(drawing.Bands, band => Assert.True(band.X + band.Width <= loupe.Left || band.X >= loupe.Left + loupe.Width));
    }

    [Fact]
    public void A_short_range_needs_none() =>
        Assert.Null(Loupe(new CostCurve(1, [.. Enumerable.Range(1, 20).Select(copies => (decimal)copies)]), 10));

    [Fact]
    public void A_dear_band_is_shaded_in_it_too()
    {
        var costs = Enumerable.Range(1, 300).Select(copies => copies < 150 ? copies : copies - 5m).ToList();
        Assert.Single(Loupe(new CostCurve(1, costs), 148)!.Bands);
    }

    private static StaircaseLoupe? Loupe(CostCurve curve, int quantity) =>
        StaircaseLoupe.Of(curve, curve.DearBands(), quantity, StaircaseDrawing.Of(curve, curve.DearBands(), LadderJump.Of(curve), StaircaseFrame.Wide));
}
