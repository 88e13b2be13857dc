using Microsoft.EntityFrameworkCore;
using PressRun.Data.Conversions;
using PressRun.Engine.Costing;
using PressRun.Engine.Postage;
using PressRun.JobFile.Blocks;
using PressRun.JobFile.Writing;

namespace PressRun.Data.Postage;

/// <summary>What one press posts its copies in.</summary>
public sealed class MailerStore : LibraryStore<Mailer>
{
    internal MailerStore(PressDatabase database)
        : base(database)
    {
    }

    private protected override IQueryable<ILibraryRow<Mailer>> Rows(PressRunDbContext db) => db.Mailers;

    private protected override ILibraryRow<Mailer> NewRow() => new MailerRow();

    private protected override LibraryKeys<Mailer> Keys { get; } = new(
        mailer => mailer.Id, mailer => mailer.Name, (mailer, id) => mailer with { Id = id });

    private protected override string NameOf(Mailer item) => item.Name;

    private protected override async Task<IReadOnlyList<string>> UsesAsync(PressRunDbContext db, Mailer item, CancellationToken cancel) =>
        await db.Channels.Where(channel => channel.MailerId == item.Id).OrderBy(channel => channel.Position)
            .Select(channel => channel.Name).ToListAsync(cancel);

    private protected override Task<List<Problem>> ProblemsAsync(PressRunDbContext db, Mailer item, CancellationToken cancel) => Task.FromResult(
        Contract.Problems(
            json => MailWriter.WriteMembers(json, item, Contract.NoCurrency),
            (element, path, problems) => MailBlock.ReadMailer(element, path, problems)));
}

/// <summary>The services that carriers offer one press, by their dated tables.</summary>
public sealed class PostageServiceStore : LibraryStore<PostageService>
{
    internal PostageServiceStore(PressDatabase database)
        : base(database)
    {
    }

    private protected override IQueryable<ILibraryRow<PostageService>> Rows(PressRunDbContext db) => db.PostageServices;

    private protected override ILibraryRow<PostageService> NewRow() => new PostageServiceRow();

    private protected override LibraryKeys<PostageService> Keys { get; } = new(
        service => service.Id, service => $"{service.Name} {service.Region}", (service, id) => service with { Id = id })
    {
        Table = service => $"{service.ValidFrom:yyyy-MM-dd}",
        Same = (left, right) => left.Steps.SequenceEqual(right.Steps) && left with { Steps = right.Steps } == right,
    };

    private protected override string NameOf(PostageService item) => item.Name;

    private protected override IQueryable<ILibraryRow<PostageService>> Same(IQueryable<ILibraryRow<PostageService>> rows, PostageService item) =>
        rows.Where(row => row.Id == item.Id && ((PostageServiceRow)row).ValidFrom == item.ValidFrom);

    // A service is found by its region and not named anywhere, so that nothing holds it.
    private protected override Task<IReadOnlyList<string>> UsesAsync(PressRunDbContext db, PostageService item, CancellationToken cancel) =>
        Task.FromResult<IReadOnlyList<string>>([]);

    /// <summary>What is wrong with the name of the region.</summary>
    internal static IEnumerable<Problem> RegionProblems(PostageService item) => LibraryRules.Still("$.region", item.Region);

    private protected override Task<List<Problem>> ProblemsAsync(PressRunDbContext db, PostageService item, CancellationToken cancel) => Task.FromResult<List<Problem>>(
        [.. RegionProblems(item), .. Contract.Problems(
            json => MailWriter.WriteMembers(json, item, Contract.NoCurrency),
            (element, path, problems) => MailBlock.ReadService(element, path, problems))]);
}
