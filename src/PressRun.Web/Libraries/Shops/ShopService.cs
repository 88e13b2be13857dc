using PressRun.Data.Running;
using PressRun.Data;
using PressRun.Data.Import.PriceLists;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Presses;
using PressRun.Data.Shops;
using PressRun.Data.Stocks;
using PressRun.Engine.Costing;
using PressRun.Engine.Paper;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Libraries.Shops;

/// <summary>A shop with one of its lists open.</summary>
/// <param name="Shop">The shop.</param>
/// <param name="Editor">The list that is open; null where the shop has none.</param>
/// <param name="Before">The list before it; null for the first.</param>
/// <param name="Stocks">The press's papers, archived ones too.</param>
/// <param name="Uses">Plans that go by the open list, in words.</param>
public sealed record ShopView(ShopRecord Shop, PriceListEditor? Editor, PriceListRecord? Before, IReadOnlyList<Stock> Stocks, IReadOnlyList<string> Uses)
{
    /// <summary>What its prices are called.</summary>
    public PriceWords PriceWords { get; } = new(id => Stocks.FirstOrDefault(stock => stock.Id == id)?.Name ?? id);
}

/// <summary>Print shops and their dated price lists.</summary>
public sealed class ShopService(ShopStore shops, PriceListStore lists, StockStore stocks, TimeProvider time)
{
    /// <summary>Today where the server stands.</summary>
    public DateOnly Today => time.Today();

    /// <summary>The shops.</summary>
    public Task<IReadOnlyList<ShopRecord>> ListAsync(PressId press, bool archived) => shops.ListAsync(press, archived);

    /// <summary>A shop by its id with a list open: the one asked for, else the one in force, else the latest.</summary>
    public async Task<ShopView?> OpenAsync(PressView press, string shopId, Guid? listId)
    {
        var id = press.Record.Id;
        if ((await shops.ListAsync(id, archived: true)).FirstOrDefault(candidate => candidate.Id == shopId) is not { } shop)
        {
            return null;
        }

        var papers = (await stocks.ListAsync(id, archived: true)).Select(stock => stock.Item).ToList();
        var head = shop.PriceLists.FirstOrDefault(list => list.Id == listId) ?? InForce(shop) ?? (shop.PriceLists.Count > 0 ? shop.PriceLists[0] : null);
        if (head is null || await lists.LoadAsync(id, head.Id) is not { } record)
        {
            return new ShopView(shop, null, null, papers, []);
        }

        var before = shop.PriceLists.FirstOrDefault(list => list.ValidFrom < head.ValidFrom) is { } older ? await lists.LoadAsync(id, older.Id) : null;
        return new ShopView(
            shop, new PriceListEditor(lists, id, papers, LibraryManners.Of(press), record), before, papers, await lists.UsesAsync(id, head.Id));
    }

    /// <summary>The head of the list in force today; null where none is yet.</summary>
    public PriceListHead? InForce(ShopRecord shop) => shop.PriceLists.FirstOrDefault(list => list.ValidFrom <= Today);

    /// <summary>Adds a shop by its name.</summary>
    public async Task<(ShopRecord? Shop, string? Problem)> AddAsync(PressId press, string name) => Answer(await shops.SaveAsync(press, new ShopRecord("", name, false, [], 0)));

    /// <summary>Saves a shop's name, or whether it is archived.</summary>
    public async Task<(ShopRecord? Shop, string? Problem)> SaveAsync(PressId press, ShopRecord shop) => Answer(await shops.SaveAsync(press, shop));

    /// <summary>Takes out a shop with its lists, unless a plan goes by one.</summary>
    public Task<DeleteResult> DeleteAsync(PressId press, string shopId) => shops.DeleteAsync(press, shopId);

    /// <summary>Takes out a list. Answers null when that is done, or why it stays.</summary>
    public async Task<string?> DeleteListAsync(PressId press, Guid list) => await lists.DeleteAsync(press, list) is DeleteResult.InUse use
        ? Say($"This list stays, because plans go by it: {UseWords.Of(use.Where)}. Re-price them first, or leave the list: a newer one is used for new runs.")
        : null;

    /// <summary>Adds a list from a day on: empty, or another one's prices with some of them changed by a percentage.</summary>
    /// <param name="press">Whose shop.</param>
    /// <param name="view">The shop, with the list that is copied open.</param>
    /// <param name="validFrom">First day.</param>
    /// <param name="percent">5 for five per cent dearer.</param>
    /// <param name="chosen">Which prices change.</param>
    public async Task<(Guid? List, string? Problem)> AddListAsync(PressId press, ShopView view, DateOnly validFrom, decimal percent, Func<PriceLine, bool> chosen)
    {
        var prices = view.Editor is { } editor
            ? PriceLines.Raised(editor.Record.Prices, percent, chosen, view.PriceWords) with { ValidFrom = validFrom }
            : PriceListTable.Empty(view.Shop.Name, validFrom);
        return await AddListAsync(press, view.Shop.Id, prices);
    }

    /// <summary>Adds a list of a shop.</summary>
    /// <param name="press">Whose shop.</param>
    /// <param name="shop">The shop.</param>
    /// <param name="prices">The list with its first day.</param>
    public async Task<(Guid? List, string? Problem)> AddListAsync(PressId press, string shop, Shop prices) =>
        await lists.SaveAsync(press, new PriceListRecord(Guid.Empty, shop, prices, 0)) switch
        {
            SaveResult<PriceListRecord>.Saved saved => (saved.Now.Id, null),
            SaveResult<PriceListRecord>.Refused refused => (null, string.Join(" ", refused.Problems.Select(ListSections.Told).Distinct())),
            _ => (null, Say($"The shop has been taken out in between.")),
        };

    private static (ShopRecord? Shop, string? Problem) Answer(SaveResult<ShopRecord> result) => result switch
    {
        SaveResult<ShopRecord>.Saved saved => (saved.Now, null),
        SaveResult<ShopRecord>.Refused refused => (null, Words.Standing(refused.Problems)),
        SaveResult<ShopRecord>.Conflict => (null, Say($"Somebody else changed this shop in between. Fetch the page again.")),
        _ => (null, Say($"This shop has been taken out in between.")),
    };
}
