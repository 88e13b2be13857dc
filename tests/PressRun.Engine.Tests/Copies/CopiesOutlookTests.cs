using PressRun.Engine.Copies;
using PressRun.Engine.Reprint;

namespace PressRun.Engine.Tests.Copies;

public class CopiesOutlookTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    // The plain sum of the negative binomial that the reprint plan uses is the oracle for the incomplete beta function.
    [Theory]
    [InlineData(1, 12, 90)]
    [InlineData(25, 40, 120)]
    [InlineData(180, 700, 365)]
    public void The_copies_outlast_each_time_with_the_probability_that_it_says(int onHand, int sold, int days)
    {
        var history = History(sold, days);
        var outlook = CopiesOutlook.Of(onHand, history, 0.5, 0)!;

        foreach (var (probability, gone) in new[] { (0.1, outlook.Days10), (0.5, outlook.Days50), (0.9, outlook.Days90) })
        {
            var demand = new NegativeBinomialDemand((decimal)((0.5 + sold) * gone / days), 0.5m + sold, 0);
            Assert.Equal(probability, DemandDistribution.Of(demand).Value.AtLeast(onHand), 6);
        }
    }

    [Fact]
    public void What_sells_steadily_lasts_about_as_long_as_it_took_to_sell_as_many()
    {
        var outlook = CopiesOutlook.Of(1000, History(1000, 200), 0, 0)!;

        Assert.InRange(outlook.Days50, 198, 202);
        Assert.True(outlook.Days10 < outlook.Days50 && outlook.Days50 < outlook.Days90);
        Assert.Equal(outlook.Days50 / 7, outlook.Weeks.Middle, 12);
    }

    [Fact]
    public void The_order_goes_out_the_lead_time_before_the_copies_may_be_gone()
    {
        var outlook = new CopiesOutlook(10, 40.7, 60, 90);

        Assert.Equal(Today.AddDays(40 - 14), outlook.OrderBy(Today, 14));
        Assert.Equal(Today.AddDays(40 - 60), outlook.OrderBy(Today, 60));
        Assert.Equal(DateOnly.MaxValue.AddDays(-7), new CopiesOutlook(10, 1e9, 2e9, 3e9).OrderBy(Today, 7));
    }

    // 20 days until it begins, three days at twenty times the pace: 80 days of sales as they usually are take 20 + 60 / 20 = 23 days.
    [Theory]
    [InlineData(20, 20)]
    [InlineData(40, 21)]
    [InlineData(80, 23)]
    [InlineData(100, 43)]
    public void An_event_ahead_takes_the_copies_sooner(double usual, double withEvent)
    {
        var outlook = new CopiesOutlook(73, usual, usual + 1000, usual + 2000).With(20, 3, 20);

        Assert.Equal(withEvent, outlook.Days10, 9);
        Assert.Equal(usual + 1000 - 57, outlook.Days50, 9);
    }

    [Fact]
    public void The_copies_outlast_an_event_with_the_probability_of_its_longer_time()
    {
        var history = History(60, 120);
        var (usual, outlook) = (CopiesOutlook.Of(40, history, 0.5, 0)!, CopiesOutlook.Of(40, history, 0.5, 0)!.With(5, 10, 3));
        foreach (var (before, gone) in new[] { (usual.Days10, outlook.Days10), (usual.Days50, outlook.Days50), (usual.Days90, outlook.Days90) })
        {
            var passed = gone <= 5 ? gone : gone <= 15 ? 5 + (3 * (gone - 5)) : gone + 20;
            Assert.Equal(before, passed, 9);
        }
    }

    [Fact]
    public void Nothing_on_hand_lasts_for_no_time() => Assert.Null(CopiesOutlook.Of(0, History(10, 10), 0.5, 0));

    private static SalesHistory History(int sold, int days) => new(Today.AddDays(-days), Today, sold, days, [], [sold]);
}
