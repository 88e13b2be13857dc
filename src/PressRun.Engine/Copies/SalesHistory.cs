using PressRun.Engine.Costing;
using PressRun.Engine.Reprint;

namespace PressRun.Engine.Copies;

/// <summary>A time without copies.</summary>
/// <param name="From">First whole day without any.</param>
/// <param name="To">Last whole day without any.</param>
public readonly record struct TimeWithoutCopies(DateOnly From, DateOnly To)
{
    /// <summary>How many days.</summary>
    public int Days => To.DayNumber - From.DayNumber + 1;
}

/// <summary>
/// What an edition's sales say of its demand. A day without copies is not a day without demand, so it is left out: the sales stand over the days on
/// which there was something to sell, a Poisson process seen for that exposure (Gelman and others, Bayesian Data Analysis, section 2.6). Sales
/// while sold out are not guessed (Conrad, Sales data and the estimation of demand, Operational Research Quarterly 27, 1976, shows that taking them
/// for no demand counts too little). The day on which the last copy went counts as a day with copies.
/// </summary>
/// <param name="From">First day looked at.</param>
/// <param name="To">Last day looked at.</param>
/// <param name="Sold">Copies sold on them, less what was taken back or returned; not below 0.</param>
/// <param name="DaysWithCopies">Days with at least one copy to sell.</param>
/// <param name="TimesWithoutCopies">The days left out.</param>
/// <param name="Periods">Copies sold in each of equally many days with copies, first period first; none where there was no such day.</param>
public sealed record SalesHistory(
    DateOnly From,
    DateOnly To,
    long Sold,
    int DaysWithCopies,
    IReadOnlyList<TimeWithoutCopies> TimesWithoutCopies,
    IReadOnlyList<int> Periods)
{
    /// <summary>Length of a period in days with copies; not always a whole number, so that all sales are used.</summary>
    public decimal DaysPerPeriod => Periods.Count == 0 ? 0m : (decimal)DaysWithCopies / Periods.Count;

    /// <summary>Copies sold for each seven days with copies; 0 where there was no such day.</summary>
    public decimal SoldPerWeek => DaysWithCopies == 0 ? 0m : 7m * Sold / DaysWithCopies;

    /// <summary>Reads the history of an edition.</summary>
    /// <param name="movements">All of its movements, in any order.</param>
    /// <param name="from">First day that counts.</param>
    /// <param name="to">Last day that counts, not before <paramref name="from"/>.</param>
    /// <param name="daysPerPeriod">About how many days with copies a period has, 1 or more; the nearest length is taken that uses every day.</param>
    /// <exception cref="ArgumentOutOfRangeException">The days or the length are not as said.</exception>
    public static SalesHistory Of(IEnumerable<CopyMovement> movements, DateOnly from, DateOnly to, int daysPerPeriod)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(to, from);
        ArgumentOutOfRangeException.ThrowIfLessThan(daysPerPeriod, 1);
        var days = movements.Where(movement => movement.Day <= to).OrderBy(movement => movement.Day)
            .GroupBy(movement => movement.Day).Select(DayOfSale.Of).ToList();
        var (daysWith, without) = Told(days, from, to);
        var periods = Math.Max(daysWith == 0 ? 0 : 1, (int)Math.Round((decimal)daysWith / daysPerPeriod, MidpointRounding.AwayFromZero));
        var sold = Spread(days.Where(day => day.Day >= from), new long[periods], without, from, daysWith);
        // More in one period than a run may have decides nothing more.
        return new SalesHistory(from, to, sold.Sum(), daysWith, without, [.. sold.Select(copies => (int)Math.Min(copies, Job.MostCopies))]);
    }

    /// <summary>The demand that this history says, over a horizon.</summary>
    /// <param name="horizonDays">Days ahead, 1 or more.</param>
    /// <param name="uplift">Factor on the rate, more than 0.</param>
    /// <param name="priorShape">Shape of the Gamma prior, 0 or more.</param>
    /// <param name="priorDays">Days for which the prior counts, 0 or more.</param>
    /// <param name="committed">Copies promised besides.</param>
    public HistoryDemand Demand(int horizonDays, decimal uplift, decimal priorShape, decimal priorDays, int committed) =>
        Periods.Count == 0
            ? new HistoryDemand([], horizonDays, uplift, priorShape, priorDays, committed)
            : new HistoryDemand(Periods, horizonDays / DaysPerPeriod, uplift, priorShape, priorDays / DaysPerPeriod, committed);

    private static (int DaysWith, List<TimeWithoutCopies> Without) Told(List<DayOfSale> days, DateOnly from, DateOnly to)
    {
        var without = new List<TimeWithoutCopies>();
        var daysWith = 0;
        long onHand = 0;
        var next = 0;
        for (; next < days.Count && days[next].Day < from; next++)
        {
            onHand += days[next].Change;
        }

        for (var day = from; ; day = day.AddDays(1))
        {
            var here = next < days.Count && days[next].Day == day;
            var hasCopies = onHand > 0 || (here && days[next].HasCopies);
            onHand += here ? days[next++].Change : 0;
            if (hasCopies)
            {
                daysWith++;
            }
            else if (without.Count > 0 && without[^1].To == day.AddDays(-1))
            {
                without[^1] = without[^1] with { To = day };
            }
            else
            {
                without.Add(new TimeWithoutCopies(day, day));
            }

            if (day == to)
            {
                return (daysWith, without);
            }
        }
    }

    // Each sale falls into the period of its own day with copies, days without any being skipped.
    private static long[] Spread(IEnumerable<DayOfSale> days, long[] periods, List<TimeWithoutCopies> without, DateOnly from, int daysWith)
    {
        if (periods.Length == 0)
        {
            return periods;
        }

        foreach (var day in days.Where(day => day.Sold != 0))
        {
            var skipped = without.Sum(time => Math.Max(0, Math.Min(time.To.DayNumber, day.Day.DayNumber - 1) - time.From.DayNumber + 1));
            var index = Math.Min(daysWith - 1, day.Day.DayNumber - from.DayNumber - skipped);
            periods[(int)((long)index * periods.Length / daysWith)] += day.Sold;
        }

        return NotBelowZero(periods);
    }

    // A return may fall into a later period than its sale: what is below zero is taken from the periods before it, then from those after.
    private static long[] NotBelowZero(long[] periods)
    {
        for (var (pass, owed) = (0, 0L); pass < 2; pass++, Array.Reverse(periods))
        {
            for (var index = periods.Length - 1; index >= 0; index--)
            {
                owed += periods[index];
                periods[index] = Math.Max(0L, owed);
                owed = Math.Min(0L, owed);
            }
        }

        return periods;
    }

    private readonly record struct DayOfSale(DateOnly Day, long Change, long Sold, bool HasCopies)
    {
        public static DayOfSale Of(IGrouping<DateOnly, CopyMovement> day)
        {
            var sold = -day.Where(movement => movement.Kind is MovementKind.Sold or MovementKind.Returned).Sum(movement => movement.Copies);
            return new DayOfSale(day.Key, day.Sum(movement => movement.Copies), sold, day.Any(movement => movement.Copies > 0) || sold > 0);
        }
    }
}
