namespace PressRun.Engine.Bench;

/// <summary>
/// Copies to start for quantities that rise, as those of a ladder do: the same answers as <see cref="CopiesToStart.For"/>, each in nanoseconds
/// where the quantities lie near each other. From one quantity to the next the assured copies move by little, and the binomial tail moves with them
/// by neighbouring probabilities (T = P(X ≥ q) of g copies, b = P(X = q)):
/// <code>
/// T(g + 1, q + 1) = T(g, q) − (1 − p) · b(g, q)
/// T(g + 1, q)     = T(g, q) + p · b(g, q − 1)
/// </code>
/// The tail is summed afresh before its rounding can reach <see cref="SureCounts.Margin"/>; where a tail comes nearer to the confidence than that, the
/// quantity asked for is searched by itself. Not thread-safe: one for each walk.
/// </summary>
internal sealed class RisingOvers
{
    // Each good copy more takes about 1 / p updates, and so many updates take about as long as the search with its one or two sums.
    private const int MostUpdates = 2 * SureCounts.UpdatesBetweenSums;

    private readonly CopiesToStart overs;
    private readonly double survival;
    private readonly double spoiled;
    private readonly double wanted;

    private int good;
    private long? started;
    private BinomialTail tail;
    private int updates;
    private bool isSummed;

    public RisingOvers(CopiesToStart overs, double wanted)
    {
        this.overs = overs;
        this.wanted = wanted;
        survival = overs.Survival;
        spoiled = 1d - survival;
    }

    /// <summary>Copies to start for a quantity; quick where it is a little above the one asked before.</summary>
    /// <param name="goodCopies">1 to 1,000,000.</param>
    /// <returns>The copies, or null where there would be more than <see cref="CopiesToStart.Most"/>.</returns>
    public long? For(int goodCopies)
    {
        if (!overs.IsSearched)
        {
            return overs.For(goodCopies);
        }

        if (started is null || goodCopies <= good || (goodCopies - good) / survival > MostUpdates || !CanWalk())
        {
            return Search(goodCopies);
        }

        while (good < goodCopies && started is not null)
        {
            if (!Next())
            {
                return Search(goodCopies);
            }
        }

        return started;
    }

    // A walk begins where the copies are surely the fewest: one fewer would surely be too few.
    private bool CanWalk()
    {
        if (isSummed)
        {
            return true;
        }

        var copies = started!.Value;
        tail = Sum(copies, good);
        isSummed = tail.AtLeast - (tail.Exactly * good / copies) < wanted - SureCounts.Margin;
        return isSummed;
    }

    // The fewest copies for one good copy more are at least one more: without its last copy a run that reaches q + 1 reaches q. False where a tail
    // is too near to the confidence to be decided.
    private bool Next()
    {
        var copies = started!.Value;
        Move(copies + 1, good + 1, new BinomialTail(tail.AtLeast - (spoiled * tail.Exactly), tail.Exactly * survival * (copies + 1) / (good + 1)));
        while (Math.Abs(tail.AtLeast - wanted) > SureCounts.Margin)
        {
            if (tail.AtLeast > wanted)
            {
                return true;
            }

            copies = started.Value;
            if (copies == CopiesToStart.Most)
            {
                started = null;
                return true;
            }

            var ratio = spoiled / (copies - good + 1);
            Move(copies + 1, good, new BinomialTail(tail.AtLeast + (tail.Exactly * good * ratio), tail.Exactly * (copies + 1) * ratio));
        }

        return false;
    }

    private void Move(long copies, int goodCopies, BinomialTail moved)
    {
        (started, good) = (copies, goodCopies);
        tail = ++updates < SureCounts.UpdatesBetweenSums ? moved : Sum(copies, goodCopies);
    }

    private long? Search(int goodCopies)
    {
        (good, isSummed) = (goodCopies, false);
        return started = overs.For(goodCopies);
    }

    private BinomialTail Sum(long copies, int goodCopies)
    {
        updates = 0;
        return BinomialTail.Of(copies, survival, goodCopies);
    }
}
