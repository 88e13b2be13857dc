using PressRun.Engine.Bench;

namespace PressRun.Engine.Copies;

/// <summary>
/// What a press's own runs say of one step of its table. The time is a ratio estimate: all minutes less the set-ups over all copies, so that a large
/// run counts for more than a small one (Cochran, Sampling Techniques, chapter 6); so is the spoilage. Offered with the number of runs it rests on,
/// and never applied by itself.
/// </summary>
/// <param name="Step">Name of the step.</param>
/// <param name="Runs">Runs that it rests on, 1 or more.</param>
/// <param name="Copies">Copies that went into the step in all of them, 1 or more.</param>
/// <param name="SecondsPerCopy">Seconds for a copy beyond the set-up, pieces and cuts included; 0 or more, not rounded.</param>
/// <param name="Spoilage">Part that went wrong, 0 to 1, not rounded.</param>
public sealed record LearnedRate(string Step, int Runs, long Copies, decimal SecondsPerCopy, decimal Spoilage)
{
    // A rate of 100 % would never give a good copy.
    private const decimal MostSpoilage = 0.9999m;
    private const decimal SecondsPerMinute = 60m;

    /// <summary>Learns every step of the table for which there is a run.</summary>
    /// <param name="steps">The table's steps, whose set-up times are held fixed.</param>
    /// <param name="runs">What was written down for each run; steps that the table does not know are left out.</param>
    /// <returns>In the order of the steps.</returns>
    public static IReadOnlyList<LearnedRate> Of(IReadOnlyList<BenchStep> steps, IReadOnlyList<PrintingActual> runs) =>
        [.. steps.Select(step => Of(step, [.. runs.Select(run => InStep(run, step.Name)).Where(seen => seen.Started > 0)])).OfType<LearnedRate>()];

    /// <summary>The step with this rate instead of its times: what a piece and a cut take is part of what a copy takes.</summary>
    public BenchStep Applied(BenchStep step) =>
        step with { SecondsPerCopy = decimal.Round(SecondsPerCopy, 1), SecondsPerPiece = 0m, SecondsPerCut = 0m, Spoilage = Math.Min(MostSpoilage, decimal.Round(Spoilage, 4)) };

    private static LearnedRate? Of(BenchStep step, List<StepActual> seen)
    {
        if (seen.Count == 0)
        {
            return null;
        }

        var copies = seen.Sum(run => (long)run.Started);
        var seconds = (seen.Sum(run => run.Minutes) - (seen.Count * step.SetUpMinutes)) * SecondsPerMinute;
        return new LearnedRate(step.Name, seen.Count, copies, Math.Max(0m, seconds) / copies, (decimal)seen.Sum(run => (long)run.Spoiled) / copies);
    }

    // A step done on two evenings is one step of the run: copies are those that went in, counted once for each time they were worked on.
    private static StepActual InStep(PrintingActual run, string name)
    {
        var lines = run.Steps.Where(line => line.Step == name).ToList();
        return new StepActual(name, lines.Sum(line => line.Minutes), lines.Sum(line => line.Started), lines.Sum(line => line.Spoiled));
    }
}
