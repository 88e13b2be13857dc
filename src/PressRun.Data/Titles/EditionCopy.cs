using Microsoft.EntityFrameworkCore;
using PressRun.Data.RunPlans;
using PressRun.Data.Running;

namespace PressRun.Data.Titles;

/// <summary>Copies a printing forward to the next one.</summary>
internal static class EditionCopy
{
    public static async Task<SaveResult<EditionRecord>> ForwardAsync(PressRunDbContext db, Guid id, DateTimeOffset now, CancellationToken cancel)
    {
        var from = await db.Editions.AsNoTracking().Whole().SingleOrDefaultAsync(row => row.Id == id, cancel);
        if (from is null)
        {
            return new SaveResult<EditionRecord>.Gone();
        }

        // Two people who copy forward at once would both take the same number: the title's lock puts them in a row.
        await db.Database.ExecuteSqlAsync(
            $"SELECT 1 FROM titles WHERE press_id = {db.Press.Value} AND id = {from.TitleId} FOR UPDATE", cancel);
        if (!await db.Editions.AnyAsync(row => row.Id == id, cancel))
        {
            return new SaveResult<EditionRecord>.Gone();
        }

        var last = await db.Editions.Where(row => row.TitleId == from.TitleId).MaxAsync(row => row.Printing, cancel);
        var next = EditionRow.New(db.Press, from.TitleId, now);
        var record = from.ToRecord();
        next.Take(record with
        {
            Printing = last + 1,
            Weighed = null,
            Archived = false,
            Parts = [.. record.Parts.Select(part => part with { Id = Guid.Empty })],
        });
        db.Editions.Add(next);
        await CopyChosenPlanAsync(db, from, next, now, cancel);
        await db.SaveChangesAsync(cancel);
        return new SaveResult<EditionRecord>.Saved((await EditionStore.LoadAsync(db, next.Id, cancel))!);
    }

    private static async Task CopyChosenPlanAsync(PressRunDbContext db, EditionRow from, EditionRow next, DateTimeOffset now, CancellationToken cancel)
    {
        var chosen = await db.RunPlans.AsNoTracking().Include(plan => plan.Stocks).Include(plan => plan.PriceList)
            .SingleOrDefaultAsync(plan => plan.EditionId == from.Id && plan.Chosen, cancel);
        if (chosen is null)
        {
            return;
        }

        var today = db.Zone.DayOf(now);
        var list = await db.PriceLists.Where(candidate => candidate.ShopId == chosen.PriceList.ShopId && candidate.ValidFrom <= today)
            .OrderByDescending(candidate => candidate.ValidFrom).Select(candidate => (Guid?)candidate.Id).FirstOrDefaultAsync(cancel);
        var copy = new RunPlanRow { PressId = db.Press, Id = Guid.CreateVersion7(), EditionId = next.Id, ChangedAt = now, Chosen = true };
        var newIds = from.Parts.OrderBy(part => part.Position).Zip(next.Parts.OrderBy(part => part.Position))
            .ToDictionary(pair => pair.First.Id, pair => pair.Second.Id);
        var record = chosen.ToRecord();
        copy.Take(record with
        {
            Date = today,
            PriceListId = list ?? chosen.PriceListId,
            Stocks = record.Stocks.ToDictionary(stock => newIds[stock.Key], stock => stock.Value),
            SecondHalf = record.SecondHalf is { } half ? half with { PartId = newIds[half.PartId] } : null,
        });
        db.RunPlans.Add(copy);
    }
}
