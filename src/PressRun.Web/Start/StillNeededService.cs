using Microsoft.Extensions.Caching.Memory;
using PressRun.Data.Postage;
using PressRun.Data.Presses;
using PressRun.Data.Shops;
using PressRun.Data.Stocks;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;

namespace PressRun.Web.Start;

/// <summary>Looks what a press lacks, and remembers it for as long as its libraries stand as they are.</summary>
public sealed class StillNeededService(ShelfQuery shelf, StockStore stocks, ShopStore shops, PriceListStore lists, MailerStore mailers, PostageServiceStore services) : IDisposable
{
    private const int Most = 1_000;

    private readonly MemoryCache known = new(new MemoryCacheOptions { SizeLimit = Most });

    /// <summary>What a press lacks now.</summary>
    public async Task<StillNeeded> OfAsync(PressId press, CancellationToken cancel = default) =>
        await OfAsync(press, (await shelf.MarksAsync(press, DateOnly.MinValue, cancel)).Libraries, cancel);

    /// <summary>What a press lacks.</summary>
    /// <param name="press">The press.</param>
    /// <param name="mark">Of its libraries, read before this.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public async Task<StillNeeded> OfAsync(PressId press, string mark, CancellationToken cancel) =>
        known.Get<StillNeeded>((press, mark)) ?? known.Set((press, mark), await LookAsync(press, cancel), new MemoryCacheEntryOptions { Size = 1 });

    /// <inheritdoc/>
    public void Dispose() => known.Dispose();

    private async Task<StillNeeded> LookAsync(PressId press, CancellationToken cancel)
    {
        // The mark knows nothing of shops, so an archived one counts like another; what a shop charges now stands in its latest list.
        var latest = new List<(string ShopId, Shop Prices)>();
        foreach (var shop in await shops.ListAsync(press, archived: true, cancel))
        {
            if (shop.PriceLists is [var head, ..] && await lists.LoadAsync(press, head.Id, cancel) is { } list)
            {
                latest.Add((shop.Id, list.Prices));
            }
        }

        return StillNeeded.Of(
            (await stocks.ListAsync(press, cancel: cancel)).Select(item => item.Item),
            latest,
            (await mailers.ListAsync(press, cancel: cancel)).Count > 0,
            (await services.ListAsync(press, cancel: cancel)).Count > 0);
    }
}
