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

    // Nothing names a channel yet but the costing, which takes those that there are.
    private protected override Task<IReadOnlyList<string>> UsesAsync(PressRunDbContext db, Channel item, CancellationToken cancel) =>
        Task.FromResult<IReadOnlyList<string>>([]);

    private protected override async Task<List<Problem>> ProblemsAsync(PressRunDbContext db, Channel item, CancellationToken cancel)
    {
        var mailers = await db.Mailers.Select(mailer => mailer.Id).ToHashSetAsync(cancel);
        return Contract.Problems(
            json => ChannelWriter.WriteMembers(json, item, Contract.NoCurrency),
            (element, path, problems) => ChannelBlock.Read(element, path, mailers, problems));
    }
}
