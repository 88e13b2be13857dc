using PressRun.Engine.Costing;
using PressRun.Engine.Ladder;

namespace PressRun.Web.RunPlans;

/// <summary>The quantities around a run that are worked out to be shown, on a plan's page and on its quotes' alike.</summary>
/// <param name="From">The first.</param>
/// <param name="To">The last.</param>
/// <param name="IsNarrowed">True where more would be shown of a job that is worked out sooner.</param>
public readonly record struct ShownRange(int From, int To, bool IsNarrowed)
{
    // Where no range is named: from a quarter of the run to three times the run.
    private const int ShownBelow = 4;
    private const int ShownAbove = 3;

    // However large the run, and however wide the range that is named: more could neither be drawn nor read, and would take minutes.
    private const int MostBelow = 5_000;
    private const int MostAbove = 10_000;

    // However long one costing takes: a second of work in all, since a range is gone through a few times and the effort is told rather too high.
    // Of so many quantities, one part below the run to two above it; a handful is always shown.
    private const double MostEffort = 1_000_000d;
    private const int PartsOfWidth = 3;
    private const int Handful = 12;

    /// <summary>The range, wide enough for its quantity, and no further than the shop goes.</summary>
    /// <param name="prepared">The job.</param>
    /// <param name="quantity">Of the run.</param>
    /// <param name="named">The range that was named; null for the usual one.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <exception cref="OperationCanceledException">The work was ended early.</exception>
    public static ShownRange Of(PreparedJob prepared, int quantity, LadderRange? named, CancellationToken cancellation = default)
    {
        var from = Math.Min(quantity, named?.From ?? Math.Max(1, quantity / ShownBelow));
        var to = Math.Max(quantity, named?.Last ?? (int)Math.Min(Job.MostCopies, (long)quantity * ShownAbove));
        (from, to) = (Math.Max(from, quantity - MostBelow), Math.Min(to, quantity + MostAbove));
        var range = Within((int)Math.Max(Handful, MostEffort / CostingEffort.Of(prepared.Job, 1, to)), from, quantity, to);
        while (range.To > quantity && prepared.LandedCost(range.To, out _) is not null)
        {
            cancellation.ThrowIfCancellationRequested();
            range = range with { To = range.To - 1 };
        }

        return range;
    }

    // At most so many quantities; what one side has no use for, the other gets.
    private static ShownRange Within(int most, int from, int quantity, int to)
    {
        var (below, above) = (quantity - from, to - quantity);
        if (below + above < most)
        {
            return new ShownRange(from, to, false);
        }

        var lower = Math.Min(below, Math.Max(most / PartsOfWidth, most - 1 - above));
        return new ShownRange(quantity - lower, quantity + Math.Min(above, most - 1 - lower), true);
    }
}
