namespace PressRun.Data.Running;

/// <summary>
/// Days as they are counted where the server stands: a quote is agreed to until the end of its last day there, not until the end of that day in universal time, which is
/// in the afternoon in the west. The zone is the machine's, which <c>TZ</c> sets.
/// </summary>
public static class Days
{
    /// <summary>Today.</summary>
    public static DateOnly Today(this TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(time);
        return time.LocalTimeZone.DayOf(time.GetUtcNow());
    }

    /// <summary>True for the name of a zone that the machine does not know: it counts in universal time then, and says nothing.</summary>
    /// <param name="name">As <c>TZ</c> has it: a name, or the path of a zone's rules, which is not looked into.</param>
    public static bool IsUnknownZone(string? name) =>
        name?.TrimStart(':') is { Length: > 0 } plain && plain[0] != '/' && !TimeZoneInfo.TryFindSystemTimeZoneById(plain, out _);

    /// <summary>The day that a moment falls on.</summary>
    public static DateOnly DayOf(this TimeZoneInfo zone, DateTimeOffset at) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, zone).DateTime);

    /// <summary>The moment at which a day is over, in universal time. Where clocks go on or back at midnight, it is the first moment of the next day.</summary>
    public static DateTimeOffset EndOf(this TimeZoneInfo zone, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(zone);
        var midnight = day.AddDays(1).ToDateTime(TimeOnly.MinValue);

        // A midnight that clocks leave out is reckoned by what they showed before it: that is the moment at which they go on.
        var offset = zone.IsAmbiguousTime(midnight) ? zone.GetAmbiguousTimeOffsets(midnight).Max() : zone.GetUtcOffset(midnight);
        return new DateTimeOffset(midnight, offset).ToUniversalTime();
    }
}
