using System.Numerics;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Bench;

/// <summary>How many copies must be started for a number of good ones. Immutable and thread-safe.</summary>
public sealed class CopiesToStart
{
    /// <summary>Most copies that may be started; spoilage that asks for more is refused.</summary>
    public const long Most = 1_000_000_000;

    // How much a computed probability may lack of the confidence asked for.
    private const double ProbabilityTolerance = 1e-12;

    private readonly Overs overs;
    private readonly BigInteger numerator;
    private readonly BigInteger denominator;
    private readonly long smallNumerator;
    private readonly long smallDenominator;
    private readonly double score;

    /// <summary>Prepares the overs of a run.</summary>
    /// <param name="spoilages">Rates, each 0 up to but not including 1.</param>
    /// <param name="overs">How they are found.</param>
    public CopiesToStart(IEnumerable<decimal> spoilages, Overs overs)
    {
        this.overs = overs;
        numerator = denominator = BigInteger.One;
        foreach (var survival in spoilages.Select(rate => 1m - rate))
        {
            numerator *= Digits.Of(survival);
            denominator *= BigInteger.Pow(10, survival.Scale);
        }

        var common = BigInteger.GreatestCommonDivisor(numerator, denominator);
        numerator /= common;
        denominator /= common;
        if (denominator < 1_000_000_000_000)
        {
            (smallNumerator, smallDenominator) = ((long)numerator, (long)denominator);
        }

        // Many rates with many digits make whole numbers that no double holds; as many leading bits of both say the same.
        var surplus = (int)Math.Max(0, denominator.GetBitLength() - 1000);
        Survival = (double)(numerator >> surplus) / (double)(denominator >> surplus);
        score = IsSearched ? SureCounts.Score(WantedProbability) : 0d;
    }

    /// <summary>Share of the copies started that end as good ones: the product of (1 − spoilage), as a double.</summary>
    public double Survival { get; }

    /// <summary>
    /// Copies to start. Plain: good copies over the surviving share, rounded up, exact as a fraction of whole numbers. Assured: the fewest,
    /// not below the good copies, that reach them with the confidence asked for.
    /// </summary>
    /// <param name="goodCopies">1 to 1,000,000.</param>
    /// <returns>The copies, or null where there would be more than <see cref="Most"/>.</returns>
    public long? For(int goodCopies)
    {
        var plain = Plain(goodCopies);
        if (plain > Most)
        {
            return null;
        }

        return IsSearched ? Assured(goodCopies, plain) : plain;
    }

    /// <summary>Begins a walk over quantities that rise, which gives the same copies sooner.</summary>
    internal RisingOvers Rising() => new(this, WantedProbability);

    /// <summary>True where no formula gives the copies: they are looked for by their probability.</summary>
    internal bool IsSearched => overs.Mode == OversMode.Assured && numerator != denominator;

    private double WantedProbability => (double)overs.Confidence - ProbabilityTolerance;

    private long Plain(int goodCopies)
    {
        if (smallDenominator != 0)
        {
            return ((goodCopies * smallDenominator) + smallNumerator - 1) / smallNumerator;
        }

        var started = ((goodCopies * denominator) + numerator - 1) / numerator;
        return started > long.MaxValue ? long.MaxValue : (long)started;
    }

    // The search asks for some thirty probabilities; what is sure around the fewest copies answers nearly all of them without a sum.
    private long? Assured(int goodCopies, long plain)
    {
        var (survival, wanted) = (Survival, WantedProbability);
        var sure = SureCounts.Of(survival, wanted, score, goodCopies);
        long high = plain, low = goodCopies;
        while (!Enough(high))
        {
            if (high == Most)
            {
                return null;
            }

            low = high + 1;
            high = Math.Min(Most, high + Math.Max(4, (high - goodCopies) / 2));
        }

        while (low < high)
        {
            var middle = low + ((high - low) / 2);
            (low, high) = Enough(middle) ? (low, middle) : (middle + 1, high);
        }

        return low;

        bool Enough(long started) =>
            started >= sure.Enough || (started > sure.TooFew && BinomialTail.Of(started, survival, goodCopies).AtLeast >= wanted);
    }
}
