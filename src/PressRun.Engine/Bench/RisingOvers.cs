namespace PressRun.Engine.Bench;

/// <summary>
/// Copies to start for quantities that rise, as those of a ladder do: the same answers as <see cref="CopiesToStart.For"/>, each in nanoseconds.
/// From one quantity to the next the assured copies move by little, and the binomial tail moves with them by neighbouring probabilities
/// (T = P(X ≥ q) of g copies, b = P(X = q)):
/// <code>
/// T(g + 1, q + 1) = T(g, q) − (1 − p) · b(g, q)
/// T(g + 1, q)     = T(g, q) + p · b(g, q − 1)
/// </code>
/// The tail is summed afresh before its rounding can reach <see cref="Margin"/>, and a tail nearer to the confidence than that is
/// decided by the full search. Not thread-safe: one for each walk.
/// </summary>
internal sealed class RisingOvers
{
    // An update moves T by at most one probability, each good to a few units in the last place for each update before it: over so many
    // updates in a row the errors stay below 1e-11.
    private const int UpdatesBetweenSums = 256;
    private const double Margin = 1e-10;

    // Beyond this the copies between two neighbouring quantities, or the quantities skipped, are more than the full search takes.
    private const double LeastSurvival = 1e-5;
    private const int MostSkipped = 1000;

    private readonly CopiesToStart overs;
    private readonly double survival;
    private readonly double spoiled;
    private readonly double wanted;

    private int good;
    private long? started;
    private BinomialTail tail;
    private int updates;
    private bool isFewest;

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

        if (started is null || survival < LeastSurvival || goodCopies <= good || goodCopies - good > MostSkipped)
        {
            Search(goodCopies);
            return started;
        }

        while (good < goodCopies && started is not null)
        {
            Next();
        }

        return started;
    }

    // The fewest copies for one good copy more are at least one more: without its last copy a run that reaches q + 1 reaches q.
    private void Next()
    {
        if (!isFewest)
        {
            Search(good + 1);
            return;
        }

        var copies = started!.Value;
        Move(copies + 1, good + 1, new BinomialTail(tail.AtLeast - (spoiled * tail.Exactly), tail.Exactly * survival * (copies + 1) / (good + 1)));
        while (Math.Abs(tail.AtLeast - wanted) > Margin)
        {
            if (tail.AtLeast > wanted)
            {
                return;
            }

            copies = started.Value;
            if (copies == CopiesToStart.Most)
            {
                started = null;
                return;
            }

            var ratio = spoiled / (copies - good + 1);
            Move(copies + 1, good, new BinomialTail(tail.AtLeast + (tail.Exactly * good * ratio), tail.Exactly * (copies + 1) * ratio));
        }

        Search(good);
    }

    private void Move(long copies, int goodCopies, BinomialTail moved)
    {
        (started, good) = (copies, goodCopies);
        tail = ++updates < UpdatesBetweenSums ? moved : Sum(copies, goodCopies);
    }

    private void Search(int goodCopies)
    {
        good = goodCopies;
        started = overs.For(goodCopies);
        if (started is { } copies)
        {
            tail = Sum(copies, goodCopies);
            isFewest = BinomialTail.Of(copies - 1, survival, goodCopies).AtLeast < wanted - Margin;
        }
    }

    private BinomialTail Sum(long copies, int goodCopies)
    {
        updates = 0;
        return BinomialTail.Of(copies, survival, goodCopies);
    }
}
