using Microsoft.EntityFrameworkCore;
using PressRun.Data.Copies;
using PressRun.Data.Fixes;
using PressRun.Data.RunPlans;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;

namespace PressRun.Data.Archive;

/// <summary>Reads all rows of a press into an archive.</summary>
internal static class ArchiveExport
{
    public static async Task<PressArchive?> LoadAsync(PressRunDbContext db, CancellationToken cancel)
    {
        var press = await db.Presses.AsNoTracking().SingleOrDefaultAsync(row => row.Id == db.Press, cancel);
        if (press is null)
        {
            return null;
        }

        var bench = await db.Benches.AsNoTracking().SingleOrDefaultAsync(cancel);
        var shops = await db.Shops.AsNoTracking().Include(shop => shop.PriceLists.OrderBy(list => list.ValidFrom))
            .OrderBy(shop => shop.Position).ThenBy(shop => shop.Id).ToListAsync(cancel);
        return new PressArchive(
            new ArchivedPress(press.Name, press.Currency, press.Units, press.PaperRegion, press.ReclaimsTax),
            await KeptAsync(db.Stocks.InOrder(), row => row.ToItem(), cancel),
            shops.ConvertAll(shop => new ArchivedShop(shop.Id, shop.Name, shop.Archived, shop.PriceLists.ConvertAll(list => list.Body with { Name = shop.Name }))),
            await KeptAsync(db.Mailers.InOrder(), row => row.ToItem(), cancel),
            await KeptAsync(db.PostageServices.OrderBy(row => row.Position).ThenBy(row => row.Id).ThenBy(row => row.ValidFrom), row => row.ToItem(), cancel),
            await KeptAsync(db.Channels.InOrder(), row => row.ToItem(), cancel),
            bench?.Rates ?? BenchRates.None,
            await TitlesAsync(db, cancel),
            await QuotesAsync(db, cancel))
        {
            Limits = (await db.BenchLimits.AsNoTracking().SingleOrDefaultAsync(cancel))?.Limits ?? BenchLimits.Usual,
        };
    }

    private static async Task<IReadOnlyList<ArchivedQuote>> QuotesAsync(PressRunDbContext db, CancellationToken cancel)
    {
        var rows = await db.Quotes.AsNoTracking().Include(row => row.Replaces).OrderBy(row => row.Number).ToListAsync(cancel);
        var marks = await db.QuoteMarks.AsNoTracking().ToDictionaryAsync(mark => mark.QuoteId, cancel);
        var links = (await db.QuoteLinks.AsNoTracking().OrderBy(link => link.MadeAt).ThenBy(link => link.Id).ToListAsync(cancel)).ToLookup(link => link.QuoteId);
        var events = (await db.QuoteEvents.AsNoTracking().OrderBy(happened => happened.Sequence).ToListAsync(cancel)).ToLookup(happened => happened.QuoteId);
        var printings = await db.Editions.AsNoTracking().Join(db.Titles, edition => edition.TitleId, title => title.Id, (edition, title) => new { edition.Id, title.Slug, edition.Printing })
            .ToDictionaryAsync(printing => printing.Id, cancel);
        return rows.ConvertAll(row =>
        {
            var places = links[row.Id].Index().ToDictionary(link => link.Item.Id, link => link.Index);
            var printing = printings[row.EditionId];
            return new ArchivedQuote(
                row.Number, printing.Slug, printing.Printing, row.MadeAt, row.By, row.Quantity, row.Landed, row.Facts, row.Job, row.Result, row.Replaces?.Number,
                marks[row.Id].Seen,
                [.. links[row.Id].Select(link => new ArchivedLink(link.ToRecord(), link.SecretHash))],
                [.. events[row.Id].Select(happened => new ArchivedEvent(happened.ToRecord(), happened.LinkId is { } link ? places[link] : null))]);
        });
    }

    private static async Task<IReadOnlyList<Kept<T>>> KeptAsync<TRow, T>(IQueryable<TRow> rows, Func<TRow, T> item, CancellationToken cancel)
        where TRow : class, IInLibrary =>
        (await rows.AsNoTracking().ToListAsync(cancel)).ConvertAll(row => new Kept<T>(item(row), row.Archived));

