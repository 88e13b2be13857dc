using PressRun.Data;
using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Data.Selling;
using PressRun.Engine.Copies;
using PressRun.Engine.Selling;
using PressRun.Web.Shared;

namespace PressRun.Web.Fair;

/// <summary>What lies on the table of a fair.</summary>
/// <param name="Books">Those with copies on hand first.</param>
/// <param name="Channels">Ways of selling that are offered.</param>
/// <param name="At">When this was read, in milliseconds since 1970.</param>
public sealed record FairTable(IReadOnlyList<CopiesForSale> Books, IReadOnlyList<Channel> Channels, long At);

/// <summary>Lays the table of a fair, and writes into the ledger what was sold at it.</summary>
public sealed class FairService(CopiesLedgerStore ledger, ChannelStore channels, TimeProvider time)
{
    /// <summary>Most printings on the table.</summary>
    public const int MostBooks = 300;

    /// <summary>Reads what can be sold.</summary>
    public async Task<FairTable> LayAsync(PressId press)
    {
        var at = Now;
        return new FairTable(await ledger.ForSaleAsync(press, MostBooks), [.. (await channels.ListAsync(press)).Select(channel => channel.Item)], at);
    }

    /// <summary>Writes entries, each by itself: one that the ledger does not take keeps none of the others out. Sent again they are answered and not
    /// written again.</summary>
    public async Task<FairAnswer> TakeAsync(PressId press, FairEntries sent, CancellationToken cancel)
    {
        var (entries, came) = (sent.Entries, time.GetUtcNow());
        var outcomes = new List<FairOutcome>(entries.Count);
        foreach (var entry in entries)
        {
            outcomes.Add(new FairOutcome(entry.Id, await TakeAsync(press, entry with { Day = sent.DayOf(entry, came) }, cancel)));
        }

        var at = Now;
        var onHand = new List<FairOnHand>();
        foreach (var edition in entries.Select(entry => entry.Edition).Distinct())
        {
            if (await ledger.OnHandAsync(press, edition, cancel) is { } copies)
            {
                onHand.Add(new FairOnHand(edition, copies.OnHand));
            }
        }

        return new FairAnswer(outcomes, onHand, at);
    }

    private long Now => time.GetUtcNow().ToUnixTimeMilliseconds();

    // What was taken back is written all the same: a message that got lost on its way might bring the sale itself later.
    private async Task<string?> TakeAsync(PressId press, FairEntry entry, CancellationToken cancel)
    {
        var written = await ledger.WriteAsync(
            press, new NewMovement(entry.Id, entry.Edition, entry.Day, MovementKind.Sold, 1, entry.Amount, entry.Channel, entry.Fair ?? ""), cancel);
        return Problem(written) ?? (entry.TakenBack ? Problem(await ledger.TakeBackAsync(press, entry.Id, cancel)) : null);
    }

    private static string? Problem(SaveResult<MovementRecord> result) => result switch
    {
        SaveResult<MovementRecord>.Saved => null,
        SaveResult<MovementRecord>.Refused refused => Words.Standing(refused.Problems),
        _ => Say($"This printing has been taken out in between. Write the sale down with another one."),
    };
}
