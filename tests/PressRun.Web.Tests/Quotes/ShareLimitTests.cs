using System.Net;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;
using PressRun.Web.Quotes;

namespace PressRun.Web.Tests.Quotes;

/// <summary>What docs/quotes.md says of how often, to the last time that is allowed and the first that is not.</summary>
public sealed class ShareLimitTests
{
    [Fact]
    public void So_many_links_that_never_were_are_told_apart_from_one_place_and_the_next_one_waits()
    {
        using var quotes = new SharedQuotes(null!, null!, null!, TimeProvider.System);
        var (here, there) = (IPAddress.Parse("192.0.2.9"), IPAddress.Parse("192.0.2.10"));

        Assert.All(Enumerable.Range(0, SharedQuotes.MostMisses), _ => Assert.True(quotes.MayMiss(here)));
        Assert.False(quotes.MayMiss(here));
        Assert.True(quotes.MayMiss(there));
    }

    [Fact]
    public void So_much_is_worked_out_for_one_link_and_the_next_one_waits()
    {
        using var quotes = new SharedQuotes(null!, null!, null!, TimeProvider.System);
        var (busy, other) = (Look(), Look());

        Assert.All(Enumerable.Range(0, SharedQuotes.MostWorked), _ => Assert.True(quotes.MayWork(busy)));
        Assert.False(quotes.MayWork(busy));
        Assert.True(quotes.MayWork(other));
    }

    [Theory]
    [InlineData(LinkWork.Tried, SharedQuotes.MostWorked)]
    [InlineData(LinkWork.Sent, SharedQuotes.MostWorked)]
    [InlineData(LinkWork.Opened, SharedQuotes.MostOpened)]
    public void Each_kind_of_work_is_counted_by_itself(LinkWork work, int most)
    {
        using var quotes = new SharedQuotes(null!, null!, null!, TimeProvider.System);
        var look = Look();

        Assert.Equal(most, Enumerable.Range(0, 2 * most).Count(_ => quotes.MayWork(look, work)));
        Assert.All(Enum.GetValues<LinkWork>().Where(other => other != work), other => Assert.True(quotes.MayWork(look, other)));
    }

    private static SharedLook Look() => new(PressId.New(), Guid.NewGuid(), Guid.NewGuid(), IsOpen: true, Changes: 1);
}
