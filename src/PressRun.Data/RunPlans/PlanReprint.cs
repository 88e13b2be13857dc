using PressRun.Engine.Reprint;

namespace PressRun.Data.RunPlans;

/// <summary>In what a horizon is counted.</summary>
public enum HorizonUnit
{
    /// <summary>Seven days.</summary>
    Weeks,

    /// <summary>Calendar months.</summary>
    Months,
}

/// <summary>How far ahead one looks.</summary>
/// <param name="Length">1 to 120.</param>
/// <param name="Unit">Counted in.</param>
public readonly record struct Horizon(int Length, HorizonUnit Unit)
{
    /// <summary>Most weeks or months.</summary>
    public const int Most = 120;

    /// <summary>The last day of it.</summary>
    public DateOnly EndFrom(DateOnly today) => Unit == HorizonUnit.Weeks ? today.AddDays(7 * Length) : today.AddMonths(Length);

    /// <summary>Its days.</summary>
    public int DaysFrom(DateOnly today) => EndFrom(today).DayNumber - today.DayNumber;
}

/// <summary>An event on whose days more is asked for than on others.</summary>
/// <param name="Day">Its first day; null where no day is known, and it then lies within the horizon.</param>
/// <param name="Times">Factor on what is asked for on each of its days, more than 0.</param>
/// <param name="Days">How many days it has, 1 to <see cref="MostDays"/>.</param>
public sealed record EventAhead(DateOnly? Day, decimal Times, int Days = 1)
{
    /// <summary>Most days of an event.</summary>
    public const int MostDays = 366;

    /// <summary>The factor on the whole horizon, from the day after today to its last day; 1 where no day of the event lies within it.</summary>
    public decimal Uplift(DateOnly today, DateOnly end) =>
        EventUplift.OverHorizon(end.DayNumber - today.DayNumber, DaysWithin(today, end), Times);

    /// <summary>When it is ahead of a day: days until it begins, and how many of its days are left; null where no day is known, or it is over.</summary>
    /// <param name="today">A day that itself is over; of an event that begins on it all days are left.</param>
    public (int DaysUntil, int Days)? Ahead(DateOnly today)
    {
        if (Day is not { } first || first.DayNumber + Days - 1 < today.DayNumber)
        {
            return null;
        }

        var gone = Math.Max(0, today.DayNumber - first.DayNumber);
        return (Math.Max(0, first.DayNumber - today.DayNumber - 1), Days - gone);
    }

    private int DaysWithin(DateOnly today, DateOnly end)
    {
        var horizon = end.DayNumber - today.DayNumber;
        if (Day is not { } first)
        {
            return Math.Min(Days, horizon);
        }

        // What is sold today is in the ledger tonight, so that a fair of today counts from its first day.
        var (from, to) = (Math.Max(first.DayNumber, today.DayNumber), Math.Min(first.DayNumber + Days - 1, end.DayNumber));
        return Math.Clamp(to - from + 1, 0, horizon);
    }
}

/// <summary>What a plan's quantity is decided from. It is kept as it was decided: later sales do not change it by themselves.</summary>
/// <param name="Request">As the job file holds it.</param>
/// <param name="Horizon">How far ahead its demand looks.</param>
/// <param name="SeenOn">Day on which the ledger was read.</param>
/// <param name="Event">What is ahead; null for nothing.</param>
/// <param name="Opinion">An opinion beside the history, or the one gone by; null where nobody gave one, and an example is gone by where there is no history either. Without copies promised.</param>
public sealed record PlanReprint(ReprintRequest Request, Horizon Horizon, DateOnly SeenOn, EventAhead? Event, OpinionDemand? Opinion);
