using PressRun.Data.Running;
using PressRun.Data;
using PressRun.Data.Copies;
using PressRun.Data.Fixes;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Stocks;
using PressRun.Data.Titles;
using PressRun.Engine.Copies;
using PressRun.Engine.Editions;
using PressRun.Engine.Paper;
using PressRun.Web.Reprint;
using PressRun.Web.Shared;

namespace PressRun.Web.Editions;

/// <summary>An edition with what its page needs.</summary>
/// <param name="Title">The title.</param>
/// <param name="Edition">The edition as stored.</param>
/// <param name="Printings">All printings of the title, first printing first.</param>
/// <param name="Source">The plan it goes by with all that its costing needs; null where it has none.</param>
/// <param name="Stocks">Papers that can be chosen.</param>
/// <param name="Ledger">What the ledgers of all printings say today.</param>
/// <param name="Fixes">What was noticed in any printing, to be mended at a later one.</param>
public sealed record EditionView(
    TitleRecord Title, EditionRecord Edition, IReadOnlyList<EditionRecord> Printings, JobSource? Source, IReadOnlyList<Stock> Stocks, TitleLedger Ledger, IReadOnlyList<FixNote> Fixes)
{
    /// <summary>What a copy cost by the printing's own ledger, not rounded; null where that is not written down.</summary>
    public decimal? PaidForEach { get; init; }

    /// <summary>Works out the edition as it would be.</summary>
    public EditionConsequences? WorkOut(EditionRecord edition) =>
        Source is null ? null : EditionConsequences.Of(Source, edition, Title.Colour);
}

/// <summary>What became of an edit.</summary>
/// <param name="Now">What is stored now; null where nothing was saved.</param>
/// <param name="Problem">What stands in the way, as a sentence; null where it is saved or somebody else was first.</param>
/// <param name="Theirs">What somebody else saved in between; null where nobody did.</param>
public sealed record EditionSave(EditionRecord? Now, string? Problem, EditionRecord? Theirs);

/// <summary>Loads, saves and copies editions for their page.</summary>
public sealed class EditionService(TitleStore titles, EditionStore editions, PlanStore plans, StockStore stocks, OutlookStore outlooks, FixNoteStore fixes, CopiesLedgerStore ledger, TimeProvider time)
{
    /// <summary>An edition by its address, or null.</summary>
    public async Task<EditionView?> LoadAsync(PressId press, string slug, int printing)
    {
        if (await titles.FindAsync(press, slug) is not { } title || await editions.FindAsync(press, slug, printing) is not { } edition)
        {
            return null;
        }

        var all = await plans.OfEditionAsync(press, edition.Id);
        var printed = await ledger.PrintedAsync(press, edition.Id);
        var plan = all.FirstOrDefault(candidate => candidate.Chosen) ?? (all.Count > 0 ? all[0] : null);
        return new EditionView(
            title,
            edition,
            await editions.OfTitleAsync(press, title.Id),
            plan is null ? null : await plans.SourceAsync(press, plan.Id),
            await StocksAsync(press),
            await LedgerAsync(press, title.Id),
            await fixes.OfTitleAsync(press, title.Id))
        {
            PaidForEach = CopiesAccount.PaidForEach(printed.Copies, printed.Cost),
        };
    }

    private async Task<TitleLedger> LedgerAsync(PressId press, Guid title)
    {
        var today = time.Today();
        return TitleLedger.Of([.. (await outlooks.ByDayAsync(press, [title], today.AddMonths(-TitleLedger.MonthsBack)))[title]], today);
    }

    /// <summary>Saves an edition.</summary>
    public async Task<EditionSave> SaveAsync(PressId press, EditionRecord edition) => await editions.SaveAsync(press, edition) switch
    {
        SaveResult<EditionRecord>.Saved saved => new EditionSave(saved.Now, null, null),
        SaveResult<EditionRecord>.Conflict conflict => new EditionSave(null, null, conflict.Theirs),
        SaveResult<EditionRecord>.Refused refused => new EditionSave(null, Words.Standing(refused.Problems), null),
        _ => new EditionSave(null, Say($"This printing has been taken out in between."), null),
    };

    /// <summary>The next printing from this one; its number, or null where this one is gone.</summary>
    public async Task<int?> CopyForwardAsync(PressId press, Guid edition) =>
        await editions.CopyForwardAsync(press, edition) is SaveResult<EditionRecord>.Saved saved ? saved.Now.Printing : null;

    /// <summary>Takes a printing out that is only planned, with its plans; a sentence where it is more than that by now.</summary>
    /// <param name="press">Whose printing.</param>
    /// <param name="known">As it was last seen.</param>
    public async Task<string?> TakeOutAsync(PressId press, EditionRecord known)
    {
        if (await editions.LoadAsync(press, known.Id) is not { } stored)
        {
            return null;
        }

        if (!IsOnlyPlanned(stored))
        {
            return Say($"Copies of this printing were made, so it stays.");
        }

        return await editions.DeleteAsync(press, known) is DeleteResult.Changed or DeleteResult.InUse
            ? Say($"Somebody else changed this printing in between, so it stays. Look at it again first.")
            : null;
    }

    // No copy of it was made.
    private static bool IsOnlyPlanned(EditionRecord edition) => edition is { CopiesPrinted: null, CopiesOnHand: 0 };

    /// <summary>Papers that can be chosen.</summary>
    public async Task<IReadOnlyList<Stock>> StocksAsync(PressId press) => [.. (await stocks.ListAsync(press)).Select(item => item.Item)];

    /// <summary>The latest printing of the title that was put on the shelf last; null where there is none.</summary>
    public Task<EditionRecord?> LatestAsync(PressId press) => editions.LatestAsync(press);

    /// <summary>A new title with its first printing; where that is, or what stands in the way.</summary>
    public async Task<(string? Address, string? Problem)> AddAsync(PressId press, NewTitle title, Size page, Binding binding, IReadOnlyList<Part> parts)
    {
        var edition = new EditionRecord(
            Guid.Empty, Guid.Empty, title.Title, 1, null, null, 0, 0m, 0, page, binding, false, default, FoldShape.Flat, null,
            [.. parts.Select(part => new EditionPart(Guid.Empty, part))], [], false, false, 0);
        return await titles.AddWithEditionAsync(press, title, edition) switch
        {
            SaveResult<TitleRecord>.Saved saved => ($"titles/{saved.Now.Slug}/1", null),
            SaveResult<TitleRecord>.Refused refused => (null, Words.Standing(refused.Problems)),
            _ => (null, Say($"The title could not be stored.")),
        };
    }
}
