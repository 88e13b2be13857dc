using System.Text.RegularExpressions;
using PressRun.Engine.Ladder;
using PressRun.Web.Charts;

namespace PressRun.Web.Tests.Charts;

public partial class StaircaseDrawingTests
{
    private static readonly StaircaseFrame Frame = new(120, 120, 10, 10, 110, 110, 5, 4);

    [Fact]
    public void The_line_moves_only_across_and_down()
    {
        var drawing = Draw(new CostCurve(1, [1m, 2m, 3m, 5m, 4m]));
        Assert.DoesNotMatch(SlantedMoves(), drawing.Path);
        Assert.Matches(OnlyLevelMoves(), drawing.Path);
    }

    [Fact]
    public void A_drop_breaks_the_line_and_shows_an_open_dot_above_a_closed_one()
    {
        var drawing = Draw(new CostCurve(10, [10m, 11m, 12m, 6m, 7m]));
        Assert.Equal(2, drawing.Path.Count(move => move == 'M'));
        Assert.Collection(
            drawing.Dots,
            open =>
            {
                Assert.True(open.Open);
                Assert.Equal(drawing.X(13), open.X);
                Assert.Equal(drawing.Y(12m), open.Y);
            },
            closed =>
            {
                Assert.False(closed.Open);
                Assert.Equal(drawing.X(13), closed.X);
                Assert.Equal(drawing.Y(6m), closed.Y);
            });
    }

    [Fact]
    public void Letters_of_bands_that_lie_close_together_stand_beside_each_other()
    {
        var keys = Draw(new CostCurve(10, [10m, 12m, 11m, 13m, 12m, 14m, 13m, .. Enumerable.Range(14, 60).Select(cost => (decimal)cost)])).Bands.Select(band => band.KeyX).ToList();

        Assert.Equal(3, keys.Count);
        Assert.All(keys.Zip(keys.Skip(1)), pair => Assert.True(pair.Second - pair.First >= 12));
    }

    [Fact]
    public void A_dear_band_is_shaded_from_its_first_quantity_to_the_better_one()
    {
        var drawing = Draw(new CostCurve(10, [10m, 11m, 12m, 11m, 13m]));
        var band = Assert.Single(drawing.Bands);
        Assert.Equal(new DearBand(11, 12, 13), band.Band);
        Assert.Equal('a', band.Key);
        Assert.Equal(drawing.X(11), band.X);
        Assert.Equal(drawing.X(13), band.X + band.Width, 6);
    }

    [Fact]
    public void A_band_of_one_quantity_in_a_long_range_can_still_be_seen()
    {
        var costs = Enumerable.Range(1, 2000).Select(copies => copies == 1000 ? 1002.5m : copies).ToList();
        Assert.True(Assert.Single(Draw(new CostCurve(1, costs)).Bands).Width >= 3);
    }

    [Fact]
    public void Costs_start_at_nothing_and_the_top_mark_holds_the_dearest()
    {
        var drawing = Draw(new CostCurve(1, [93m, 305m, 790m]));
        Assert.Equal(0, drawing.CostMarks[0]);
        Assert.True(drawing.CostMarks[^1] >= 790);
        Assert.Equal(Frame.Bottom, drawing.Y(0m));
        Assert.Equal(Frame.Top, drawing.Y(drawing.MostCost));
    }

    [Fact]
    public void Marks_of_quantities_are_round_and_carry_what_a_copy_costs()
    {
        var drawing = Draw(new CostCurve(25, [.. Enumerable.Range(25, 476).Select(copies => copies * 2m)]));
        Assert.All(drawing.QuantityMarks, mark => Assert.Equal(0, mark % 100));
        Assert.All(drawing.UnitCosts, mark => Assert.Equal(2m, mark.UnitCost));
    }

    [Fact]
    public void One_quantity_alone_stands_in_the_middle() =>
        Assert.Equal(60, Draw(new CostCurve(40, [12m])).X(40));

    [Fact]
    public void A_long_range_is_not_drawn_in_more_moves_than_there_are_points()
    {
        var costs = Enumerable.Range(1, 5000).Select(copies => (decimal)copies).ToList();
        Assert.True(Draw(new CostCurve(1, costs)).Path.Count(move => move == 'H') < 200);
    }

    private static StaircaseDrawing Draw(CostCurve curve) => StaircaseDrawing.Of(curve, curve.DearBands(), LadderJump.Of(curve), Frame);

    [GeneratedRegex("[LlCcQqSsTtAa]")]
    private static partial Regex SlantedMoves();

    [GeneratedRegex(@"^M[\d.]+,[\d.]+([HV][\d.]+|M[\d.]+,[\d.]+)*$")]
    private static partial Regex OnlyLevelMoves();
}
