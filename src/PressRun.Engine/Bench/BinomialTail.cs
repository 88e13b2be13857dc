namespace PressRun.Engine.Bench;

/// <summary>
/// Probability that at least so many of a number of copies survive. Weights are summed by the ratio of neighbours outward from the most
/// likely count and divided by their own sum, so that no logarithm of a factorial loses digits; the error stays below 1e-12.
/// </summary>
/// <param name="AtLeast">P(X ≥ wanted) for X binomial.</param>
/// <param name="Exactly">P(X = wanted); 0 where it is less than 1e-22 of the likeliest count's.</param>
internal readonly record struct BinomialTail(double AtLeast, double Exactly)
{
    private const double Negligible = 1e-22;

    /// <summary>The tail from a count upwards.</summary>
    /// <param name="started">Number of copies.</param>
    /// <param name="survival">Probability that a copy survives, more than 0 and less than 1.</param>
    /// <param name="wanted">Copies that must survive, at least 1.</param>
    public static BinomialTail Of(long started, double survival, long wanted)
    {
        if (wanted > started)
        {
            return default;
        }

        var odds = survival / (1d - survival);
        var mode = Math.Min(started, (long)((started + 1) * survival));
        double enough = mode >= wanted ? 1d : 0d, tooFew = 1d - enough, exactly = mode == wanted ? 1d : 0d;
        var weight = 1d;
        for (var k = mode; k < started && weight > Negligible; k++)
        {
            weight *= (started - k) * odds / (k + 1);
            Add(k + 1, weight);
        }

        weight = 1d;
        for (var k = mode; k > 0 && weight > Negligible; k--)
        {
            weight *= k / ((started - k + 1) * odds);
            Add(k - 1, weight);
        }

        var all = enough + tooFew;
        return new BinomialTail(enough / all, exactly / all);

        void Add(long k, double w)
        {
            if (k >= wanted)
            {
                enough += w;
                exactly = k == wanted ? w : exactly;
            }
            else
            {
                tooFew += w;
            }
        }
    }
}
