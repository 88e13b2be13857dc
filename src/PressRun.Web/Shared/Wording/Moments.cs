using System.Globalization;
using PressRun.Data.Running;

namespace PressRun.Web.Shared.Wording;

/// <summary>Moments as they are told: by the clock where the server stands, with how far that is from universal time, since a reader may be elsewhere.</summary>
public static class Moments
{
    /// <summary>The day of a moment in a list, as days stand in every table: <c>3 Mar 2026</c>.</summary>
    public static string Day(DateTimeOffset at) => PressFormat.Written(TimeZoneInfo.Local.DayOf(at));

    /// <summary>A moment of these weeks in a list: <c>3 Mar, 14:05 UTC+1</c>.</summary>
    public static string Short(DateTimeOffset at) => Told(at, Say($"d MMM, HH:mm"), Texts.Language, TimeZoneInfo.Local);

    /// <summary>A moment: <c>3 Mar, 14:05 UTC+1</c>.</summary>
    /// <param name="at">The moment.</param>
    /// <param name="form">How its day and time are written.</param>
    /// <param name="culture">Whose words and figures.</param>
    /// <param name="zone">By whose clock.</param>
    public static string Told(DateTimeOffset at, string form, CultureInfo culture, TimeZoneInfo zone)
    {
        var there = TimeZoneInfo.ConvertTime(at, zone);
        return $"{there.ToString(form, culture)} {FromUtc(there.Offset)}";
    }

    private static string FromUtc(TimeSpan offset) => offset == TimeSpan.Zero ? "UTC"
        : string.Create(CultureInfo.InvariantCulture, $"UTC{(offset < TimeSpan.Zero ? '−' : '+')}{offset.Duration().Hours}{(offset.Minutes == 0 ? "" : $":{offset.Duration().Minutes:00}")}");
}
