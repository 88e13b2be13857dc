using Microsoft.EntityFrameworkCore;
using PressRun.Engine.Costing;
using PressRun.Engine.Postage;

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

    private protected override string IdOf(Mailer item) => item.Id;

    private protected override async Task<IReadOnlyList<string>> UsesAsync(PressRunDbContext db, Mailer item, CancellationToken cancel) =>
        await db.Channels.Where(channel => channel.MailerId == item.Id).OrderBy(channel => channel.Position)
            .Select(channel => channel.Name).ToListAsync(cancel);

    private protected override Task<List<Problem>> ProblemsAsync(PressRunDbContext db, Mailer item, CancellationToken cancel)
    {
        var problems = LibraryRules.Named(item.Name);
        problems.Positive("$.length", item.Length);
        problems.Positive("$.width", item.Width);
        problems.NotNegative("$.thickness", item.Thickness.Millimetres);
        problems.NotNegative("$.mass", item.Mass.Grams);
        problems.NotNegative("$.price", item.Price);
        return Task.FromResult(problems);
    }
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

    private protected override string IdOf(PostageService item) => item.Id;

    private protected override IQueryable<ILibraryRow<PostageService>> Same(IQueryable<ILibraryRow<PostageService>> rows, PostageService item) =>
        rows.Where(row => row.Id == item.Id && ((PostageServiceRow)row).ValidFrom == item.ValidFrom);

    // A service is found by its region and not named anywhere, so that nothing holds it.
    private protected override Task<IReadOnlyList<string>> UsesAsync(PressRunDbContext db, PostageService item, CancellationToken cancel) =>
        Task.FromResult<IReadOnlyList<string>>([]);

    private protected override Task<List<Problem>> ProblemsAsync(PressRunDbContext db, PostageService item, CancellationToken cancel)
    {
        var problems = LibraryRules.Named(item.Name);
        if (string.IsNullOrWhiteSpace(item.Region))
        {
            problems.Add(new Problem("$.region", item.Region, "A service goes to a region."));
        }

        if (item.Steps.Count == 0)
        {
            problems.Add(new Problem("$.steps", null, "A service has at least one price."));
        }

        for (var index = 0; index < item.Steps.Count; index++)
        {
            problems.NotNegative($"$.steps[{index}].price", item.Steps[index].Price);
            if (item.Steps[index].Most.Grams <= (index == 0 ? 0m : item.Steps[index - 1].Most.Grams))
            {
                problems.Add(new Problem($"$.steps[{index}].most", null, "Steps rise by mass."));
            }
        }

        return Task.FromResult(problems);
    }
}
