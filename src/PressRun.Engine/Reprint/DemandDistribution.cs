using PressRun.Engine.Costing;

namespace PressRun.Engine.Reprint;

/// <summary>Probabilities of whole copies asked for, with their running sums. Immutable and thread-safe.</summary>
public sealed class DemandDistribution
{
    /// <summary>Most copies that a distribution may reach.</summary>
    public const int MostCopies = 2_000_000;

    // An infinite tail ends at the first count whose cumulative probability passes this; the rest is put on that count.
    private const double Nearly = 1d - 1e-12;

    // What no sum of double precision can see.
    private const double Negligible = 1e-22;

    private readonly double[] probabilities;
    private readonly double[] cumulative;
    private readonly double[] partialMean;

    private DemandDistribution(double[] probabilities, int committed)
    {
        this.probabilities = new double[probabilities.Length + committed];
        probabilities.CopyTo(this.probabilities, committed);
        cumulative = new double[this.probabilities.Length];
        partialMean = new double[this.probabilities.Length];
        double sum = 0, mean = 0;
        for (var copies = 0; copies < cumulative.Length; copies++)
        {
            cumulative[copies] = sum += this.probabilities[copies];
            partialMean[copies] = mean += copies * this.probabilities[copies];
        }
    }

    /// <summary>The largest count with a probability.</summary>
    public int Largest => probabilities.Length - 1;

    /// <summary>Expected copies.</summary>
    public double Mean => partialMean[^1];

    /// <summary>Works out the distribution of a demand.</summary>
    /// <param name="demand">What is known or thought of it.</param>
    /// <returns>The distribution, or what is wrong with the demand, by its path in the job file.</returns>
    public static Outcome<DemandDistribution> Of(Demand demand)
    {
        var problems = DemandRules.Check(demand);
        if (problems.Count > 0)
        {
            return Outcome<DemandDistribution>.Refused(problems);
        }

        var probabilities = demand switch
        {
            TableDemand table => Normalised([.. table.Probabilities.Select(probability => (double)probability)]),
            PoissonDemand poisson => Poisson((double)poisson.Mean),
            NegativeBinomialDemand wide => NegativeBinomial((double)wide.Mean, (double)wide.Shape),
            HistoryDemand history => History(history),
            OpinionDemand opinion => Opinion(opinion),
            _ => throw new ArgumentOutOfRangeException(nameof(demand), demand, "Not a kind of demand."),
        };
        return Outcome<DemandDistribution>.Of(new DemandDistribution(probabilities, demand.Committed));
    }

    /// <summary>P(d = copies).</summary>
    /// <param name="copies">Any count; below 0 and above <see cref="Largest"/> the probability is 0.</param>
    public double Probability(long copies) => copies < 0 || copies > Largest ? 0d : probabilities[copies];

    /// <summary>P(d ≤ copies).</summary>
    /// <param name="copies">Any count.</param>
    public double AtMost(long copies) => copies < 0 ? 0d : copies >= Largest ? 1d : cumulative[copies];

    /// <summary>P(d ≥ copies).</summary>
    /// <param name="copies">Any count.</param>
    public double AtLeast(long copies) => copies <= 0 ? 1d : copies > Largest ? 0d : 1d - cumulative[copies - 1];

    /// <summary>E[min(d, copies)], the copies sold out of so many for sale, from the running sums.</summary>
    /// <param name="copies">Copies for sale; of 0 and fewer none is sold.</param>
    public double ExpectedSales(long copies)
    {
        if (copies <= 0)
        {
            return 0d;
        }

        return copies > Largest ? Mean : partialMean[copies - 1] + (copies * (1d - cumulative[copies - 1]));
    }

    /// <summary>The smallest count whose cumulative probability is at least <paramref name="probability"/>.</summary>
    /// <param name="probability">0 to 1.</param>
    public int Quantile(double probability)
    {
        var index = Array.BinarySearch(cumulative, probability);
        index = index < 0 ? ~index : index;
        while (index > 0 && cumulative[index - 1] >= probability)
        {
            index--;
        }

        return Math.Min(index, Largest);
    }

    /// <summary>Fifty equally likely counts: the quantiles at (i − ½)/50.</summary>
    public IReadOnlyList<int> Dots() => [.. Enumerable.Range(1, 50).Select(i => Quantile((i - 0.5) / 50))];

    private static double[] Poisson(double mean) =>
        FromMode((int)Math.Floor(mean), copies => mean / (copies + 1));

    // P(d + 1) / P(d) = (r + d) / (d + 1) · mean / (r + mean).
    private static double[] NegativeBinomial(double mean, double shape)
    {
        var share = mean / (shape + mean);
        var mode = shape > 1d ? (int)Math.Floor((shape - 1d) * mean / shape) : 0;
        return FromMode(mode, copies => (shape + copies) / (copies + 1d) * share);
    }

    private static double[] History(HistoryDemand history)
    {
        var shape = (double)history.PriorShape + history.Periods.Sum(sold => (long)sold);
        var mean = (double)history.Uplift * (double)history.HorizonPeriods * shape / ((double)history.PriorRate + history.Periods.Count);
        return NegativeBinomial(mean, shape);
    }

    // Weights by the ratio of neighbours outward from the mode, divided by their own sum: no logarithm of a gamma function loses digits.
    private static double[] FromMode(int mode, Func<int, double> ratioToNext)
    {
        var weights = new List<double>(mode + 64);
        var below = new Stack<double>();
        var weight = 1d;
        for (var copies = mode - 1; copies >= 0; copies--)
        {
            weight = weight < Negligible ? 0d : weight / ratioToNext(copies);
            below.Push(weight);
        }

        weights.AddRange(below);
        weights.Add(1d);
        weight = 1d;
        for (var copies = mode; weight > Negligible && copies < MostCopies; copies++)
        {
            weights.Add(weight *= ratioToNext(copies));
        }

        return Ended(Normalised([.. weights]));
    }

    private static double[] Ended(double[] probabilities)
    {
        var sum = 0d;
        for (var copies = 0; copies < probabilities.Length; copies++)
        {
            if (sum + probabilities[copies] > Nearly)
            {
                probabilities[copies] = 1d - sum;
                return probabilities[..(copies + 1)];
            }

            sum += probabilities[copies];
        }

        return probabilities;
    }

    private static double[] Normalised(double[] weights)
    {
        var sum = weights.Sum();
        return Array.ConvertAll(weights, weight => weight / sum);
    }

    private static double[] Opinion(OpinionDemand opinion)
    {
        var (low, likely, high) = ((double)opinion.Low, (double)opinion.Likely, (double)opinion.High);
        var last = Math.Max(0, (int)Math.Ceiling(high - 0.5));
        var probabilities = new double[last + 1];
        var before = 0d;
        for (var copies = 0; copies <= last; copies++)
        {
            var upTo = copies == last ? 1d : Triangular(copies + 0.5);
            probabilities[copies] = upTo - before;
            before = upTo;
        }

        return probabilities;

        double Triangular(double x) =>
            x <= low ? 0d
            : x >= high ? 1d
            : x <= likely ? (x - low) * (x - low) / ((high - low) * (likely - low))
            : 1d - ((high - x) * (high - x) / ((high - low) * (high - likely)));
    }
}
