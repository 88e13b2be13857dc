namespace PressRun.Engine.Ladder;

/// <summary>The quantities of a ladder: from, from + step, ... up to and never past <paramref name="To"/>.</summary>
/// <param name="From">First quantity, at least 1.</param>
/// <param name="To">Not below <paramref name="From"/>, at most 1,000,000.</param>
/// <param name="Step">At least 1; at most 10,000 quantities result.</param>
public readonly record struct LadderRange(int From, int To, int Step)
{
    /// <summary>The largest quantity that the ladder holds.</summary>
    public int Last => From + (Count - 1) * Step;

    /// <summary>How many quantities it holds.</summary>
    public int Count => (To - From) / Step + 1;
}
