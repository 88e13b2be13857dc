using Microsoft.EntityFrameworkCore;
using PressRun.Data.Conversions;
using PressRun.Engine.Costing;
using PressRun.Engine.Selling;
using PressRun.JobFile.Blocks;
using PressRun.JobFile.Writing;

namespace PressRun.Data.Selling;

/// <summary>How one press sells. A channel here has price 0: each edition brings its own.</summary>
public sealed class ChannelStore : LibraryStore<Channel>
{
    internal ChannelStore(PressDatabase database)
        : base(database)
    {
    }

    private protected override IQueryable<ILibraryRow<Channel>> Rows(PressRunDbContext db) => db.Channels;

    private protected override ILibraryRow<Channel> NewRow() => new ChannelRow();

    private protected override LibraryKeys<Channel> Keys { get; } = new(
        channel => channel.Id, channel => channel.Name, (channel, id) => channel with { Id = id });

    private protected override string NameOf(Channel item) => item.Name;

    // The costing takes the channels that there are; the copies ledger names them for good.
    private protected override async Task<IReadOnlyList<string>> UsesAsync(PressRunDbContext db, Channel item, CancellationToken cancel)
    {
        var sold = await db.CopyMovements.Where(row => row.ChannelId == item.Id)
            .Join(db.Editions, row => row.EditionId, edition => edition.Id, (_, edition) => new { edition.Title.SearchText, edition.Title.Title, edition.Printing })
            .Distinct().OrderBy(edition => edition.SearchText).ThenBy(edition => edition.Printing).ToListAsync(cancel);
        return sold.ConvertAll(edition => $"{edition.Title}, printing {edition.Printing}: sales");
    }

    /// <summary>What is wrong with the name of the region that is posted to.</summary>
    internal static IEnumerable<Problem> RegionProblems(Channel item) => LibraryRules.Still("$.postageRegion", item.PostageRegion ?? "");

    private protected override async Task<List<Problem>> ProblemsAsync(PressRunDbContext db, Channel item, CancellationToken cancel)
    {
        var mailers = await db.Mailers.Select(mailer => mailer.Id).ToHashSetAsync(cancel);
        return [.. RegionProblems(item), .. Contract.Problems(
            json => ChannelWriter.WriteMembers(json, item, Contract.NoCurrency),
            (element, path, problems) => ChannelBlock.Read(element, path, mailers, problems))];
    }
}
