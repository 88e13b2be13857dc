using PressRun.Data.Bench;
using PressRun.Data.Copies;
using PressRun.Data.Fixes;
using PressRun.Data.Payouts;
using PressRun.Data.Postage;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Selling;
using PressRun.Data.Shops;
using PressRun.Data.Stocks;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Copies;

namespace PressRun.Data.Archive;

/// <summary>Turns an archive that was read into the rows of a new press.</summary>
internal sealed class ArchiveImport(PressRunDbContext db, PressArchive archive, DateTimeOffset now, IReadOnlySet<string> closedLinks)
{
    private readonly Dictionary<(string Shop, DateOnly From), PriceListRow> lists = [];
    private readonly Dictionary<(string Title, int Printing), Guid> editions = [];

    /// <summary>Adds all rows; saving is the caller's.</summary>
    public PressRow Add()
    {
        var press = new PressRow
        {
            Id = db.Press,
            Name = archive.Press.Name,
            Currency = archive.Press.Currency,
            Units = archive.Press.Units,
            PaperRegion = archive.Press.PaperRegion,
            ReclaimsTax = archive.Press.ReclaimsTax,
            CreatedAt = now,
        };
        db.Presses.Add(press);
        db.Benches.Add(new BenchRow { PressId = db.Press, Rates = archive.Bench });
        if (archive.Limits != BenchLimits.Usual)
        {
            db.BenchLimits.Add(new BenchLimitsRow { PressId = db.Press, Limits = archive.Limits });
        }

        AddLibrary<StockRow, Engine.Paper.Stock>(archive.Stocks);
        AddLibrary<MailerRow, Engine.Postage.Mailer>(archive.Mailers);
        AddLibrary<PostageServiceRow, Engine.Postage.PostageService>(archive.Postage);
        AddLibrary<ChannelRow, Engine.Selling.Channel>(archive.Channels);
        AddShops();
        foreach (var title in archive.Titles)
        {
            AddTitle(title);
        }

        new QuoteImport(db, editions, now, closedLinks).Add(archive.Quotes);
        return press;
    }

    private void AddLibrary<TRow, T>(IReadOnlyList<Kept<T>> things)
        where TRow : class, ILibraryRow<T>, new()
        where T : class
    {
        for (var position = 0; position < things.Count; position++)
        {
            var row = new TRow { PressId = db.Press, Archived = things[position].Archived, Position = position };
            row.Take(things[position].Item);
            db.Add(row);
        }
    }

    private void AddShops()
    {
        for (var position = 0; position < archive.Shops.Count; position++)
        {
            var shop = archive.Shops[position];
            db.Shops.Add(new ShopRow { PressId = db.Press, Id = shop.Id, Name = shop.Name, Archived = shop.Archived, Position = position });
            foreach (var list in shop.PriceLists)
            {
                var row = new PriceListRow { PressId = db.Press, Id = Guid.CreateVersion7(), ShopId = shop.Id, ValidFrom = list.ValidFrom, Body = list };
                lists.Add((shop.Id, list.ValidFrom), row);
                db.PriceLists.Add(row);
            }
        }
    }

    private void AddTitle(ArchivedTitle title)
    {
        var row = new TitleRow { PressId = db.Press, Id = Guid.CreateVersion7(), Slug = title.Id };
        row.Take(new TitleRecord(row.Id, title.Id, title.Title, title.By, title.Colour, title.About, title.Archived, 0));
        db.Titles.Add(row);
        if (title.Editions.Any(edition => edition.Movements.Count > 0))
        {
            db.TitleOutlooks.Add(new TitleOutlookRow { PressId = db.Press, TitleId = row.Id, Moved = 1 });
        }

        foreach (var edition in title.Editions)
        {
            AddEdition(row, edition);
        }
    }

