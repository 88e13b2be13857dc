using System.Globalization;
using Microsoft.EntityFrameworkCore;
using PressRun.Data.Conversions;
using PressRun.Engine.Costing;
using PressRun.Engine.Paper;
using PressRun.JobFile.Blocks;
using PressRun.JobFile.Writing;

namespace PressRun.Data.Stocks;

/// <summary>The papers of one press.</summary>
public sealed class StockStore : LibraryStore<Stock>
{
    internal StockStore(PressDatabase database)
        : base(database)
    {
    }

    private protected override IQueryable<ILibraryRow<Stock>> Rows(PressRunDbContext db) => db.Stocks;

    private protected override ILibraryRow<Stock> NewRow() => new StockRow();

    private protected override LibraryKeys<Stock> Keys { get; } = new(
        stock => stock.Id, stock => stock.Name, (stock, id) => stock with { Id = id });

    private protected override string NameOf(Stock item) => item.Name;

    private protected override async Task<IReadOnlyList<string>> UsesAsync(PressRunDbContext db, Stock item, CancellationToken cancel)
    {
        var parts = await (
            from part in db.Parts
            where part.StockId == item.Id
            join edition in db.Editions on part.EditionId equals edition.Id
            orderby edition.Title.SearchText, edition.Printing, part.Position
            select new { edition.Title.Title, edition.Printing, part.Name }).ToListAsync(cancel);
        var plans = await (
            from stock in db.PlanStocks
            where stock.StockId == item.Id || stock.SecondStockId == item.Id
            join plan in db.RunPlans on stock.PlanId equals plan.Id
            orderby plan.Edition.Title.SearchText, plan.Edition.Printing, plan.Position
            select new { plan.Edition.Title.Title, plan.Edition.Printing, plan.Name }).ToListAsync(cancel);
        var lists = await db.Database.SqlQuery<PricedIn>(
            $"""
            SELECT shops.name, price_lists.valid_from
            FROM price_lists JOIN shops ON shops.press_id = price_lists.press_id AND shops.id = price_lists.shop_id
            WHERE price_lists.press_id = {db.Press.Value}
              AND (jsonb_path_exists(body::jsonb, '$.paper[*].stock ? (@ == $id)', jsonb_build_object('id', {item.Id}))
                OR jsonb_path_exists(body::jsonb, '$.bookPrices[*].stocks[*] ? (@ == $id)', jsonb_build_object('id', {item.Id})))
            ORDER BY shops.position, price_lists.valid_from
            """).ToListAsync(cancel);
        return [
            .. parts.Select(use => $"{use.Title}, printing {use.Printing}: {use.Name}"),
            .. plans.Select(use => $"{use.Title}, printing {use.Printing}: plan {use.Name}"),
            .. lists.Select(list => string.Create(CultureInfo.InvariantCulture, $"{list.Name}: prices from {list.ValidFrom:yyyy-MM-dd}")),
        ];
    }

    private protected override Task<List<Problem>> ProblemsAsync(PressRunDbContext db, Stock item, CancellationToken cancel) => Task.FromResult(
        Contract.Problems(json => StockWriter.WriteMembers(json, item), (element, path, problems) => StockBlock.Read(element, path, item.Id, problems)));

    private sealed record PricedIn(string Name, DateOnly ValidFrom);
}
