using PressRun.Engine.Editions;

namespace PressRun.Engine.Costing;

/// <content>One order with half of the run on each of two stocks.</content>
public sealed partial class PreparedJob
{
    /// <summary>
    /// Prepares a run of which the first half has a part on one stock and the second half on another: one order, whose set-ups, print steps,
    /// minimum, discount and delivery are shared. Of an odd number of copies started the first half has one more. A weighed copy is left out
    /// of account, since it was on one paper only.
    /// </summary>
    /// <param name="job">The job; its edition's part is replaced by either stock.</param>
    /// <param name="part">Place of the part, from 0.</param>
    /// <param name="firstStockId">Stock of the first half.</param>
    /// <param name="secondStockId">Stock of the second half.</param>
    /// <returns>The prepared run, or every problem found.</returns>
    public static Outcome<PreparedJob> PrepareHalves(Job job, int part, string firstStockId, string secondStockId)
    {
        var reckoned = firstStockId == secondStockId ? job : job with { Edition = job.Edition with { Weighed = null } };
        var first = Prepare(reckoned.WithStocks((part, firstStockId)));
        var second = Prepare(reckoned.WithStocks((part, secondStockId)));
        if (!first.Succeeded || !second.Succeeded)
        {
            return Outcome<PreparedJob>.Refused([.. first.Problems.Concat(second.Problems).Distinct()]);
        }

        var (one, other) = (first.Value, second.Value);
        if (one.book != other.book)
        {
            return Outcome<PreparedJob>.Refused(new Problem(
                "$.shop.bookPrices", null, "Each half has a price per copy of its own; such a shop takes the halves as two orders."));
        }

        var lots = new List<Lot>();
        for (var index = 0; index < one.lots.Length; index++)
        {
            if (one.lots[index].Pieces == other.lots[index].Pieces)
            {
                lots.Add(one.lots[index]);
            }
            else
            {
                lots.Add(one.lots[index] with { Share = Share.FirstHalf });
                lots.Add(other.lots[index] with { Share = Share.SecondHalf });
            }
        }

        var prepared = firstStockId == secondStockId ? one.job : one.job with { SecondHalf = new SecondHalf(part, secondStockId) };
        return Outcome<PreparedJob>.Of(new PreparedJob(prepared, one.tables, one.Block, other.Block, [.. lots], one.book));
    }
}
