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

/// <summary>An event that lets more be asked for over the whole horizon.</summary>
/// <param name="Day">When; null where no day is known.</param>
/// <param name="Times">Factor on what is asked for, more than 0.</param>
public sealed record EventAhead(DateOnly? Day, decimal Times)
{
    /// <summary>The factor as it counts: 1 where the day lies outside the horizon.</summary>
    public decimal Uplift(DateOnly today, DateOnly end) => Day is { } day && (day < today || day > end) ? 1m : Times;
}

/// <summary>What a plan's quantity is decided from. It is kept as it was decided: later sales do not change it by themselves.</summary>
/// <param name="Request">As the job file holds it.</param>
/// <param name="Horizon">How far ahead its demand looks.</param>
/// <param name="SeenOn">Day on which the ledger was read.</param>
/// <param name="Event">What is ahead; null for nothing.</param>
/// <param name="Opinion">An opinion beside the history, or the one gone by; null where none was given. Without copies promised.</param>
public sealed record PlanReprint(ReprintRequest Request, Horizon Horizon, DateOnly SeenOn, EventAhead? Event, OpinionDemand? Opinion);
