namespace PressRun.Engine.Reprint;

/// <summary>What an event on some days of a horizon does to the whole of it.</summary>
public static class EventUplift
{
    /// <summary>
    /// The factor over the whole horizon that stands for a higher rate on some of its days. Sales are a Poisson process whose rate changes with the days: over any time
    /// they are Poisson with the rates added up (Ross, Introduction to Probability Models, the nonhomogeneous Poisson process), so one factor on the mean says it exactly.
    /// </summary>
    /// <param name="horizonDays">Days looked at, 1 or more.</param>
    /// <param name="eventDays">Of these, days of the event, 0 to <paramref name="horizonDays"/>.</param>
    /// <param name="times">Factor on the rate of such a day, more than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is not as said.</exception>
    public static decimal OverHorizon(int horizonDays, int eventDays, decimal times)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(horizonDays, 1);
        ArgumentOutOfRangeException.ThrowIfNegative(eventDays);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(eventDays, horizonDays);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(times, 0m);
        return (horizonDays - eventDays + (times * eventDays)) / horizonDays;
    }
}
