using PressRun.Engine.Copies;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Reprint;

/// <summary>How long copies last, in words.</summary>
public static class OutlookWords
{
    private const int FarWeeks = 104;

    /// <summary>Whole weeks, more than two years as such: <c>5</c>, <c>over 104</c>.</summary>
    public static string Weeks(double weeks, PressFormat format) => weeks > FarWeeks ? Say($"over {format.Count(FarWeeks)}") : format.Count(Weeks(weeks));

    /// <summary>The range of eight times in ten: <c>3 to 9</c>; empty where all of it is far off.</summary>
    public static string Between(CopiesOutlook outlook, PressFormat format) =>
        outlook.Weeks.Low > FarWeeks ? "" : Range(Weeks(outlook.Weeks.Low, format), Weeks(outlook.Weeks.High, format));

    /// <summary>How long they last, and by when to order.</summary>
    /// <param name="outlook">How long.</param>
    /// <param name="withEvent">True where an event ahead is reckoned with.</param>
    /// <param name="today">Where the days are counted from.</param>
    /// <param name="leadDays">Days from the order to finished copies.</param>
    /// <param name="format">How figures are written.</param>
    public static string Sentence(CopiesOutlook outlook, bool withEvent, DateOnly today, int leadDays, PressFormat format)
    {
        var (low, middle, high) = outlook.Weeks;
        var range = Range(format.Count(Weeks(low)), format.Count(Weeks(high)));
        var by = outlook.OrderBy(today, leadDays);
        var order = by < today
            ? Say($"To have new ones in time, nine times in ten, they had to be ordered by {format.Day(by)}.")
            : Say($"To have new ones in time, nine times in ten, order by {format.Day(by)}.");
        var pace = withEvent ? Say($"at the pace of past sales and with the event") : Say($"at the pace of past sales");
        var lasts = Say(outlook.OnHand,
            $"{format.Count(outlook.OnHand)} copy lasts about {Words.Weeks(Weeks(middle), format.Count)} {pace}, eight times in ten {range}.",
            $"{format.Count(outlook.OnHand)} copies last about {Words.Weeks(Weeks(middle), format.Count)} {pace}, eight times in ten {range}.");
        return string.Join(' ', lasts, Say($"A new run takes {Words.Days(leadDays, format.Count)}."), order);
    }

    private static string Range(string low, string high) => low == high ? low : Say($"{low} to {high}");

    private static decimal Weeks(double weeks) => (decimal)Math.Min(Math.Round(weeks), 100_000d);
}
