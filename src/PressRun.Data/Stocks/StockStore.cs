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

    private protected override string IdOf(Stock item) => item.Id;

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
            where stock.StockId == item.Id
            join plan in db.RunPlans on stock.PlanId equals plan.Id
            orderby plan.Edition.Title.SearchText, plan.Edition.Printing, plan.Position
            select new { plan.Edition.Title.Title, plan.Edition.Printing, plan.Name }).ToListAsync(cancel);
        return [
            .. parts.Select(use => $"{use.Title}, printing {use.Printing}: {use.Name}"),
            .. plans.Select(use => $"{use.Title}, printing {use.Printing}: plan {use.Name}"),
        ];
    }

    private protected override Task<List<Problem>> ProblemsAsync(PressRunDbContext db, Stock item, CancellationToken cancel) => Task.FromResult(
        Contract.Problems(json => StockWriter.WriteMembers(json, item), (element, path, problems) => StockBlock.Read(element, path, item.Id, problems)));
}
