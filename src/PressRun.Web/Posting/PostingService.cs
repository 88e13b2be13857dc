using PressRun.Data.Postage;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;
using PressRun.Web.Papers;

namespace PressRun.Web.Posting;

/// <summary>A plan with what it is posted in.</summary>
/// <param name="Papers">The plan, and the papers that can be tried.</param>
/// <param name="Mailers">Mailers that the press offers.</param>
public sealed record PostingView(PapersView Papers, IReadOnlyList<Mailer> Mailers);

/// <summary>What posting a plan's copies costs.</summary>
/// <param name="Job">The plan's job; its stocks hold the papers tried.</param>
/// <param name="Table">Every region, number of copies and mailer that the page lies in.</param>
/// <param name="Lower">What would reach a lower postage through the chosen way of selling; null where it posts nothing.</param>
/// <param name="Problems">What stands in the way; empty where nothing does.</param>
public sealed record PostingAnswer(Job Job, IReadOnlyList<MailedCopies> Table, LowerStep? Lower, IReadOnlyList<Problem> Problems);

/// <summary>Loads what copies are posted in, and works out what that costs.</summary>
public sealed class PostingService(PapersService papers, MailerStore mailers)
{
    private static readonly int[] Orders = [1, 2, 5];

    /// <summary>A plan of a printing by the printing's address; null where there is none.</summary>
    public async Task<PostingView?> LoadAsync(PressId press, string slug, int printing, Guid? plan) =>
        await papers.LoadAsync(press, slug, printing, plan) is { } view
            ? new PostingView(view, [.. (await mailers.ListAsync(press)).Select(item => item.Item)])
            : null;

    /// <summary>Works out what posting costs.</summary>
    /// <param name="view">The plan.</param>
    /// <param name="channelId">The way of selling whose piece should go for less.</param>
    /// <param name="trimUnit">Trims are told in multiples of it.</param>
    public static PostingAnswer Of(PostingView view, string? channelId, Length trimUnit)
    {
        var source = view.Papers.Source;
        var job = source.BuildToTry(view.Papers.Offered.Where(id => Enumerable.Range(0, source.Edition.Parts.Count).Any(part => source.Prices(part, id))));
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
                part => job.Stocks.Where(stock => source.Prices(part, stock.Id)).Select(stock => stock.Id));
        return new PostingAnswer(job, [.. MailTable.Of(prepared.Value, view.Mailers, orders)], lower, []);
    }
}