    private void AddEdition(TitleRow title, ArchivedEdition archived)
    {
        var edition = archived.Edition;
        var row = EditionRow.New(db.Press, title.Id, now);
        row.Take(new EditionRecord(
            row.Id, title.Id, title.Title, edition.Printing, archived.PrintedOn, archived.CopiesPrinted, 0, archived.Price,
            archived.FreeCopies, edition.Page, edition.Binding, edition.Bleed, edition.Trim, edition.Fold, edition.Weighed,
            [.. edition.Parts.Select(part => new EditionPart(Guid.Empty, part))], edition.FixedCosts, archived.Archived, false, 0));
        (row.PrintedOn, row.CopiesPrinted) = (archived.PrintedOn, archived.CopiesPrinted);
        db.Editions.Add(row);
        editions.Add((title.Slug, edition.Printing), row.Id);
        var lines = AddMovements(row, archived.Movements);
        TallyArchive.Add(db, row.Id, archived.Tallies, lines);

        // Notes stand in the order of their ids, and those of one millisecond in none (RFC 9562, 5.7).
        foreach (var (place, fix) in archived.Fixes.Index())
        {
            db.FixNotes.Add(new FixNoteRow
            {
                PressId = db.Press, Id = Guid.CreateVersion7(now.AddMilliseconds(place)), EditionId = row.Id, NoticedOn = fix.NoticedOn, Text = fix.Text, Page = fix.Page,
                MendedIn = fix.MendedIn, CarriedPast = fix.CarriedPast,
            });
        }

        AddPayouts(row, archived);
        for (var position = 0; position < archived.Plans.Count; position++)
        {
            AddPlan(row, archived.Plans[position], position);
        }
    }

    private void AddPayouts(EditionRow edition, ArchivedEdition archived)
    {
        if (archived.Claims.Count > 0)
        {
            db.EditionClaims.Add(new EditionClaimsRow { PressId = db.Press, EditionId = edition.Id, Claims = ClaimShape.Text(archived.Claims) });
        }

        // A microsecond apart, so that those of one day keep their order.
        foreach (var (place, payment) in archived.Payments.Index())
        {
            db.EditionPayments.Add(new EditionPaymentRow
            {
                PressId = db.Press, Id = Guid.CreateVersion7(), EditionId = edition.Id, Name = payment.Name, Day = payment.Day, Amount = payment.Amount, By = payment.By,
                WrittenAt = now.AddMicroseconds(place),
            });
        }
    }

    private List<Guid> AddMovements(EditionRow edition, IReadOnlyList<ArchivedMovement> movements)
    {
        var ids = movements.Select(_ => Guid.CreateVersion7(now)).ToList();
        foreach (var (place, movement) in movements.Index())
        {
            db.CopyMovements.Add(new CopyMovementRow
            {
                PressId = db.Press,
                Id = ids[place],
                EditionId = edition.Id,
                Sequence = place + 1,
                Day = movement.Day,
                Kind = movement.Kind,
                Copies = movement.Change,
                Amount = movement.Amount,
                ChannelId = movement.Channel,
                Note = movement.Note,
                WrittenAt = now,
                TakesBack = movement.TakesBack is { } taken ? ids[taken] : null,
                SettledBy = movement.SettledBy is { } settled ? ids[settled] : null,
                Printing = movement.Printing,
            });
        }

        var moved = movements.Select((movement, place) => new CopyMovement(movement.Day, place, movement.Kind, movement.Change, movement.Amount));
        var position = CopiesAccount.At(moved);
        (edition.Copies.OnHand, edition.Copies.Lines, edition.Copies.CountNeeded) = (position.OnHand, movements.Count, position.CountNeeded);
        return ids;
    }

    private void AddPlan(EditionRow edition, ArchivedPlan plan, int position)
    {
        var row = new RunPlanRow
        {
            PressId = db.Press, Id = Guid.CreateVersion7(), EditionId = edition.Id, Chosen = plan.Chosen, Position = position, ChangedAt = now,
        };
        row.Take(new PlanRecord(
            row.Id, edition.Id, plan.Name, lists[(plan.ShopId, plan.ListFrom)].Id, plan.ShopId, plan.Date, plan.Quantity, plan.Ladder,
            plan.Stocks.ToDictionary(stock => PartNamed(stock.Key), stock => stock.Value),
            plan.Finishing, plan.BenchSteps, plan.Chosen, 0, plan.Reprint)
        {
            SecondHalf = plan.SecondHalf is { } half ? new PlanHalf(PartNamed(half.Part), half.StockId) : null,
        });
        db.RunPlans.Add(row);

        Guid PartNamed(string name) => edition.Parts.Single(part => part.Name == name).Id;
    }
}
