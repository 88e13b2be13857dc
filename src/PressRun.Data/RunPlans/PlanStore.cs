using Microsoft.EntityFrameworkCore;
using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Data.Shops;

namespace PressRun.Data.RunPlans;

/// <summary>Run plans of one press.</summary>
public sealed class PlanStore
{
    private readonly PressDatabase database;

    internal PlanStore(PressDatabase database) => this.database = database;

    /// <summary>A plan by its id, or null.</summary>
    public Task<PlanRecord?> LoadAsync(PressId press, Guid id, CancellationToken cancel = default) =>
        database.ReadAsync(press, db => LoadAsync(db, id, cancel), cancel);

    /// <summary>All plans of an edition in the order in which they were made.</summary>
    public async Task<IReadOnlyList<PlanRecord>> OfEditionAsync(PressId press, Guid editionId, CancellationToken cancel = default) =>
        (await database.ReadAsync(
            press,
            db => db.RunPlans.AsNoTracking().Whole().Where(plan => plan.EditionId == editionId)
                .OrderBy(plan => plan.Position).ThenBy(plan => plan.Id).ToListAsync(cancel),
            cancel)).ConvertAll(plan => plan.ToRecord());

    /// <summary>Adds a plan to its edition; the first one is chosen by itself.</summary>
    public async Task<SaveResult<PlanRecord>> AddAsync(PressId press, PlanRecord plan, CancellationToken cancel = default)
    {
        var added = await database.WriteAsync<SaveResult<PlanRecord>>(press, db => AddAsync(db, plan, cancel), cancel);
        await TellShelfAsync(press, plan.EditionId, added is SaveResult<PlanRecord>.Saved { Now: { Chosen: true, Reprint.Event: not null } }, cancel);
        return added;
    }

    /// <summary>Saves a plan, all but whether it is chosen.</summary>
    public async Task<SaveResult<PlanRecord>> SaveAsync(PressId press, PlanRecord plan, CancellationToken cancel = default)
    {
        var otherEvent = false;
        var result = await database.WriteAsync<SaveResult<PlanRecord>>(
            press,
            async db =>
            {
                await db.Database.ExecuteSqlAsync(
                    $"SELECT 1 FROM run_plans WHERE press_id = {press.Value} AND id = {plan.Id} FOR UPDATE", cancel);
                var row = await db.RunPlans.Whole().SingleOrDefaultAsync(candidate => candidate.Id == plan.Id, cancel);
                if (row is null)
                {
                    return new SaveResult<PlanRecord>.Gone();
                }

                if (row.Version != plan.Version)
                {
                    return new SaveResult<PlanRecord>.Conflict(row.ToRecord());
                }

                if (await PlanRules.CheckAsync(db, plan with { EditionId = row.EditionId }, cancel) is { Count: > 0 } problems)
                {
                    return new SaveResult<PlanRecord>.Refused(problems);
                }

                otherEvent = row.Chosen && row.Reprint?.Event != plan.Reprint?.Event;
                row.Take(plan);
                row.ChangedAt = database.Now;
                db.Entry(row).Property(changed => changed.ChangedAt).IsModified = true;
                await db.SaveChangesAsync(cancel);
                return new SaveResult<PlanRecord>.Saved((await LoadAsync(db, row.Id, cancel))!);
            },
            cancel);
        await TellShelfAsync(press, plan.EditionId, otherEvent && result is SaveResult<PlanRecord>.Saved, cancel);
        return result;
    }

    /// <summary>A copy of a plan under another name, not chosen, to try something beside it.</summary>
    public Task<SaveResult<PlanRecord>> DuplicateAsync(PressId press, Guid id, string name, CancellationToken cancel = default) =>
        database.WriteAsync<SaveResult<PlanRecord>>(
            press,
            async db => await LoadAsync(db, id, cancel) is { } plan
                ? await AddAsync(db, plan with { Name = name }, cancel)
                : new SaveResult<PlanRecord>.Gone(),
            cancel);

    /// <summary>Makes a plan the one that its edition goes by.</summary>
    public async Task<SaveResult<PlanRecord>> ChooseAsync(PressId press, Guid id, CancellationToken cancel = default)
    {
        var result = await database.WriteAsync<SaveResult<PlanRecord>>(
            press,
            async db =>
            {
                if (await LoadAsync(db, id, cancel) is not { } plan)
                {
                    return new SaveResult<PlanRecord>.Gone();
                }

                // The edition's lock puts choosers in a row: at no moment are two plans chosen, and none waits for another in a circle.
                await db.Database.ExecuteSqlAsync(
                    $"SELECT 1 FROM editions WHERE press_id = {press.Value} AND id = {plan.EditionId} FOR UPDATE", cancel);
                await db.RunPlans.Where(other => other.EditionId == plan.EditionId && other.Chosen && other.Id != id)
                    .ExecuteUpdateAsync(update => update.SetProperty(other => other.Chosen, false), cancel);
                await db.RunPlans.Where(row => row.Id == id).ExecuteUpdateAsync(update => update.SetProperty(row => row.Chosen, true), cancel);
                return await LoadAsync(db, id, cancel) is { } chosen ? new SaveResult<PlanRecord>.Saved(chosen) : new SaveResult<PlanRecord>.Gone();
            },
            cancel);
        if (result is SaveResult<PlanRecord>.Saved { Now: var chosen })
        {
            await TellShelfAsync(press, chosen.EditionId, true, cancel);
        }

        return result;
    }

