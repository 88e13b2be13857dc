namespace PressRun.Engine.Bench;

/// <summary>
/// What is sure about the fewest copies to start before they are looked for: up to <paramref name="TooFew"/> too few would survive, from
/// <paramref name="Enough"/> on enough do. Copies started until q good ones are there are a negative binomial, whose mean q / p, standard
/// deviation √(q(1 − p)) / p and skew put its quantile, by the first terms of Cornish and Fisher, within a few copies (Johnson, Kemp and Kotz,
/// Univariate Discrete Distributions, section 5.6). From there the tail is moved by neighbouring probabilities, as in <see cref="RisingOvers"/>:
/// <code>
/// T(g − 1, q) = T(g, q) − b(g, q) · q / g        b(g − 1, q) = b(g, q) · (g − q) / (g · (1 − p))
/// T(g + 1, q) = T(g, q) + b(g, q) · q · (1 − p) / (g − q + 1)
/// </code>
/// A probability nearer to the confidence than <see cref="Margin"/> is sure of nothing: the search then sums it, as it would have.
/// </summary>
internal readonly record struct SureCounts(long TooFew, long Enough)
{
    /// <summary>How near to the confidence a tail may come that was moved by neighbouring probabilities, before it says nothing.</summary>
    public const double Margin = 1e-10;

    /// <summary>An update moves a tail by at most one probability, each good to a few units in the last place for each update before it: over so many
    /// updates in a row the errors stay below 1e-11.</summary>
    public const int UpdatesBetweenSums = 256;

    /// <summary>Most sums of a tail that are made to come near.</summary>
    public const int MostSums = 5;

    /// <summary>The place of a confidence among standard deviations; what no double tells from never or always is taken for the last that one does.</summary>
    public static double Score(double confidence) =>
        MathNet.Numerics.Distributions.Normal.InvCDF(0d, 1d, Math.Clamp(confidence, 1e-15, 1d - 1e-15));

    /// <summary>Looks around the place where the fewest copies ought to be.</summary>
    /// <param name="survival">Probability that a copy survives, more than 0 and at most 1.</param>
    /// <param name="wanted">Least probability that is enough.</param>
    /// <param name="score">Its <see cref="Score"/>.</param>
    /// <param name="goodCopies">Copies that must survive, at least 1.</param>
    public static SureCounts Of(double survival, double wanted, double score, int goodCopies)
    {
        var sure = new SureCounts(goodCopies - 1L, CopiesToStart.Most + 1);
        var place = (goodCopies + (score * Math.Sqrt(goodCopies * (1d - survival))) + (((score * score) - 1d) * (2d - survival) / 6d)) / survival;
        for (var sums = 0; sums < MostSums && sure.Enough - sure.TooFew > 1; sums++)
        {
            var copies = Math.Clamp((long)Math.Clamp(place, 0d, CopiesToStart.Most), sure.TooFew + 1, sure.Enough - 1);
            var tail = BinomialTail.Of(copies, survival, goodCopies);
            sure = sure.With(copies, tail.AtLeast, wanted);
            var away = (wanted - tail.AtLeast) * copies / (tail.Exactly * goodCopies);
            if (Math.Abs(away) <= UpdatesBetweenSums / 2)
            {
                return sure.Walked(copies, tail, survival, wanted, goodCopies);
            }

            if (!double.IsFinite(away))
            {
                break;
            }

            place = copies + away;
        }

        return sure;
    }

    private SureCounts With(long copies, double atLeast, double wanted) =>
        atLeast - wanted > Margin ? this with { Enough = Math.Min(Enough, copies) }
        : wanted - atLeast > Margin ? this with { TooFew = Math.Max(TooFew, copies) }
        : this;

    // Towards fewer copies where there are surely enough, else towards more, until both bounds touch or the updates are used up.
    private SureCounts Walked(long copies, BinomialTail tail, double survival, double wanted, int goodCopies)
    {
        var (sure, spoiled, down) = (this, 1d - survival, Enough == copies);
        var (atLeast, exactly) = (tail.AtLeast, tail.Exactly);
        for (var updates = 0; updates < UpdatesBetweenSums && sure.Enough - sure.TooFew > 1 && copies < CopiesToStart.Most; updates++)
        {
            if (down)
            {
                (atLeast, exactly) = (atLeast - (exactly * goodCopies / copies), exactly * (copies - goodCopies) / (copies * spoiled));
                copies--;
            }
            else
            {
                var ratio = spoiled / (copies - goodCopies + 1);
                (atLeast, exactly) = (atLeast + (exactly * goodCopies * ratio), exactly * (copies + 1) * ratio);
                copies++;
            }

            sure = sure.With(copies, atLeast, wanted);
        }

        return sure;
    }
}
