using MathNet.Numerics.Distributions;

namespace PressRun.Engine.Copies;

/// <summary>
/// How long the copies on hand will last, and by when a printing must be ordered. The rate of sale is uncertain (Gamma, from the history) and so are the
/// sales at a given rate (Poisson). B copies last longer than t where fewer than B are asked for within t: P(T &gt; t) = P(N(t) &lt; B), with N(t) negative
/// binomial (Gelman and others, Bayesian Data Analysis, section 2.6), whose sum is an incomplete beta function (Abramowitz and Stegun, 26.5.26).
/// </summary>
/// <param name="OnHand">Copies to sell, 1 or more.</param>
/// <param name="Days10">Days within which they are gone with a probability of 10 %.</param>
/// <param name="Days50">The same for 50 %.</param>
/// <param name="Days90">The same for 90 %.</param>
public sealed record CopiesOutlook(long OnHand, double Days10, double Days50, double Days90)
{
    private const double DaysPerWeek = 7d;

    /// <summary>Weeks within which the copies are gone with a probability of 10, 50 and 90 %.</summary>
    public (double Low, double Middle, double High) Weeks => (Days10 / DaysPerWeek, Days50 / DaysPerWeek, Days90 / DaysPerWeek);

    /// <summary>Works out how long copies last.</summary>
    /// <param name="onHand">Copies to sell.</param>
    /// <param name="history">What was sold, and in how many days with copies.</param>
    /// <param name="priorShape">Shape of the Gamma prior on the rate, 0 or more.</param>
    /// <param name="priorDays">Days for which the prior counts, 0 or more.</param>
    /// <returns>Null where nothing is on hand, or where neither a sale nor a prior says anything.</returns>
    public static CopiesOutlook? Of(long onHand, SalesHistory history, double priorShape, double priorDays)
    {
        var shape = priorShape + history.Sold;
        var exposure = priorDays + history.DaysWithCopies;
        if (onHand < 1 || shape <= 0d || exposure <= 0d)
        {
            return null;
        }

        return new CopiesOutlook(onHand, Gone(0.1), Gone(0.5), Gone(0.9));

        // P(T > t) = I_x(shape, onHand) at x = exposure / (exposure + t).
        double Gone(double probability)
        {
            var x = Beta.InvCDF(shape, onHand, 1d - probability);
            return exposure * (1d - x) / x;
        }
    }

    /// <summary>
    /// The same with an event ahead, on whose days so many times as much is asked for: a Poisson process whose rate changes with the days is one of a constant
    /// rate on another time scale (Ross, Introduction to Probability Models, the nonhomogeneous Poisson process).
    /// </summary>
    /// <param name="daysUntil">Days from now until its first day begins, 0 or more.</param>
    /// <param name="days">How many days of it are ahead, 0 or more.</param>
    /// <param name="times">Factor on what is asked for on each of them, more than 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is not as said.</exception>
    public CopiesOutlook With(int daysUntil, int days, double times)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(daysUntil);
        ArgumentOutOfRangeException.ThrowIfNegative(days);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(times);
        return new CopiesOutlook(OnHand, Until(Days10), Until(Days50), Until(Days90));

        double Until(double usual) => usual <= daysUntil ? usual
            : usual <= daysUntil + (times * days) ? daysUntil + ((usual - daysUntil) / times)
            : usual - ((times - 1d) * days);
    }

    /// <summary>
    /// The last day on which to order so that the copies on hand last until the new ones come, but for one time in ten.
    /// </summary>
    /// <param name="today">Where the days are counted from.</param>
    /// <param name="leadDays">Days from the order to finished copies, 0 or more.</param>
    /// <returns>May lie before <paramref name="today"/>: then it is late already.</returns>
    public DateOnly OrderBy(DateOnly today, int leadDays)
    {
        var days = Math.Min(Math.Floor(Days10), DateOnly.MaxValue.DayNumber - today.DayNumber);
        return today.AddDays((int)days).AddDays(-leadDays);
    }
}
