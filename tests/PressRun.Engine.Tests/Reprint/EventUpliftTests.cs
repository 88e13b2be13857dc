using MathNet.Numerics.Distributions;
using PressRun.Engine.Reprint;

namespace PressRun.Engine.Tests.Reprint;

public sealed class EventUpliftTests
{
    [Theory]
    [InlineData(100, 0, 9, 1.0)]
    [InlineData(100, 2, 11, 1.2)]
    [InlineData(100, 100, 3, 3.0)]
    [InlineData(100, 50, 0.5, 0.75)]
    public void An_event_lifts_only_its_own_days(int horizon, int days, double times, double factor) =>
        Assert.Equal((decimal)factor, EventUplift.OverHorizon(horizon, days, (decimal)times));

    // The sum of Poisson sales of ordinary days and of days of an event, added up term by term with a numerical library's mass function.
    [Fact]
    public void One_factor_says_the_same_as_the_days_one_by_one()
    {
        var (ordinary, lifted) = (new Poisson(28 * 0.4), new Poisson(2 * 0.4 * 6));
        var whole = new Poisson(30 * 0.4 * (double)EventUplift.OverHorizon(30, 2, 6m));

        Assert.All(Enumerable.Range(0, 40), copies => Assert.Equal(
            Enumerable.Range(0, copies + 1).Sum(part => ordinary.Probability(part) * lifted.Probability(copies - part)), whole.Probability(copies), 12));
    }

    [Theory]
    [InlineData(0, 0, 1)]
    [InlineData(10, 11, 1)]
    [InlineData(10, -1, 1)]
    [InlineData(10, 1, 0)]
    public void Figures_that_cannot_be_are_refused(int horizon, int days, int times) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EventUplift.OverHorizon(horizon, days, times));
}
