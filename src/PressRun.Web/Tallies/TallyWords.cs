namespace PressRun.Web.Tallies;

/// <summary>Words for the work at the table.</summary>
public static class TallyWords
{
    private const long SecondsPerMinute = 60;
    private const long MinutesPerHour = 60;

    /// <summary>A time at the table, to the minute: <c>2 h 5 min</c>.</summary>
    public static string Time(long seconds)
    {
        var minutes = (seconds + (SecondsPerMinute / 2)) / SecondsPerMinute;
        var hours = minutes / MinutesPerHour;
        return hours > 0 ? FormattableString.Invariant($"{hours} h {minutes % MinutesPerHour} min") : FormattableString.Invariant($"{minutes} min");
    }
}
