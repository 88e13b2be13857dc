using PressRun.Data.Presses;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;

namespace PressRun.Data.RunPlans;

/// <summary>All that the costing of a plan needs, read at one moment. To try a change that is not saved, take the source with another
/// edition, plan or price list and build again.</summary>
/// <param name="Press">The press.</param>
/// <param name="Edition">What is made.</param>
/// <param name="Plan">How.</param>
/// <param name="PriceList">The price list that the plan keeps, with every finishing operation it has.</param>
/// <param name="Stocks">All stocks of the press, archived ones too, in the library's order.</param>
/// <param name="Bench">The press's table with every step.</param>
/// <param name="Mailers">All mailers.</param>
/// <param name="Postage">All services that are offered, by their dated tables.</param>
/// <param name="Channels">All channels that are offered; their price is the edition's.</param>
public sealed record JobSource(
    PressRecord Press,
    EditionRecord Edition,
    PlanRecord Plan,
    Shop PriceList,
    IReadOnlyList<Stock> Stocks,
    BenchRates Bench,
    IReadOnlyList<Mailer> Mailers,
    IReadOnlyList<PostageService> Postage,
    IReadOnlyList<Channel> Channels)
{
    /// <summary>Whether the plan's price list names a price for a paper on a part: of its sheets, or of whole books with it in that place.</summary>
    /// <param name="part">Place of the part, from 0.</param>
    /// <param name="stockId">The paper.</param>
    public bool Prices(int part, string stockId) =>
        PriceList.Paper.Any(price => price.StockId == stockId)
        || PriceList.BookPrices.Any(price => price.StockIds is null || price.StockIds.ElementAtOrDefault(part) == stockId);

    /// <summary>The stock of a part as planned.</summary>
    /// <param name="part">A part of the edition.</param>
    public string StockOf(EditionPart part) => Plan.Stocks.TryGetValue(part.Id, out var stock) ? stock : part.Part.StockId;

    /// <summary>The part of which the second half of the run has another paper, with that paper; null where all copies are alike, or the part is gone.</summary>
    public SecondHalf? SecondHalf
    {
        get
        {
            var place = Plan.SecondHalf is { } half ? Edition.Parts.ToList().FindIndex(part => part.Id == half.PartId) : -1;
            return place < 0 ? null : new SecondHalf(place, Plan.SecondHalf!.StockId);
        }
    }

    /// <summary>True where a copy was weighed or gauged and the plan has other papers than that copy.</summary>
    public bool WeighedOnOtherPapers => Edition.Weighed is not null && SecondHalf is null && Edition.Parts.Any(part => StockOf(part) != part.Part.StockId);

    /// <summary>The job: the edition on the plan's papers, as the scale would weigh it on them, with what the plan takes of the shop's finishing and of the bench.</summary>
    public Job Build() => BuildToTry([]);

    /// <summary>The same job with further papers of the press and the shop's prices for them, so that they can be tried on its parts.</summary>
    /// <param name="stockIds">Ids of the papers to try; those that the press has not are passed over.</param>
    public Job BuildToTry(IEnumerable<string> stockIds)
    {
        var edition = Edition.ToEdition().OnStocks([.. Edition.Parts.Select(StockOf)], Stocks);
        var second = SecondHalf;
        var used = edition.Parts.Select(part => part.StockId).Concat(stockIds).Append(second?.StockId).OfType<string>().ToHashSet(StringComparer.Ordinal);
        return new Job(
            Plan.Date,
            Currency.Find(Press.Currency) ?? throw new InvalidOperationException($"The press has the unknown currency {Press.Currency}."),
            edition,
            [.. Stocks.Where(stock => used.Contains(stock.Id))],
            OfThisRun(PriceList, used) with { Finishing = [.. PriceList.Finishing.Where(operation => Plan.Finishing?.Contains(operation.Name) ?? true)] },
            OfThisRun(Bench with { Steps = [.. Bench.Steps.Where(step => Plan.BenchSteps?.Contains(step.Name) ?? true)] }),
            Mailers,
            Postage,
            [.. Channels.Select(channel => channel with { Price = Edition.Price })],
            Edition.FreeCopies,
            Press.ReclaimsTax,
            Plan.Quantity,
            Plan.Ladder,
            Reprint: Plan.Reprint?.Request)
        {
            SecondHalf = second,
        };
    }

    // Staples and blades are used up by binding: where the shop binds, none of one's own are.
    private static BenchRates OfThisRun(BenchRates bench) => bench.Binds ? bench : bench with { Consumables = [] };

    // A job holds its own papers only, so prices of others have nothing to refer to in it.
    internal static Shop OfThisRun(Shop list, HashSet<string> used) => list with
    {
        Paper = [.. list.Paper.Where(price => used.Contains(price.StockId))],
        BookPrices = [.. list.BookPrices.Where(price => price.StockIds?.All(used.Contains) ?? true)],
    };
}
