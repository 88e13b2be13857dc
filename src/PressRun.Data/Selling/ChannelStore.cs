using System.Globalization;
using Microsoft.EntityFrameworkCore;
using PressRun.Engine.Costing;
using PressRun.Engine.Selling;

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

    private protected override string IdOf(Channel item) => item.Id;

    // Nothing names a channel yet but the costing, which takes those that there are.
    private protected override Task<IReadOnlyList<string>> UsesAsync(PressRunDbContext db, Channel item, CancellationToken cancel) =>
        Task.FromResult<IReadOnlyList<string>>([]);

    private protected override async Task<List<Problem>> ProblemsAsync(PressRunDbContext db, Channel item, CancellationToken cancel)
    {
        var problems = LibraryRules.Named(item.Name);
        problems.Fraction("$.taxRate", item.TaxRate);
        problems.Fraction("$.tradeDiscount", item.TradeDiscount);
        problems.Fraction("$.feeRate", item.FeeRate);
        problems.NotNegative("$.feeFixed", item.FeeFixed);
        problems.NotNegative("$.postageCharged", item.PostageCharged);
        problems.NotNegative("$.mix", item.Mix);
        if (item.CopiesPerOrder < 1)
        {
            problems.Add(new Problem("$.copiesPerOrder", item.CopiesPerOrder.ToString(CultureInfo.InvariantCulture), "An order is 1 copy or more."));
        }

        if (item.MailerId is { } mailer && !await db.Mailers.AnyAsync(row => row.Id == mailer, cancel))
        {
            problems.Add(new Problem("$.mailer", mailer, "Choose one of the press's mailers."));
        }

        return problems;
    }
}
