using CsCheck;
using PressRun.Engine.Copies;

namespace PressRun.Engine.Tests.Copies;

public class CopiesAccountTests
{
    private static readonly DateOnly First = new(2026, 3, 1);

    // Method of IAS 2, paragraph 27: the average is worked out anew as each shipment is received. The figures are ours, by hand.
    [Fact]
    public void Each_printing_is_averaged_with_what_is_left()
    {
        var position = CopiesAccount.At(
        [
            Line(0, MovementKind.Printed, 100, 300m),
            Line(5, MovementKind.Sold, -60, 480m),
            Line(9, MovementKind.Printed, 60, 240m),
            Line(12, MovementKind.Sold, -50, 400m),
        ]);

        // 40 left at 3.00 and 60 new at 4.00 make 100 at 3.60.
        Assert.Equal(3.60m, position.AverageCost);
        Assert.Equal((50L, 180m), (position.OnHand, position.Value));
        Assert.Equal((60 * 3m) + (50 * 3.60m), position.CostOfSales);
        Assert.Equal(880m - 540m, position.Earned);
        Assert.False(position.CountNeeded);
    }

    [Fact]
    public void Each_line_knows_what_was_on_hand_after_it_by_day_and_then_by_writing()
    {
        CopyMovement[] lines =
        [
            new(First.AddDays(4), 1, MovementKind.Sold, -3, 9m),
            new(First, 2, MovementKind.Printed, 10, 20m),
            new(First.AddDays(4), 3, MovementKind.Counted, -1, 0m),
        ];
        Assert.Equal([(2L, 10L), (1L, 7L), (3L, 6L)], CopiesAccount.ByLine(lines).Select(line => (line.Movement.Sequence, line.OnHand)));
    }

    [Fact]
    public void Copies_that_come_back_return_at_the_average_and_their_money_goes()
    {
        var position = CopiesAccount.At(
            [Line(0, MovementKind.Printed, 10, 30m), Line(1, MovementKind.Sold, -4, 32m), Line(2, MovementKind.Returned, 1, -8m)]);

        Assert.Equal((7L, 21m, 9m, 24m), (position.OnHand, position.Value, position.CostOfSales, position.Takings));
        Assert.Equal((4L, 1L), (position.Sold, position.Returned));
    }

    [Fact]
    public void Where_nobody_wrote_down_what_the_copies_cost_no_cost_is_said()
    {
        var position = CopiesAccount.At([Line(0, MovementKind.Printed, 10, 0m), Line(1, MovementKind.Sold, -4, 32m)]);

        Assert.Null(position.AverageCost);
        Assert.Equal((0m, 0m), (position.Value, position.CostOfSales));
    }

    [Fact]
    public void A_sale_beyond_the_count_is_kept_asks_for_a_count_and_is_covered_by_the_next_printing()
    {
        CopyMovement[] lines =
        [
            Line(0, MovementKind.Printed, 10, 20m),
            Line(1, MovementKind.Sold, -13, 104m),
            Line(2, MovementKind.Printed, 20, 60m),
        ];

        var sold = CopiesAccount.At(lines, First.AddDays(1));
        var printed = CopiesAccount.At(lines);

        Assert.Equal((-3L, true), (sold.OnHand, sold.CountNeeded));
        Assert.Equal((17L, true), (printed.OnHand, printed.CountNeeded));
        // Ten went at 2.00 and three, as it turned out, at 3.00.
        Assert.Equal(29m, printed.CostOfSales);
        Assert.Equal((3m, 51m), (printed.AverageCost, printed.Value));
        Assert.False(CopiesAccount.At([.. lines, Line(3, MovementKind.Counted, -1, 0m)]).CountNeeded);
    }

    [Fact]
    public void A_line_written_late_lands_in_its_day()
    {
        CopyMovement[] lines = [Line(0, MovementKind.Printed, 10, 20m), Line(9, MovementKind.Sold, -2, 10m), Line(4, MovementKind.GivenAway, -1, 0m, 99)];

        Assert.Equal([10L, 9L, 7L], CopiesAccount.ByDay(lines).Select(day => day.Position.OnHand));
        Assert.Equal(9L, CopiesAccount.At(lines, First.AddDays(5)).OnHand);
    }

    [Fact]
    public void A_line_taken_back_leaves_nothing_behind()
    {
        CopyMovement[] lines = [Line(0, MovementKind.Printed, 10, 20m), Line(1, MovementKind.Sold, -3, 24m)];

        var before = CopiesAccount.At(lines);
        var after = CopiesAccount.At([.. lines, Line(1, MovementKind.Sold, -2, 16m, 7), Line(1, MovementKind.Sold, 2, -16m, 8)]);

        Assert.Equal(before, after);
    }

    [Fact]
    public void What_is_on_hand_is_the_sum_of_all_movements_and_every_amount_is_on_hand_or_gone() =>
        Gen.Select(Gen.Int[0, 30], Gen.Int[0, 5], Gen.Int[1, 40], Gen.Int[0, 900]).Array[0, 40].Sample(lines =>
        {
            var movements = lines.Select((line, index) => Made(line, index)).ToArray();

            var position = CopiesAccount.At(movements);

            Assert.Equal(movements.Sum(movement => (long)movement.Copies), position.OnHand);
            Assert.Equal(
                position.Printed - position.Sold - position.GivenAway - position.Spoiled + position.Returned + position.CountDifference, position.OnHand);
            Assert.True(position.OnHand != 0 || position.Value == 0m);
            Assert.True(position.OnHand <= 0 || position.Value >= -0.000001m);
        });

    [Theory]
    [InlineData(4, 10, 2.5)]
    [InlineData(-4, 10, 2.5)]
    [InlineData(0, 0, 0)]
    public void A_line_says_what_one_of_its_copies_stands_at(int copies, decimal amount, decimal each) => Assert.Equal(each, Line(0, MovementKind.Printed, copies, amount).Each);

    private static CopyMovement Made((int Day, int Kind, int Copies, int Amount) line, int index) => (MovementKind)line.Kind switch
    {
        MovementKind.Printed => Line(line.Day, MovementKind.Printed, line.Copies, line.Amount, index),
        MovementKind.Returned => Line(line.Day, MovementKind.Returned, line.Copies, -line.Amount, index),
        MovementKind.Counted => Line(line.Day, MovementKind.Counted, line.Copies - 20, 0m, index),
        MovementKind.Sold => Line(line.Day, MovementKind.Sold, -line.Copies, line.Amount, index),
        var kind => Line(line.Day, kind, -line.Copies, 0m, index),
    };

    private static CopyMovement Line(int day, MovementKind kind, int copies, decimal amount, long sequence = 0) =>
        new(First.AddDays(day), sequence, kind, copies, amount);
}
