namespace PressRun.Engine.Bench;

/// <summary>Time at the press's own table as a function of the copies started.</summary>
internal sealed class BenchTime
{
    /// <summary>Name of the step that falls away where the shop collates.</summary>
    public const string CollateStep = "collate";

    private const decimal SecondsPerMinute = 60m;

    private readonly decimal setUpSeconds;
    private readonly decimal secondsPerCopy;
    private readonly (decimal Seconds, int CopiesPerPile)[] cutting;

    public BenchTime(IReadOnlyList<BenchStep> steps, int piecesPerCopy, int trimmedEdges)
    {
        setUpSeconds = steps.Sum(step => step.SetUpMinutes) * SecondsPerMinute;
        secondsPerCopy = steps.Sum(step => step.SecondsPerCopy + (step.SecondsPerPiece * piecesPerCopy));
        cutting = [.. steps.Where(step => step.SecondsPerCut > 0m && trimmedEdges > 0).Select(step => (step.SecondsPerCut * trimmedEdges, step.CopiesPerPile))];
    }

    /// <summary>Steps that remain at the bench.</summary>
    public static IReadOnlyList<BenchStep> StepsLeftToDo(IReadOnlyList<BenchStep> steps, bool shopCollates) =>
        shopCollates ? [.. steps.Where(step => step.Name != CollateStep)] : steps;

    /// <summary>Seconds for <paramref name="copies"/> copies started: every step works on all of them.</summary>
    public decimal Seconds(long copies)
    {
        var seconds = setUpSeconds + (secondsPerCopy * copies);
        foreach (var (perPile, copiesPerPile) in cutting)
        {
            seconds += perPile * ((copies + copiesPerPile - 1) / copiesPerPile);
        }

        return seconds;
    }
}
