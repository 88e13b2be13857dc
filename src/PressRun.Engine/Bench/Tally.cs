using PressRun.Engine.Copies;
using PressRun.Engine.Costing;

namespace PressRun.Engine.Bench;

/// <summary>What is written down at the table while copies are bound.</summary>
public enum TallyKind
{
    /// <summary>Copies came well out of a step.</summary>
    Done,

    /// <summary>Copies went wrong at a step, and go no further.</summary>
    Spoiled,

    /// <summary>Somebody worked at a step for a while.</summary>
    Worked,
}

/// <summary>A step of the work as it is tallied.</summary>
/// <param name="Name">The press's own name of it, by which its rates are learned, else the trade's.</param>
/// <param name="Kind">What is done.</param>
/// <param name="Spoilage">Part of the copies that usually goes wrong here, 0 up to but not including 1.</param>
/// <param name="Minutes">What the plan gives it for all copies, with its set-up; null where there are no rates.</param>
public sealed record TallyStep(string Name, WorkKind Kind, decimal Spoilage, decimal? Minutes);

/// <summary>Something written down at the table. What is taken back is an entry of its own, with the opposite figures.</summary>
/// <param name="Step">Place of the step, from 0.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Copies">Copies done or spoiled; 0 for work.</param>
/// <param name="Seconds">Time worked by one person; 0 for copies.</param>
/// <param name="By">Who; empty for somebody who gave no name.</param>
public sealed record TallyEntry(int Step, TallyKind Kind, int Copies, int Seconds, string By);

/// <summary>What one person did at a step.</summary>
/// <param name="By">Who; empty for somebody who gave no name.</param>
/// <param name="Done">Copies done.</param>
/// <param name="Spoiled">Copies spoiled.</param>
/// <param name="Seconds">Time worked.</param>
public sealed record PersonTally(string By, long Done, long Spoiled, long Seconds);

/// <summary>How a step stands.</summary>
/// <param name="Step">The step.</param>
/// <param name="Done">Copies that came well out of it.</param>
/// <param name="Spoiled">Copies that went wrong at it.</param>
/// <param name="Left">Copies that are still to go through: those on the table, less what went wrong up to here and what is done. Below 0 where more
/// were counted than there were.</param>
/// <param name="Seconds">Time worked, of all people together: two who work an hour side by side have worked two.</param>
/// <param name="People">Who did what, in the order in which they began.</param>
public sealed record StepTally(TallyStep Step, long Done, long Spoiled, long Left, long Seconds, IReadOnlyList<PersonTally> People)
{
    private const decimal SecondsPerMinute = 60m;

    /// <summary>Copies that went into the step.</summary>
    public long Started => Done + Spoiled;

    /// <summary>Copies that come to the step: those on the table, less what went wrong before it.</summary>
    public long Coming => Left + Started;

    /// <summary>True where anything of it was written down.</summary>
    public bool IsBegun => Started > 0 || Seconds > 0;

    /// <summary>Minutes worked, of all people together, not rounded.</summary>
    public decimal Minutes => Seconds / SecondsPerMinute;
}

/// <summary>How the work at the table stands. Every figure is a sum of the entries, in whatever order they came.</summary>
public sealed class Tally
{
    private Tally(int copies, int wanted, IReadOnlyList<StepTally> steps)
    {
        (Copies, Wanted, Steps) = (copies, wanted, steps);
        Spoiled = steps.Sum(step => step.Spoiled);
        Further = FurtherSpoilage(copies, steps);
    }

    /// <summary>Copies that lie on the table at the beginning.</summary>
    public int Copies { get; }

    /// <summary>Good copies wanted.</summary>
    public int Wanted { get; }

    /// <summary>The steps in order.</summary>
    public IReadOnlyList<StepTally> Steps { get; }

    /// <summary>Copies that went wrong at all steps.</summary>
    public long Spoiled { get; }

    /// <summary>Copies that may still go wrong before fewer are left than wanted; below 0 where that has happened.</summary>
    public long Spare => Copies - Spoiled - Wanted;

    /// <summary>Copies that will usually still go wrong: each copy meets the usual spoilage of every step that it has not come through. Not rounded.</summary>
    public decimal Further { get; }

    /// <summary>Copies that came out of the last step at which copies were counted; 0 where none were.</summary>
    public long Good => Steps.LastOrDefault(step => step.Started > 0)?.Done ?? 0;

    /// <summary>Time worked at all steps by all people together, in seconds.</summary>
    public long Seconds => Steps.Sum(step => step.Seconds);

    /// <summary>Sums entries up.</summary>
    /// <param name="copies">Copies on the table at the beginning, 1 or more.</param>
    /// <param name="wanted">Good copies wanted, 1 or more.</param>
    /// <param name="steps">The steps in order.</param>
    /// <param name="entries">What was written down; of steps that there are.</param>
    public static Tally Of(int copies, int wanted, IReadOnlyList<TallyStep> steps, IEnumerable<TallyEntry> entries)
    {
        var ofStep = entries.ToLookup(entry => entry.Step);
        var sums = new List<StepTally>(steps.Count);
        var gone = 0L;
        foreach (var (place, step) in steps.Index())
        {
            var people = ofStep[place].GroupBy(entry => entry.By).Select(PersonOf).Where(person => person is not { Done: 0, Spoiled: 0, Seconds: 0 }).ToList();
            var (done, spoiled) = (people.Sum(person => person.Done), people.Sum(person => person.Spoiled));
            gone += spoiled;
            sums.Add(new StepTally(step, done, spoiled, copies - gone - done, people.Sum(person => person.Seconds), people));
        }

        return new Tally(copies, wanted, sums);
    }

    /// <summary>What each step took, for the copies ledger; steps of which nothing was written down are left out.</summary>
    public IReadOnlyList<StepActual> Actuals() =>
        [.. Steps.Where(step => step.IsBegun).Select(step => new StepActual(step.Step.Name, step.Minutes, OfRun(step.Started), OfRun(step.Spoiled)))];

    // No more than a run may have.
    private static int OfRun(long counted) => (int)Math.Clamp(counted, 0L, Job.MostCopies);

    private static PersonTally PersonOf(IGrouping<string, TallyEntry> entries) => new(
        entries.Key,
        entries.Where(entry => entry.Kind == TallyKind.Done).Sum(entry => (long)entry.Copies),
        entries.Where(entry => entry.Kind == TallyKind.Spoiled).Sum(entry => (long)entry.Copies),
        entries.Sum(entry => (long)entry.Seconds));

    // A copy that has come out of a later step has come through all before it, whether or not anybody counted it there. Seen from the end: those that
    // arrived at a step came through the one before; those that came through that one and did not arrive wait here.
    private static decimal FurtherSpoilage(int copies, IReadOnlyList<StepTally> steps)
    {
        var (further, survives, arrivedLater) = (0m, 1m, 0L);
        for (var place = steps.Count - 1; place >= 0; place--)
        {
            var step = steps[place];
            var through = Math.Max(step.Done, arrivedLater);
            further += Math.Max(0L, through - arrivedLater) * (1m - survives);
            survives *= 1m - step.Step.Spoilage;
            arrivedLater = through + step.Spoiled;
        }

        return further + (Math.Max(0L, copies - arrivedLater) * (1m - survives));
    }
}
