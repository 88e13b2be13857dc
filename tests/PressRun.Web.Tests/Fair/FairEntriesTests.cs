using System.Globalization;
using PressRun.Web.Fair;

namespace PressRun.Web.Tests.Fair;

public sealed class FairEntriesTests
{
    private static readonly DateTimeOffset Clock = new(2026, 6, 6, 22, 30, 0, TimeSpan.Zero);
    private static readonly DateOnly Shown = new(2000, 1, 1);

    /// <summary>Universal time is 22:30 on 6 June: two hours to the east it is the seventh.</summary>
    [Theory]
    [InlineData(0, 0, 0, "2000-01-01")]
    [InlineData(59, 10, 0, "2000-01-01")]
    [InlineData(2 * 24 * 60, 10, 0, "2026-06-06")]
    [InlineData(-2 * 24 * 60, 10, 0, "2026-06-06")]
    [InlineData(2 * 24 * 60, 10, 120, "2026-06-07")]
    [InlineData(2 * 24 * 60, 100, 120, "2026-06-06")]
    [InlineData(90, 3 * 24 * 60, 0, "2026-06-03")]
    public void The_day_is_the_phones_unless_its_clock_is_an_hour_off(int minutesAhead, int minutesAgo, int minutesEast, string day)
    {
        var left = Clock.AddMinutes(minutesAhead);
        var entry = Entry(left.AddMinutes(-minutesAgo));
        Assert.Equal(day, Of(left, minutesEast, entry).DayOf(entry, Clock).ToString("O", CultureInfo.InvariantCulture));
    }

    [Fact]
    public void What_seems_to_be_sold_after_it_was_sent_was_sold_now()
    {
        var entry = Entry(Clock.AddDays(30));
        Assert.Equal(new DateOnly(2026, 6, 6), Of(Clock, 0, entry).DayOf(entry, Clock));
    }

    [Theory]
    [InlineData(long.MinValue, long.MaxValue, int.MaxValue)]
    [InlineData(long.MaxValue, long.MinValue, int.MinValue)]
    public void Whatever_a_message_says_there_is_a_day(long left, long at, int minutesEast)
    {
        var entry = new FairEntry(Guid.NewGuid(), Guid.NewGuid(), at, Shown, null, null, 3m, false);
        var day = new FairEntries(Guid.NewGuid(), left, minutesEast, [entry]).DayOf(entry, Clock);
        Assert.InRange(day, new DateOnly(2025, 6, 4), new DateOnly(2026, 6, 7));
    }

    [Fact]
    public void A_page_that_does_not_say_when_its_message_left_is_believed()
    {
        var entry = Entry(Clock.AddDays(30));
        Assert.Equal(Shown, new FairEntries(Guid.NewGuid(), null, 0, [entry]).DayOf(entry, Clock));
    }

    private static FairEntries Of(DateTimeOffset left, int minutesEast, FairEntry entry) => new(Guid.NewGuid(), left.ToUnixTimeMilliseconds(), minutesEast, [entry]);

    private static FairEntry Entry(DateTimeOffset at) => new(Guid.NewGuid(), Guid.NewGuid(), at.ToUnixTimeMilliseconds(), Shown, null, null, 3m, false);
}
