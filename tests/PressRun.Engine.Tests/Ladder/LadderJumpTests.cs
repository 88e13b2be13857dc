using PressRun.Engine.Ladder;

namespace PressRun.Engine.Tests.Ladder;

public class LadderJumpTests
{
    [Fact]
    public void A_steady_climb_has_no_jump() =>
        Assert.Empty(LadderJump.Of(Curve(1, 10.00m, 11.30m, 12.60m, 14.10m, 15.20m)));

    [Fact]
    public void A_fall_is_a_jump_at_the_first_quantity_that_costs_less()
    {
        var jump = Assert.Single(LadderJump.Of(Curve(220, 418m, 419m, 420m, 405m, 406m)));
        Assert.Equal(new LadderJump(223, 420m, 405m), jump);
        Assert.Equal(-15m, jump.Change);
    }

    [Fact]
    public void A_climb_of_more_than_five_usual_ones_is_a_jump_and_five_are_not()
    {
        Assert.Empty(LadderJump.Of(Curve(1, 0m, 1m, 2m, 7m, 8m)));
        Assert.Equal(4, Assert.Single(LadderJump.Of(Curve(1, 0m, 1m, 2m, 7.01m, 8m))).At);
    }

    [Fact]
    public void Where_only_some_quantities_are_sold_every_climb_is_a_jump()
    {
        decimal[] costs = [.. Enumerable.Range(1, 75).Select(copies => 40m + (copies / 26 * 20m))];
        Assert.Equal([26, 52], LadderJump.Of(Curve(1, costs)).Select(jump => jump.At));
    }

    [Fact]
    public void One_quantity_has_no_jump() =>
        Assert.Empty(LadderJump.Of(Curve(5, 12m)));

    private static CostCurve Curve(int from, params decimal[] costs) => new(from, costs);
}
