using System.Globalization;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Archive;

/// <summary>Days and moments in an archive. A moment stands in universal time, to the microsecond, in one form only. Both lie within what pages in any time zone can show; only
/// what happened to quotes is held against this machine's clock (<see cref="MomentsToCome"/>), because the one on which they were written down may have gone before it.</summary>
internal static class Moments
{
    /// <summary>How a moment is written.</summary>
    public const string Rule = "Write a moment from 1970 to 2999 in universal time, such as \"2026-03-02T14:00:00.000000Z\".";

    private const string DayRule = "Write a day from 1900 to 2999, such as \"2026-03-02\".";
    private const string Form = "yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'";

    /// <summary>The last day that can stand in an archive.</summary>
    public static readonly DateOnly LastDay = new(2999, 12, 31);

    private static readonly DateOnly FirstDay = new(1900, 1, 1);
    private static readonly DateTimeOffset First = DateTimeOffset.UnixEpoch;
    private static readonly DateTimeOffset Last = new(2999, 12, 31, 0, 0, 0, TimeSpan.Zero);

    private static readonly TextRule Text = new(Rule, 40, false);

    public static string Written(DateTimeOffset at) => at.UtcDateTime.ToString(Form, CultureInfo.InvariantCulture);

    public static DateTimeOffset Read(JsonBlock block, string name)
    {
        if (block.Text(name, Need.Must, Text) is not { } text)
        {
            return default;
        }

        if (DateTimeOffset.TryParseExact(text, Form, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at) && at >= First && at <= Last)
        {
            return at;
        }

        block.Problems.Add(block.Path.Member(name), text, Rule);
        return default;
    }

    public static DateOnly? Day(JsonBlock block, string name, Need need)
    {
        var day = block.Day(name, need);
        if (day < FirstDay || day > LastDay)
        {
            block.Problems.Add(block.Path.Member(name), $"{day:yyyy-MM-dd}", DayRule);
        }

        return day;
    }
}
