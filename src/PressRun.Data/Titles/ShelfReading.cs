using Microsoft.EntityFrameworkCore;
using PressRun.Data.Copies;
using PressRun.Engine.Copies;

namespace PressRun.Data.Titles;

/// <summary>Reads a stretch of titles with all that the shelf shows of them, in one statement: a row for each printing.</summary>
internal static class ShelfReading
{
    public static async Task<List<ShelfTitle>> TitlesAsync(PressRunDbContext db, IQueryable<TitleRow> stretch, bool byDay, CancellationToken cancel)
    {
        var rows =
            from title in stretch
            join outlook in db.TitleOutlooks.Where(row => row.RunsOutOn != null) on title.Id equals outlook.TitleId into outlooks
            from outlook in outlooks.DefaultIfEmpty()
            join edition in db.Editions.Where(row => !row.Archived) on title.Id equals edition.TitleId into editions
            from edition in editions.DefaultIfEmpty()
            join copies in db.EditionCopies on edition.Id equals copies.EditionId into counts
            from copies in counts.DefaultIfEmpty()
            join plan in db.RunPlans.Where(row => row.Chosen) on edition.Id equals plan.EditionId into plans
            from plan in plans.DefaultIfEmpty()
            select new { Title = title, Outlook = outlook, Edition = edition, Copies = copies, Plan = plan };
        var ordered = byDay ? rows.OrderBy(row => row.Outlook!.RunsOutOn) : rows.OrderBy(row => row.Title.SearchText);
        var read = await ordered.ThenBy(row => row.Title.Id).ThenByDescending(row => row.Edition!.Printing).Select(row => new
        {
            row.Title.Id,
            row.Title.Slug,
            row.Title.Title,
            row.Title.By,
            row.Title.Colour,
            Outlook = row.Outlook == null
                ? null
                : new TitleOutlook(row.Outlook.AsOf, row.Outlook.OnHand, row.Outlook.Days10, row.Outlook.Days50, row.Outlook.Days90, row.Outlook.Moved),
            Edition = row.Edition == null
                ? null
                : new ShelfEdition(
                    row.Edition.Id,
                    row.Edition.Printing,
                    row.Edition.PrintedOn,
                    row.Edition.CopiesPrinted,
                    row.Copies!.OnHand,
                    row.Copies.CountNeeded,
                    row.Edition.Price,
                    row.Edition.Version,
                    row.Plan == null ? null : new ShelfPlan(row.Plan.Id, row.Plan.Version, row.Plan.Quantity),
                    new PrintedCopies(
                        db.CopyMovements.Where(line => line.EditionId == row.Edition.Id && line.Kind == MovementKind.Printed).Sum(line => (long)line.Copies),
                        db.CopyMovements.Where(line => line.EditionId == row.Edition.Id && line.Kind == MovementKind.Printed).Sum(line => line.Amount))),
        }).ToListAsync(cancel);
        return
        [
            .. from row in read
               group row by row.Id into printings
               let title = printings.First()
               select new ShelfTitle(
                   title.Id, title.Slug, title.Title, title.By, title.Colour, title.Outlook, [.. printings.Select(printing => printing.Edition).OfType<ShelfEdition>()]),
        ];
    }
}
