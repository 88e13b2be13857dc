namespace PressRun.Engine.Bench;

/// <summary>
/// Probability that at least so many of a number of copies survive. Weights are summed by the ratio of neighbours outward from the most
/// likely count and divided by their own sum, so that no logarithm of a factorial loses digits; the error stays below 1e-12.
/// </summary>
internal static class BinomialTail
{
    private const double Negligible = 1e-22;

    /// <summary>P(X ≥ <paramref name="wanted"/>) for X binomial.</summary>
    /// <param name="started">Number of copies.</param>
    /// <param name="survival">Probability that a copy survives, more than 0 and less than 1.</param>
    /// <param name="wanted">Copies that must survive.</param>
    public static double AtLeast(long started, double survival, long wanted)
    {
        if (wanted <= 0)
        {
            return 1d;
        }

        if (wanted > started)
        {
            return 0d;
        }

        var odds = survival / (1d - survival);
        var mode = Math.Min(started, (long)((started + 1) * survival));
        double enough = mode >= wanted ? 1d : 0d, tooFew = 1d - enough;
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

        return enough / (enough + tooFew);

        void Add(long k, double w)
        {
            if (k >= wanted)
            {
                enough += w;
            }
            else
            {
                tooFew += w;
            }
        }
    }
}
