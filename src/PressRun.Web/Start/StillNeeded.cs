using PressRun.Data.RunPlans;
using PressRun.Engine.Costing;
using PressRun.Engine.Paper;

namespace PressRun.Web.Start;

/// <summary>What a press lacks before its papers can be compared by what a copy costs in the reader's hands.</summary>
/// <param name="Papers">True without a paper of one's own.</param>
/// <param name="Prices">True where no shop prices a paper of one's own.</param>
/// <param name="Mailer">True without a mailer.</param>
/// <param name="Postage">True without a carrier's table.</param>
/// <param name="ShopId">The shop whose prices are looked for; null where there is none.</param>
public sealed record StillNeeded(bool Papers, bool Prices, bool Mailer, bool Postage, string? ShopId)
{
    /// <summary>True where anything is lacking.</summary>
    public bool Any => Papers || Prices || Mailer || Postage;

    /// <summary>Papers that still are the examples of a first book; once nothing is needed any more, whatever is planned on them waits to be compared.</summary>
    public IReadOnlyList<string> Examples { get; private init; } = [];

    /// <summary>Looks at a press's libraries.</summary>
    /// <param name="stocks">Papers that are offered.</param>
    /// <param name="lists">Price lists with the shops they are of, the one to be completed first.</param>
    /// <param name="mailer">Whether there is a mailer.</param>
    /// <param name="postage">Whether there is a carrier's table.</param>
    public static StillNeeded Of(IEnumerable<Stock> stocks, IReadOnlyList<(string ShopId, Shop Prices)> lists, bool mailer, bool postage)
    {
        var byKind = stocks.ToLookup(FirstNumber.IsExample, stock => stock.Id);
        var own = byKind[false].ToHashSet(StringComparer.Ordinal);
        return new StillNeeded(own.Count == 0, !lists.Any(list => PricesOne(list.Prices, own)), !mailer, !postage, lists.Count > 0 ? lists[0].ShopId : null)
        {
            Examples = [.. byKind[true]],
        };
    }

    /// <summary>Looks at what a plan is costed by.</summary>
    /// <param name="source">The plan.</param>
    /// <param name="offered">Ids of the papers that the press offers.</param>
    /// <param name="mailer">Whether there is a mailer.</param>
    public static StillNeeded Of(JobSource source, IReadOnlyList<string> offered, bool mailer) =>
        Of(source.Stocks.Where(stock => offered.Contains(stock.Id)), [(source.Plan.ShopId, source.PriceList)], mailer, source.Postage.Count > 0);

    // A shop that prices whole books whatever they are printed on has a price for every paper.
    private static bool PricesOne(Shop list, HashSet<string> own) =>
        list.Paper.Any(price => own.Contains(price.StockId)) || list.BookPrices.Any(price => price.StockIds?.Any(own.Contains) ?? own.Count > 0);
}
