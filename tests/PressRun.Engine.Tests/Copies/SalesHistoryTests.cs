using CsCheck;
using PressRun.Engine.Copies;
using PressRun.Engine.Reprint;

namespace PressRun.Engine.Tests.Copies;

public class SalesHistoryTests
{
    private static readonly DateOnly First = new(2026, 1, 1);

    [Fact]
    public void Days_without_copies_are_left_out_and_the_day_of_the_last_copy_counts()
    {
        var history = SalesHistory.Of(
            [Line(0, MovementKind.Printed, 20), Line(9, MovementKind.Sold, -20), Line(60, MovementKind.Printed, 50), Line(79, MovementKind.Sold, -10)],
            First,
            First.AddDays(79),
            10);

        Assert.Equal([new TimeWithoutCopies(First.AddDays(10), First.AddDays(59))], history.TimesWithoutCopies);
        Assert.Equal((30, 30), (history.DaysWithCopies, history.Sold));
        Assert.Equal([20, 0, 10], history.Periods);
        Assert.Equal(7m, history.SoldPerWeek);
    }

    [Fact]
    public void A_sold_out_time_does_not_lower_the_demand_that_is_said()
    {
        CopyMovement[] steady = [Line(0, MovementKind.Printed, 40), Line(7, MovementKind.Sold, -20), Line(27, MovementKind.Sold, -20)];

        var seen = SalesHistory.Of(steady, First, First.AddDays(27), 28);
        var later = SalesHistory.Of(steady, First, First.AddDays(200), 28);

        Assert.Equal(seen.SoldPerWeek, later.SoldPerWeek);
        Assert.Equal(Mean(seen.Demand(28, 1m, 0.5m, 0m, 0)), Mean(later.Demand(28, 1m, 0.5m, 0m, 0)), 9);
    }

    [Fact]
    public void The_periods_use_every_day_with_copies_and_every_sale() =>
        Gen.Select(Gen.Int[0, 120], Gen.Int[0, 3], Gen.Int[1, 9]).Array[0, 60].Select(Gen.Int[1, 45]).Sample(cases =>
        {
            var (lines, length) = cases;
            var movements = lines.Select(line => line.Item2 == 0 ? Line(line.Item1, MovementKind.Printed, line.Item3) : Line(line.Item1, MovementKind.Sold, -line.Item3))
                .ToArray();

            var history = SalesHistory.Of(movements, First, First.AddDays(120), length);

            Assert.Equal(-movements.Where(movement => movement.Kind == MovementKind.Sold).Sum(movement => movement.Copies), history.Sold);
            Assert.Equal(history.Sold, history.Periods.Sum());
            Assert.Equal(121, history.DaysWithCopies + history.TimesWithoutCopies.Sum(time => time.Days));
            Assert.All(history.Periods, sold => Assert.True(sold >= 0));
        });

    [Fact]
    public void A_return_is_taken_from_what_was_sold_before_it()
    {
        var history = SalesHistory.Of(
            [Line(0, MovementKind.Printed, 30), Line(3, MovementKind.Sold, -5), Line(15, MovementKind.Returned, 4), Line(25, MovementKind.Sold, -2)],
            First,
            First.AddDays(29),
            10);

        Assert.Equal([1, 0, 2], history.Periods);
    }

    [Fact]
    public void Without_a_day_with_copies_there_is_nothing_to_say()
    {
        var history = SalesHistory.Of([], First, First.AddDays(9), 5);

        Assert.Empty(history.Periods);
        Assert.False(DemandDistribution.Of(history.Demand(30, 1m, 0m, 0m, 0)).Succeeded);
        Assert.Null(CopiesOutlook.Of(3, history, 0d, 0d));
    }

    private static double Mean(HistoryDemand demand) => DemandDistribution.Of(demand).Value.Mean;

    private static CopyMovement Line(int day, MovementKind kind, int copies) => new(First.AddDays(day), 0, kind, copies, 0m);
}