    private static async Task<IReadOnlyList<ArchivedTitle>> TitlesAsync(PressRunDbContext db, CancellationToken cancel)
    {
        var titles = await db.Titles.AsNoTracking().OrderBy(title => title.Slug).ToListAsync(cancel);
        var editions = (await db.Editions.AsNoTracking().Whole().OrderBy(edition => edition.Printing).ToListAsync(cancel)).ToLookup(row => row.TitleId);
        var movements = (await db.CopyMovements.AsNoTracking().OrderBy(row => row.Sequence).ToListAsync(cancel)).ToLookup(row => row.EditionId);
        var plans = (await db.RunPlans.AsNoTracking().Whole().OrderBy(plan => plan.Position).ThenBy(plan => plan.Id).ToListAsync(cancel))
            .ToLookup(row => row.EditionId);
        var claims = await db.EditionClaims.AsNoTracking().ToDictionaryAsync(row => row.EditionId, cancel);
        var payments = (await db.EditionPayments.AsNoTracking().OrderBy(row => row.Day).ThenBy(row => row.WrittenAt).ThenBy(row => row.Id).ToListAsync(cancel))
            .ToLookup(row => row.EditionId);
        var tallies = await TallyArchive.LoadAsync(db, cancel);
        var fixes = (await db.FixNotes.AsNoTracking().OrderBy(note => note.Id).ToListAsync(cancel)).ToLookup(row => row.EditionId);
        return titles.OrderBy(title => title.Slug, StringComparer.Ordinal).Select(title => new ArchivedTitle(
            title.Slug, title.Title, title.By, title.Colour, title.About, title.Archived,
            [.. editions[title.Id].Select(edition => Edition(edition, plans[edition.Id], [.. movements[edition.Id]], fixes[edition.Id], tallies[edition.Id]) with
            {
                Claims = claims.TryGetValue(edition.Id, out var promised) ? promised.ToRecord().Claims : [],
                Payments = [.. payments[edition.Id].Select(row => new ArchivedPayment(row.Day, row.Name, row.Amount, row.By))],
            })])).ToList();
    }

    private static ArchivedEdition Edition(EditionRow row, IEnumerable<RunPlanRow> plans, List<CopyMovementRow> movements, IEnumerable<FixNoteRow> fixes, IEnumerable<TallyWithEntries> tallies)
    {
        var record = row.ToRecord();
        var names = record.Parts.ToDictionary(part => part.Id, part => part.Part.Name);
        return new ArchivedEdition(
            record.ToEdition(), record.PrintedOn, record.CopiesPrinted, Movements(movements), record.Price, record.FreeCopies, record.Archived,
            [.. plans.Select(plan => Plan(plan, names))],
            [.. fixes.Select(note => new ArchivedFix(note.NoticedOn, note.Text, note.Page, note.MendedIn, note.CarriedPast))], [], [])
        {
            Tallies = [.. tallies.Select(tally => tally.ToArchived(movements))],
        };
    }

    private static List<ArchivedMovement> Movements(List<CopyMovementRow> rows)
    {
        var places = rows.Index().ToDictionary(row => row.Item.Id, row => row.Index);
        return rows.ConvertAll(row => new ArchivedMovement(
            row.Day, row.Kind, row.Copies, row.Amount, row.ChannelId, row.Note, Place(row.TakesBack), Place(row.SettledBy), row.Printing));

        int? Place(Guid? id) => id is { } named ? places[named] : null;
    }

    private static ArchivedPlan Plan(RunPlanRow row, Dictionary<Guid, string> partNames)
    {
        var record = row.ToRecord();
        return new ArchivedPlan(
            record.Name, record.ShopId, row.PriceList.ValidFrom, record.Date, record.Quantity, record.Ladder, record.Chosen,
            record.Stocks.ToDictionary(stock => partNames[stock.Key], stock => stock.Value), record.Finishing, record.BenchSteps, record.Reprint)
        {
            SecondHalf = record.SecondHalf is { } half ? (partNames[half.PartId], half.StockId) : null,
        };
    }
}