    /// <summary>Takes out a plan; one that somebody else changed since stays.</summary>
    public async Task<DeleteResult> DeleteAsync(PressId press, PlanRecord plan, CancellationToken cancel = default)
    {
        var result = await database.WriteAsync<DeleteResult>(
            press,
            async db => await db.RunPlans.Where(row => row.Id == plan.Id && row.Version == plan.Version).ExecuteDeleteAsync(cancel) > 0 ? new DeleteResult.Deleted()
                : await db.RunPlans.AnyAsync(row => row.Id == plan.Id, cancel) ? new DeleteResult.Changed()
                : new DeleteResult.Gone(),
            cancel);
        await TellShelfAsync(press, plan.EditionId, result is DeleteResult.Deleted && plan is { Chosen: true, Reprint.Event: not null }, cancel);
        return result;
    }

    /// <summary>Puts a plan that was taken out back as it was, under its own id, where it stood.</summary>
    /// <param name="press">Whose plan.</param>
    /// <param name="plan">As it was before it was taken out.</param>
    /// <param name="after">The plan that stood before it; null where it was the first, or that one is gone too.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public Task<SaveResult<PlanRecord>> PutBackAsync(PressId press, PlanRecord plan, Guid? after, CancellationToken cancel = default) =>
        database.WriteAsync<SaveResult<PlanRecord>>(
            press,
            async db => await LoadAsync(db, plan.Id, cancel) is { } there
                ? new SaveResult<PlanRecord>.Conflict(there)
                : await AddAsync(
                    db,
                    plan,
                    plan.Id,
                    others => others.Where(other => other.Id == after).Select(other => (int?)other.Position + 1).FirstOrDefault() ?? others.Select(other => other.Position).DefaultIfEmpty(1).Min() - 1,
                    cancel),
            cancel);

    /// <summary>All that a plan's costing needs, or null where there is no such plan.</summary>
    public async Task<JobSource?> SourceAsync(PressId press, Guid id, CancellationToken cancel = default) =>
        (await SourcesAsync(press, [id], cancel)).GetValueOrDefault(id);

    /// <summary>All that the costing of several plans needs, by plan; ids that are not there are left out.</summary>
    public Task<IReadOnlyDictionary<Guid, JobSource>> SourcesAsync(PressId press, IReadOnlyCollection<Guid> ids, CancellationToken cancel = default) =>
        database.ReadMomentAsync(press, db => JobSourceQuery.LoadAsync(db, ids, cancel), cancel);

    /// <summary>All that the costing of the plans needs that go by a price list, in the order of their titles.</summary>
    /// <param name="press">Whose plans.</param>
    /// <param name="list">The price list.</param>
    /// <param name="most">So many at most.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public Task<IReadOnlyList<JobSource>> OfListAsync(PressId press, Guid list, int most, CancellationToken cancel = default) =>
        database.ReadMomentAsync<IReadOnlyList<JobSource>>(
            press,
            async db =>
            {
                var ids = await PriceListUses.InOrder(db.RunPlans.Where(plan => plan.PriceListId == list)).Select(plan => plan.Id).Take(most).ToListAsync(cancel);
                var sources = await JobSourceQuery.LoadAsync(db, ids, cancel);
                return [.. ids.Select(id => sources[id])];
            },
            cancel);

    // In a transaction of its own, after the plan's: ledgers lock a title's outlook before its printings, and plans the other way round. Where the server dies in between, the shelf tells
    // of the event from the next day on, when it reckons anew by itself.
    private Task<int> TellShelfAsync(PressId press, Guid editionId, bool otherEvent, CancellationToken cancel) =>
        otherEvent ? database.WriteAsync(press, db => OutlookStore.MarkAsync(db, editionId, cancel), cancel) : Task.FromResult(0);

    private static async Task<PlanRecord?> LoadAsync(PressRunDbContext db, Guid id, CancellationToken cancel) =>
        (await db.RunPlans.AsNoTracking().Whole().SingleOrDefaultAsync(row => row.Id == id, cancel))?.ToRecord();

    private Task<SaveResult<PlanRecord>> AddAsync(PressRunDbContext db, PlanRecord plan, CancellationToken cancel) =>
        AddAsync(db, plan, Guid.CreateVersion7(), others => others.Select(other => other.Position).DefaultIfEmpty(-1).Max() + 1, cancel);

    private async Task<SaveResult<PlanRecord>> AddAsync(
        PressRunDbContext db, PlanRecord plan, Guid id, Func<IReadOnlyList<(Guid Id, int Position)>, int> place, CancellationToken cancel)
    {
        await db.Database.ExecuteSqlAsync(
            $"SELECT 1 FROM editions WHERE press_id = {db.Press.Value} AND id = {plan.EditionId} FOR UPDATE", cancel);
        if (!await db.Editions.AnyAsync(edition => edition.Id == plan.EditionId, cancel))
        {
            return new SaveResult<PlanRecord>.Gone();
        }

        if (await PlanRules.CheckAsync(db, plan, cancel) is { Count: > 0 } problems)
        {
            return new SaveResult<PlanRecord>.Refused(problems);
        }

        var others = (await db.RunPlans.Where(other => other.EditionId == plan.EditionId).Select(other => new { other.Id, other.Position }).ToListAsync(cancel))
            .ConvertAll(other => (other.Id, other.Position));
        var row = new RunPlanRow
        {
            PressId = db.Press,
            Id = id,
            EditionId = plan.EditionId,
            Position = place(others),
            Chosen = others.Count == 0,
            ChangedAt = database.Now,
        };
        row.Take(plan);
        db.RunPlans.Add(row);
        await db.SaveChangesAsync(cancel);
        return new SaveResult<PlanRecord>.Saved((await LoadAsync(db, row.Id, cancel))!);
    }
}
