using MathNet.Numerics.Distributions;
using PressRun.Engine.Bench;

namespace PressRun.Engine.Copies;

/// <summary>A step as it was done in one run, beside what the table's rates say of it.</summary>
/// <param name="Seen">What it took.</param>
/// <param name="RatedSeconds">Seconds beyond the set-up that the rates of today give the same copies of the same book; 0 or more.</param>
public sealed record StepRun(StepActual Seen, decimal RatedSeconds)
{
    private const decimal SecondsPerMinute = 60m;

    /// <summary>The steps of a printing beside the rates of today. A step done on two evenings is one step of the run.</summary>
    /// <param name="printing">What was.</param>
    /// <param name="steps">The table's steps; others are left out.</param>
    /// <param name="ratedMinutes">Minutes with its set-up that today's rates give a step for so many copies of this book; null where they say nothing of it.</param>
    public static IReadOnlyList<StepRun> Of(PrintingActual printing, IReadOnlyList<BenchStep> steps, Func<string, int, decimal?> ratedMinutes) =>
    [
        .. from line in printing.Steps
           group line by line.Step into done
           let step = steps.FirstOrDefault(step => step.Name == done.Key)
           where step is not null
           let seen = new StepActual(done.Key, done.Sum(line => line.Minutes), done.Sum(line => line.Started), done.Sum(line => line.Spoiled))
           let rated = ratedMinutes(seen.Step, seen.Started) is { } minutes ? Math.Max(0m, (minutes - step.SetUpMinutes) * SecondsPerMinute) : 0m
           select new StepRun(seen, rated),
    ];
}

/// <summary>
/// What a press's own runs say of one step of its table. The times of the step are stretched or shortened together by a ratio estimate: all minutes
/// less the set-ups over what today's rates give the same work, so that a large run counts for more than a small one, and a book of many pieces for more
/// than one of few (Cochran, Sampling Techniques, chapter 6). A step without times gets seconds for a copy, by the same estimate over copies. Spoilage is
/// what went wrong of all that went in. Offered with the number of runs it rests on, and never applied by itself.
/// </summary>
/// <param name="Now">The step as it stands.</param>
/// <param name="Learned">The step with the times and the spoilage of the runs, rounded to a tenth of a second and a hundredth of a per cent.</param>
/// <param name="Runs">Runs that it rests on, 1 or more.</param>
/// <param name="Copies">Copies that went into the step in all of them, 1 or more.</param>
/// <param name="Spoiled">Of these, copies that went wrong.</param>
/// <param name="Ratio">Time taken over time rated, not rounded; for a step without times, seconds for a copy.</param>
/// <param name="HalfWidth">Half the width of the 95 % interval of the ratio; null below three runs, which say too little of how runs differ.</param>
public sealed record LearnedRate(BenchStep Now, BenchStep Learned, int Runs, long Copies, long Spoiled, decimal Ratio, decimal? HalfWidth)
{
    private const int FewestForInterval = 3;
    private const double Upper = 0.975;
    private const decimal SecondsPerMinute = 60m;

    // A rate of 100 % would never give a good copy.
    private const decimal MostSpoilage = 0.9999m;

    /// <summary>True where the runs say something else than the step does.</summary>
    public bool Differs => Learned != Now;

    /// <summary>The step at both ends of the interval, the quicker first; null where there is none.</summary>
    public (BenchStep Quick, BenchStep Slow)? Between =>
        HalfWidth is { } half ? (Timed(Now, Math.Max(0m, Ratio - half)), Timed(Now, Ratio + half)) : null;

    /// <summary>Learns every step of the table for which there is a run.</summary>
    /// <param name="steps">The table's steps, whose set-up times are held fixed.</param>
    /// <param name="runs">What was written down for each run, each step once; steps that the table does not know are left out.</param>
    /// <returns>In the order of the steps.</returns>
    public static IReadOnlyList<LearnedRate> Of(IReadOnlyList<BenchStep> steps, IReadOnlyList<IReadOnlyList<StepRun>> runs) =>
    [
        .. steps.Select(step => Of(step, [.. runs.Select(run => run.FirstOrDefault(seen => seen.Seen.Step == step.Name)).OfType<StepRun>().Where(run => run.Seen.Started > 0)]))
            .OfType<LearnedRate>(),
    ];

    private static LearnedRate? Of(BenchStep step, List<StepRun> seen)
    {
        var bare = IsBare(step);
        var pairs = seen.Where(run => bare || run.RatedSeconds > 0m)
            .Select(run => (
                Run: run.Seen,
                Took: (run.Seen.Minutes - step.SetUpMinutes) * SecondsPerMinute,
                Rated: bare ? run.Seen.Started : run.RatedSeconds)).ToList();
        if (pairs.Count == 0)
        {
            return null;
        }

        var ratio = Math.Max(0m, pairs.Sum(pair => pair.Took) / pairs.Sum(pair => pair.Rated));
        var copies = pairs.Sum(pair => (long)pair.Run.Started);
        var spoiled = pairs.Sum(pair => (long)pair.Run.Spoiled);
        var learned = Timed(step, ratio) with { Spoilage = Math.Min(MostSpoilage, decimal.Round((decimal)spoiled / copies, 4)) };
        return new LearnedRate(step, learned, pairs.Count, copies, spoiled, ratio, HalfWidthOf([.. pairs.Select(pair => (pair.Took, pair.Rated))], ratio));
    }

    // Cochran, equation 6.13, without the correction for a finite population; Student's t for the few runs that a press has.
    private static decimal? HalfWidthOf(List<(decimal Took, decimal Rated)> pairs, decimal ratio)
    {
        if (pairs.Count < FewestForInterval)
        {
            return null;
        }

        var mean = (double)pairs.Average(pair => pair.Rated);
        var squares = pairs.Sum(pair => Math.Pow((double)(pair.Took - (ratio * pair.Rated)), 2d));
        var error = Math.Sqrt(squares / (pairs.Count - 1) / pairs.Count) / mean;
        return (decimal)(StudentT.InvCDF(0d, 1d, pairs.Count - 1, Upper) * error);
    }

    private static BenchStep Timed(BenchStep step, decimal ratio) => IsBare(step)
        ? step with { SecondsPerCopy = decimal.Round(ratio, 1) }
        : step with
        {
            SecondsPerCopy = decimal.Round(step.SecondsPerCopy * ratio, 1),
            SecondsPerPiece = decimal.Round(step.SecondsPerPiece * ratio, 1),
            SecondsPerCut = decimal.Round(step.SecondsPerCut * ratio, 1),
        };

    private static bool IsBare(BenchStep step) => step is { SecondsPerCopy: 0m, SecondsPerPiece: 0m, SecondsPerCut: 0m };
}
