using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using PressRun.Web.Papers;

namespace PressRun.Web.Posting;

/// <summary>What posting a plan's copies costs.</summary>
/// <param name="Job">The plan's job; its stocks hold the papers tried.</param>
/// <param name="Table">Every region, number of copies and mailer that the page lies in.</param>
/// <param name="Lower">What would reach a lower postage through the chosen way of selling; null where it posts nothing.</param>
/// <param name="Problems">What stands in the way; empty where nothing does.</param>
public sealed record PostingAnswer(Job Job, IReadOnlyList<MailedCopies> Table, LowerStep? Lower, IReadOnlyList<Problem> Problems)
{
    private static readonly int[] Orders = [1, 2, 5];

    /// <summary>The same for the second half of the run, where that is on another paper; null where all copies are alike. The answer itself is then the first half's.</summary>
    public PostingAnswer? OtherHalf { get; private init; }

    /// <summary>Works out what posting costs.</summary>
    /// <param name="view">The plan.</param>
    /// <param name="channelId">The way of selling, or the one that is only looked at, whose piece should go for less.</param>
    /// <param name="trimUnit">Trims are told in multiples of it.</param>
    public static PostingAnswer Of(PapersView view, string? channelId, Length trimUnit)
    {
        var source = view.Through(channelId);
        var job = source.BuildToTry(Enumerable.Range(0, source.Edition.Parts.Count).SelectMany(view.ToTry));
        if (job.SecondHalf is not { } half)
        {
            return Of(view, job, channelId, trimUnit);
        }

        // A copy that was weighed was of one half, and nobody knows of which.
        var reckoned = job with { SecondHalf = null, Edition = job.Edition with { Weighed = null } };
        return Of(view, reckoned, channelId, trimUnit) with { OtherHalf = Of(view, reckoned.WithStocks((half.Part, half.StockId)), channelId, trimUnit) };
    }

    private static PostingAnswer Of(PapersView view, Job job, string? channelId, Length trimUnit)
    {
        var prepared = PreparedJob.Prepare(job);
        if (!prepared.Succeeded)
        {
            return new PostingAnswer(job, [], null, prepared.Problems);
        }

        var channel = job.Channels.FirstOrDefault(way => way.Id == channelId && way is { MailerId: not null, PostageRegion: not null });
        var orders = channel is null || Orders.Contains(channel.CopiesPerOrder) ? Orders : [.. Orders.Append(channel.CopiesPerOrder).Order()];
        var lower = channel is null
            ? null
            : LowerStep.Find(
                prepared.Value,
                job.Mailers.First(mailer => mailer.Id == channel.MailerId),
                channel.PostageRegion!,
                channel.CopiesPerOrder,
                trimUnit,
                view.ToTry);
        return new PostingAnswer(job, [.. MailTable.Of(prepared.Value, view.Mailers, orders)], lower, []);
    }
}
