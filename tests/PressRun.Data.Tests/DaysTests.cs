using PressRun.Data.Running;
using Xunit;

namespace PressRun.Data.Tests;

/// <summary>Zones and their rules are those of the IANA time zone database, as the system has it.</summary>
public sealed class DaysTests
{
    [Theory]
    [InlineData("Etc/UTC", "2026-11-30", "2026-12-01T00:00Z")]
    [InlineData("America/New_York", "2026-11-30", "2026-12-01T05:00Z")]
    [InlineData("Asia/Tokyo", "2026-11-30", "2026-11-30T15:00Z")]
    [InlineData("Asia/Kathmandu", "2026-11-30", "2026-11-30T18:15Z")]
    // Clocks went on from 0:00 to 1:00 in Sao Paulo on 4 November 2018, and back from 1:00 to 0:00 in Havana on 1 November 2020.
    [InlineData("America/Sao_Paulo", "2018-11-03", "2018-11-04T03:00Z")]
    [InlineData("America/Havana", "2020-10-31", "2020-11-01T04:00Z")]
    public void A_day_ends_once_and_at_midnight_where_it_is_counted(string zone, string day, string end)
    {
        var there = TimeZoneInfo.FindSystemTimeZoneById(zone);

        Assert.Equal(At(end), there.EndOf(Day(day)));
        Assert.Equal(Day(day), there.DayOf(At(end).AddTicks(-1)));
        Assert.Equal(Day(day).AddDays(1), there.DayOf(At(end)));
    }

    [Theory]
    [InlineData(null, false)]
    [InlineData("", false)]
    [InlineData("Europe/Vienna", false)]
    [InlineData(":Europe/Vienna", false)]
    [InlineData(":/etc/localtime", false)]
    [InlineData("Europe/Wien", true)]
    public void A_zone_that_the_machine_does_not_know_is_told(string? name, bool unknown) => Assert.Equal(unknown, Days.IsUnknownZone(name));

    private static DateOnly Day(string day) => DateOnly.ParseExact(day, "yyyy-MM-dd", null);

    private static DateTimeOffset At(string moment) => DateTimeOffset.ParseExact(moment, "yyyy-MM-dd'T'HH:mm'Z'", null, System.Globalization.DateTimeStyles.AssumeUniversal);
}
