namespace PressRun.Engine.Bench;

/// <summary>Neighbouring piles of one part that are alike but for their page numbers, which go on from pile to pile by the same step.</summary>
/// <param name="Piles">In collating order; one or more.</param>
public sealed record PileRun(IReadOnlyList<Pile> Piles)
{
    /// <summary>The first pile.</summary>
    public Pile First => Piles[0];

    /// <summary>The last pile; the first where there is only one.</summary>
    public Pile Last => Piles[^1];

    /// <summary>The piles of a book as runs, in collating order.</summary>
    /// <param name="piles">In collating order.</param>
    public static IReadOnlyList<PileRun> Of(IReadOnlyList<Pile> piles)
    {
        var runs = new List<List<Pile>>();
        foreach (var pile in piles)
        {
            if (runs.Count > 0 && AreAlike(runs[^1][^1], pile))
            {
                runs[^1].Add(pile);
            }
            else
            {
                runs.Add([pile]);
            }
        }

        return [.. runs.Select(run => new PileRun(run))];
    }

    // A blank side ends a run: it has to be seen.
    private static bool AreAlike(Pile one, Pile next) =>
        (one.PartIndex, one.Pieces, one.Outer.Count, one.Inner.Count) == (next.PartIndex, next.Pieces, next.Outer.Count, next.Inner.Count);
}
