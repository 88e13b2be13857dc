using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Ladder;
using PressRun.Web.Charts;

namespace PressRun.Web.RunPlans;

/// <summary>A plan's job with what does not depend on the quantity chosen.</summary>
/// <param name="Prepared">The job.</param>
/// <param name="Curve">Landed cost over the range shown.</param>
/// <param name="AllBands">Where fewer copies cost as much or more.</param>
/// <param name="Jumps">Where the cost falls or leaps.</param>
/// <param name="Steps">Every step in the range with what changes there.</param>
/// <param name="Imposition">Page order, staples, cuts.</param>
public sealed record WorkedPlan(
    PreparedJob Prepared,
    CostCurve Curve,
    IReadOnlyList<DearBand> AllBands,
    IReadOnlyList<LadderJump> Jumps,
    IReadOnlyList<StepAhead> Steps,
    Imposition Imposition)
{
    /// <summary>True where more quantities would be shown of a job that is worked out sooner.</summary>
    public bool IsNarrowed { get; private init; }

    /// <summary>Where fewer copies cost more. Where they cost the same, as between the only quantities a shop sells, nothing is lost and
    /// nothing is shaded.</summary>
    public IReadOnlyList<DearBand> Bands { get; } =
        [.. AllBands.Where(band => Enumerable.Range(band.From, band.To - band.From + 1).Any(quantity => Curve.At(quantity) > Curve.At(band.Better)))];

    /// <summary>Works a prepared job out over a range of quantities.</summary>
    /// <param name="prepared">The job.</param>
    /// <param name="range">The quantities.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <exception cref="OperationCanceledException">The work was ended early.</exception>
    public static Outcome<WorkedPlan> Of(PreparedJob prepared, ShownRange range, CancellationToken cancellation = default)
    {
        var (from, to, isNarrowed) = range;
        var curve = prepared.Curve(from, to, cancellation);
        if (!curve.Succeeded)
        {
            return Outcome<WorkedPlan>.Refused(curve.Problems);
        }

        var steps = prepared.StepsBetween(from, to, cancellation);
        return Outcome<WorkedPlan>.Of(new WorkedPlan(
            prepared, curve.Value, curve.Value.DearBands(), LadderJump.Of(curve.Value), steps.Succeeded ? steps.Value : [], prepared.Impose())
        {
            IsNarrowed = isNarrowed,
        });
    }

    /// <summary>The answer at a quantity, or what stands in the way of it.</summary>
    /// <param name="quantity">1 to 1,000,000.</param>
    public Outcome<RunAnswer> At(int quantity)
    {
        var estimate = Prepared.Estimate(quantity);
        if (!estimate.Succeeded)
        {
            return Outcome<RunAnswer>.Refused(estimate.Problems);
        }

        // From a quantity below the range no further ahead than from one within it.
        var ahead = Math.Min(Curve.To, quantity + (Curve.To - Curve.From));
        var outlook = Prepared.LookAhead(quantity, Math.Max(ahead, quantity + 1));
        return outlook.Succeeded
            ? Outcome<RunAnswer>.Of(new RunAnswer(
                estimate.Value,
                outlook.Value,
                MoneyCut.Of(estimate.Value, Prepared.Job.Currency, Prepared.Job.ReclaimTax),
                BetterThan(quantity)))
            : Outcome<RunAnswer>.Refused(outlook.Problems);
    }

    /// <summary>What asks for care at the table, but for creep beyond the trim: of that the estimate warns.</summary>
    /// <param name="estimate">At the quantity looked at.</param>
    /// <param name="limits">From where on the press wants to be warned.</param>
    public IEnumerable<BenchCaution> Cautions(Estimate estimate, BenchLimits limits) =>
        BenchCaution.Of(Prepared, estimate, limits).Where(caution => caution.Code != BenchCautionCode.CreepBeyondTrim);

    /// <summary>Work of the run that has no rates.</summary>
    /// <param name="cautions">Of the run.</param>
    public IReadOnlyList<WorkKind> Unrated(IEnumerable<BenchCaution> cautions) =>
        WorkList.Unrated(Prepared, cautions.Any(caution => caution.Code == BenchCautionCode.FoldUnscored));

    /// <summary>The drawing of the book.</summary>
    /// <param name="coverColour">As <c>#rrggbb</c>.</param>
    public BookShape Shape(string? coverColour) => BookShape.Of(Prepared.Block, Imposition, coverColour);

    private BetterBuy? BetterThan(int quantity) =>
        AllBands.Where(band => band.Holds(quantity)).Select(band => (BetterBuy?)Curve.Buy(quantity, band.Better)).FirstOrDefault();
}
