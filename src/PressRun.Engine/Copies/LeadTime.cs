using PressRun.Engine.Costing;

namespace PressRun.Engine.Copies;

/// <summary>How long a new run takes from the order to finished copies.</summary>
public static class LeadTime
{
    /// <summary>Hours at one's own table on a day (common practice: an evening or half a day beside other work).</summary>
    public const decimal BenchHoursPerDay = 4m;

    /// <summary>Days until the shop's sheets arrive, and the days at the table after them, begun days counted whole.</summary>
    /// <param name="shopDays">Days from order to arrival, 0 or more.</param>
    /// <param name="estimate">The run.</param>
    public static int Days(int shopDays, Estimate estimate) => shopDays + (int)Math.Ceiling(estimate.Totals.BenchHours / BenchHoursPerDay);
}
