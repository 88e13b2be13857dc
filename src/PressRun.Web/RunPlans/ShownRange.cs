using PressRun.Engine.Costing;
using PressRun.Engine.Ladder;

namespace PressRun.Web.RunPlans;

/// <summary>The quantities around a run that are worked out to be shown, on a plan's page and on its quotes' alike.</summary>
public static class ShownRange
{
    // Where no range is named: from a quarter of the run to three times the run.
    private const int ShownBelow = 4;
    private const int ShownAbove = 3;

    // However large the run, and however wide the range that is named: more could neither be drawn nor read, and would take minutes.
    private const int MostBelow = 5_000;
    private const int MostAbove = 10_000;

    /// <summary>The range, wide enough for its quantity, and no further than the shop goes.</summary>
    /// <param name="prepared">The job.</param>
    /// <param name="quantity">Of the run.</param>
    /// <param name="named">The range that was named; null for the usual one.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <exception cref="OperationCanceledException">The work was ended early.</exception>
    public static (int From, int To) Of(PreparedJob prepared, int quantity, LadderRange? named, CancellationToken cancellation = default)
    {
        var from = Math.Min(quantity, named?.From ?? Math.Max(1, quantity / ShownBelow));
        var to = Math.Max(quantity, named?.Last ?? (int)Math.Min(Job.MostCopies, (long)quantity * ShownAbove));
        (from, to) = (Math.Max(from, quantity - MostBelow), Math.Min(to, quantity + MostAbove));
        while (to > quantity && prepared.LandedCost(to, out _) is not null)
        {
            cancellation.ThrowIfCancellationRequested();
            to--;
        }

        return (from, to);
    }
}
