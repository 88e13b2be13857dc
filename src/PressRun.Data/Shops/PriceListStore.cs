using Microsoft.EntityFrameworkCore;
using PressRun.Data.Conversions;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Engine.Costing;
using PressRun.JobFile.Blocks;
using PressRun.JobFile.Writing;

namespace PressRun.Data.Shops;

/// <summary>The dated price lists of one press's shops.</summary>
public sealed class PriceListStore
{
    private readonly PressDatabase database;

    internal PriceListStore(PressDatabase database) => this.database = database;

    /// <summary>A price list by its id, or null.</summary>
    public Task<PriceListRecord?> LoadAsync(PressId press, Guid id, CancellationToken cancel = default) =>
        database.ReadAsync(press, db => RecordAsync(db, db.PriceLists.Where(list => list.Id == id), cancel), cancel);

    /// <summary>The list of a shop in force on a day, or null where none is yet.</summary>
    public Task<PriceListRecord?> InForceAsync(PressId press, string shopId, DateOnly on, CancellationToken cancel = default) =>
        database.ReadAsync(
            press,
            db => RecordAsync(
                db, db.PriceLists.Where(list => list.ShopId == shopId && list.ValidFrom <= on).OrderByDescending(list => list.ValidFrom), cancel),
            cancel);

    /// <summary>Plans that go by a list, in words.</summary>
    public Task<IReadOnlyList<string>> UsesAsync(PressId press, Guid id, CancellationToken cancel = default) =>
        database.ReadAsync(press, db => PriceListUses.OfListAsync(db, id, cancel), cancel);

    /// <summary>Adds a list (version 0) or saves a changed one. A plan that goes by it is costed by what is saved.</summary>
    public async Task<SaveResult<PriceListRecord>> SaveAsync(PressId press, PriceListRecord list, CancellationToken cancel = default)
    {
        try
        {
            return await database.WriteAsync(press, db => SaveAsync(db, list, cancel), cancel);
        }
        catch (DbUpdateException exception) when (Collision.Is(exception))
        {
            return new SaveResult<PriceListRecord>.Refused([
                new Problem("$.validFrom", $"{list.Prices.ValidFrom:yyyy-MM-dd}", "The shop has a list from this day already.")]);
        }
    }

    /// <summary>Takes out a list; one that a plan goes by stays and tells where.</summary>
    public Task<DeleteResult> DeleteAsync(PressId press, Guid id, CancellationToken cancel = default) =>
        database.WriteAsync<DeleteResult>(
            press,
            async db =>
            {
                if (await PriceListUses.OfListAsync(db, id, cancel) is { Count: > 0 } uses)
                {
                    return new DeleteResult.InUse(uses);
                }

                return await db.PriceLists.Where(list => list.Id == id).ExecuteDeleteAsync(cancel) == 0 ? new DeleteResult.Gone() : new DeleteResult.Deleted();
            },
            cancel);

    private static async Task<PriceListRecord?> RecordAsync(PressRunDbContext db, IQueryable<PriceListRow> lists, CancellationToken cancel)
    {
        if (await lists.AsNoTracking().FirstOrDefaultAsync(cancel) is not { } row)
        {
            return null;
        }

        var name = await db.Shops.Where(shop => shop.Id == row.ShopId).Select(shop => shop.Name).SingleAsync(cancel);
        return new PriceListRecord(row.Id, row.ShopId, row.Body with { Name = name }, row.Version);
    }

    /// <summary>What is wrong with the names of what a list offers.</summary>
    internal static IEnumerable<Problem> NameProblems(Shop prices) =>
        LibraryRules.Names("finishing", prices.Finishing.Select(operation => operation.Name)).Concat(prices.Sheets.SelectMany(sheet => LibraryRules.Still($"$.sheets.{sheet.Id}", sheet.Id)));

    private static async Task<SaveResult<PriceListRecord>> SaveAsync(PressRunDbContext db, PriceListRecord list, CancellationToken cancel)
    {
        await db.Database.ExecuteSqlAsync(
            $"SELECT 1 FROM shops WHERE press_id = {db.Press.Value} AND id = {list.ShopId} FOR UPDATE", cancel);
        PriceListRow? row;
        if (list.Version == 0)
        {
            row = await db.Shops.AnyAsync(shop => shop.Id == list.ShopId, cancel) ? new PriceListRow { PressId = db.Press, Id = Guid.CreateVersion7(), ShopId = list.ShopId } : null;
            if (row is not null)
            {
                db.PriceLists.Add(row);
            }
        }
        else
        {
            row = await db.PriceLists.SingleOrDefaultAsync(other => other.Id == list.Id && other.ShopId == list.ShopId, cancel);
        }

        if (row is null)
        {
            return new SaveResult<PriceListRecord>.Gone();
        }

        if (row.Version != list.Version)
        {
            return new SaveResult<PriceListRecord>.Conflict((await RecordAsync(db, db.PriceLists.Where(other => other.Id == list.Id), cancel))!);
        }

        var problems = Contract.Problems(
            json => ShopWriter.WritePriceListMembers(json, list.Prices, Contract.NoCurrency),
            (element, path, found) => ShopBlock.ReadPriceList(element, path, list.Prices.Name, null, found));
        problems.AddRange(NameProblems(list.Prices));
        if (problems.Count > 0)
        {
            return new SaveResult<PriceListRecord>.Refused(problems);
        }

        if (list.Version != 0)
        {
            await PlanChoices.KeepFinishingAsync(
                db, row.Id, row.Body.Finishing.Select(operation => operation.Name), list.Prices.Finishing.Select(operation => operation.Name), cancel);
        }

        (row.ValidFrom, row.Body) = (list.Prices.ValidFrom, list.Prices);
        await db.SaveChangesAsync(cancel);
        return new SaveResult<PriceListRecord>.Saved((await RecordAsync(db, db.PriceLists.Where(other => other.Id == row.Id), cancel))!);
    }
}
