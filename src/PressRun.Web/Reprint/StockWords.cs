using PressRun.Engine.Copies;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Reprint;

/// <summary>How long copies last, in words.</summary>
public static class StockWords
{
    private const double WholeWeeksFrom = 1.5;

    /// <summary>Such as <c>about 5 weeks left</c>.</summary>
    public static string Phrase(StockOutlook outlook, PressFormat format) => outlook.Weeks.Middle < WholeWeeksFrom
        ? "about a week left or less"
        : $"about {format.Count(Weeks(outlook.Weeks.Middle))} weeks left";

    /// <summary>How long they last, and by when to order.</summary>
    public static string Sentence(StockOutlook outlook, DateOnly today, int leadDays, PressFormat format)
    {
        var (low, middle, high) = outlook.Weeks;
        var by = outlook.OrderBy(today, leadDays);
        var order = by < today
            ? $"To have new ones in time, nine times in ten, they had to be ordered by {format.Day(by)}."
            : $"To have new ones in time, nine times in ten, order by {format.Day(by)}.";
        return $"{Words.Many(format.Count(outlook.OnHand), outlook.OnHand, "copy lasts", "copies last")} about {format.Count(Weeks(middle))} weeks at the pace of past sales, eight times in ten {format.Count(Weeks(low))} to {format.Count(Weeks(high))}. "
            + $"The shop needs {Words.Many(format.Count(leadDays), leadDays, "day", "days")}. {order}";
    }

    private static decimal Weeks(double weeks) => (decimal)Math.Min(Math.Round(weeks), 100_000d);
}
