using Microsoft.EntityFrameworkCore;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;

namespace PressRun.Data.Shops;

/// <summary>The print shops of one press.</summary>
public sealed class ShopStore
{
    private readonly PressDatabase database;

    internal ShopStore(PressDatabase database) => this.database = database;

    /// <summary>The shops in the library's order.</summary>
    /// <param name="press">Whose library.</param>
    /// <param name="archived">True lists archived shops too.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public async Task<IReadOnlyList<ShopRecord>> ListAsync(PressId press, bool archived = false, CancellationToken cancel = default) =>
        await database.ReadAsync<IReadOnlyList<ShopRecord>>(
            press,
            async db =>
            {
                var shops = await db.Shops.AsNoTracking().Where(shop => archived || !shop.Archived)
                    .OrderBy(shop => shop.Position).ThenBy(shop => shop.Id).ToListAsync(cancel);
                var heads = (await db.PriceLists.OrderByDescending(list => list.ValidFrom)
                    .Select(list => new { list.ShopId, list.Id, list.ValidFrom }).ToListAsync(cancel)).ToLookup(list => list.ShopId);
                return shops.ConvertAll(shop => Record(shop, [.. heads[shop.Id].Select(list => new PriceListHead(list.Id, list.ValidFrom))]));
            },
            cancel);

    /// <summary>Adds a shop (version 0) or saves its name and whether it is archived.</summary>
    public Task<SaveResult<ShopRecord>> SaveAsync(PressId press, ShopRecord shop, CancellationToken cancel = default) =>
        database.WriteAsync<SaveResult<ShopRecord>>(
            press,
            async db =>
            {
                if (LibraryRules.Named(shop.Name) is { Count: > 0 } problems)
                {
                    return new SaveResult<ShopRecord>.Refused(problems);
                }

                await db.Database.ExecuteSqlAsync($"SELECT 1 FROM presses WHERE id = {press.Value} FOR UPDATE", cancel);
                var row = shop.Version == 0 ? await NewAsync(db, shop.Name, cancel) : await db.Shops.SingleOrDefaultAsync(other => other.Id == shop.Id, cancel);
                if (row is null)
                {
                    return new SaveResult<ShopRecord>.Gone();
                }

                if (row.Version != shop.Version)
                {
                    return new SaveResult<ShopRecord>.Conflict(Record(row, shop.PriceLists));
                }

                if (shop.Version != 0 && row.Name != shop.Name.Trim())
                {
                    await PlanNames.FollowAsync(db, row, shop.Name.Trim(), cancel);
                }

                (row.Name, row.Archived) = (shop.Name.Trim(), shop.Archived);
                await db.SaveChangesAsync(cancel);
                return new SaveResult<ShopRecord>.Saved(Record(row, shop.PriceLists));
            },
            cancel);

    /// <summary>Takes out a shop with its price lists; one that a plan goes by stays and tells where.</summary>
    public Task<DeleteResult> DeleteAsync(PressId press, string shopId, CancellationToken cancel = default) =>
        database.WriteAsync<DeleteResult>(
            press,
            async db =>
            {
                if (await PriceListUses.OfShopAsync(db, shopId, cancel) is { Count: > 0 } uses)
                {
                    return new DeleteResult.InUse(uses);
                }

                return await db.Shops.Where(shop => shop.Id == shopId).ExecuteDeleteAsync(cancel) == 0 ? new DeleteResult.Gone() : new DeleteResult.Deleted();
            },
            cancel);

    private static ShopRecord Record(ShopRow row, IReadOnlyList<PriceListHead> lists) => new(row.Id, row.Name, row.Archived, lists, row.Version);

    private static async Task<ShopRow> NewAsync(PressRunDbContext db, string name, CancellationToken cancel)
    {
        var taken = await db.Shops.Select(shop => shop.Id).ToListAsync(cancel);
        var position = await db.Shops.MaxAsync(shop => (int?)shop.Position, cancel) ?? -1;
        var row = new ShopRow { PressId = db.Press, Id = SearchText.FreeSlug(name, taken), Position = position + 1 };
        db.Shops.Add(row);
        return row;
    }
}
