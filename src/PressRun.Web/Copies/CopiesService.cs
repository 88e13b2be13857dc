using PressRun.Data.Running;
using PressRun.Data;
using PressRun.Data.Bench;
using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Selling;
using PressRun.Data.Tallies;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;

namespace PressRun.Web.Copies;

/// <summary>What became of something written into the ledger.</summary>
/// <param name="Line">The line; null where nothing was written.</param>
/// <param name="Problems">What would be right, by path into the line; empty where it is written.</param>
public sealed record LedgerSave(MovementRecord? Line, IReadOnlyList<Problem> Problems);

/// <summary>Reads and writes the copies ledger of a printing for its page.</summary>
public sealed class CopiesService(
    TitleStore titles, EditionStore editions, CopiesLedgerStore ledger, ChannelStore channels, PlanStore plans, BenchStore benches, TallyStore tallies, TimeProvider time)
{
    /// <summary>Today where the server stands.</summary>
    public DateOnly Today => time.Today();

    /// <summary>The ledger of a printing by its address, or null.</summary>
    /// <param name="press">Whose.</param>
    /// <param name="slug">The title in the address.</param>
    /// <param name="printing">The printing in the address.</param>
    /// <param name="tally">A tally of it to write into the ledger; null for none.</param>
    public async Task<CopiesView?> LoadAsync(PressId press, string slug, int printing, Guid? tally = null)
    {
        if (await titles.FindAsync(press, slug) is not { } title || await editions.FindAsync(press, slug, printing) is not { } edition)
        {
            return null;
        }

        var all = await plans.OfEditionAsync(press, edition.Id);
        var plan = all.FirstOrDefault(candidate => candidate.Chosen) ?? (all.Count > 0 ? all[0] : null);
        return new CopiesView(
            title,
            edition,
            await ledger.OfEditionAsync(press, edition.Id),
            await channels.ListAsync(press, archived: true),
            plan is not null && await plans.SourceAsync(press, plan.Id) is { } source ? PrintingPlan.Of(source) : null,
            (await benches.LoadAsync(press))?.Item ?? BenchRates.None,
            Today,
            await TallyAsync(press, edition.Id, tally));
    }

    /// <summary>The view with the edition and its lines as they are stored now; null where the printing has been taken out.</summary>
    public async Task<CopiesView?> AgainAsync(PressId press, CopiesView view, Guid? tally = null) =>
        await editions.LoadAsync(press, view.Edition.Id) is { } edition
            ? view.Again(edition, await ledger.OfEditionAsync(press, edition.Id), Today, await TallyAsync(press, edition.Id, tally))
            : null;

    /// <summary>Writes a line. Sent again with its id it is answered and not written again.</summary>
    public async Task<LedgerSave> WriteAsync(PressId press, NewMovement movement) => Told(await ledger.WriteAsync(press, movement));

    /// <summary>Takes a line back.</summary>
    public async Task<LedgerSave> TakeBackAsync(PressId press, Guid line) => Told(await ledger.TakeBackAsync(press, line));

    // One that stands in the ledger is not written into it again.
    private async Task<TallyWhole?> TallyAsync(PressId press, Guid edition, Guid? tally) =>
        tally is { } id && await tallies.FindAsync(press, id) is { Tally.Written: null } whole && whole.Tally.EditionId == edition ? whole : null;

    private static LedgerSave Told(SaveResult<MovementRecord> result) => result switch
    {
        SaveResult<MovementRecord>.Saved saved => new LedgerSave(saved.Now, []),
        SaveResult<MovementRecord>.Refused refused => new LedgerSave(null, refused.Problems),
        _ => new LedgerSave(null, [new Problem("$", null, Say($"This has been taken out in between."))]),
    };
}
