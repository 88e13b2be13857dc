using Microsoft.EntityFrameworkCore;
using PressRun.Data.Shops;
using PressRun.Data.Stocks;
using PressRun.Data.Titles;
using PressRun.Engine.Costing;
using PressRun.Engine.Paper;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Data.RunPlans;

/// <summary>Turns a job into rows: what the press has already is used, what it lacks is added.</summary>
internal sealed class JobIntake
{
    private const string PlainColour = "#c9bfae";

    private readonly List<string> newStocks = [];

    private readonly PressRunDbContext db;
    private readonly Job file;
    private readonly DateTimeOffset now;

    // The job with the press's own ids of its papers.
    private Job job;

    public JobIntake(PressRunDbContext db, Job file, DateTimeOffset now) => (this.db, this.file, this.now, job) = (db, file, now, file);

    public async Task<SaveResult<TakenIn>> TakeInAsync(Guid? editionId, Guid? titleId, CancellationToken cancel)
    {
        if (await ProblemsAsync(cancel) is { Count: > 0 } problems)
        {
            return new SaveResult<TakenIn>.Refused(problems);
        }

        // Two files at once would both take the same free ids: the press's lock puts them in a row.
        await db.Database.ExecuteSqlAsync($"SELECT 1 FROM presses WHERE id = {db.Press.Value} FOR UPDATE", cancel);
        if (titleId is { } made && await MadeBeforeAsync(made, cancel) is { } before)
        {
            return before;
        }

        await TakeStocksAsync(cancel);
        var (list, newShop) = await PriceListAsync(cancel);
        await db.SaveChangesAsync(cancel);
        var edition = editionId is { } id ? await db.Editions.Whole().Include(row => row.Title).SingleOrDefaultAsync(row => row.Id == id, cancel) : null;
        if (editionId is not null && edition is null)
        {
            return new SaveResult<TakenIn>.Gone();
        }

        var beside = edition is not null && IsSameBook(edition.ToRecord(), (await db.Stocks.ToListAsync(cancel)).ConvertAll(row => row.ToItem()));
        if (!beside)
        {
            edition = await NewEditionAsync(titleId ?? Guid.CreateVersion7(), cancel);
            if (await EditionRules.CheckAsync(db, edition.ToRecord(), cancel) is { Count: > 0 } refused)
            {
                return new SaveResult<TakenIn>.Refused(refused);
            }

            await db.SaveChangesAsync(cancel);
        }

        var plan = await AddPlanAsync(edition!, list, cancel);
        await db.SaveChangesAsync(cancel);
        var source = (await JobSourceQuery.LoadAsync(db, [plan.Id], cancel))[plan.Id];
        return new SaveResult<TakenIn>.Saved(new TakenIn(edition!.Title.Slug, source, !beside, newStocks, newShop));
    }

    private async Task<List<Problem>> ProblemsAsync(CancellationToken cancel)
    {
        var problems = new List<Problem>();
        var currency = await db.Presses.Where(press => press.Id == db.Press).Select(press => press.Currency).SingleAsync(cancel);
        if (file.Currency.Code != currency)
        {
            problems.Add(new Problem("$.currency", file.Currency.Code, $"This press reckons in {currency}; its prices and those of the file cannot stand beside each other."));
        }

        // In a file names may be anything; what is kept is read by people.
        problems.AddRange(TitleStore.Problems(Title(Guid.Empty, "")).Select(problem => problem with { Path = "$.edition" + problem.Path[1..] }));
        problems.AddRange(file.Edition.Parts.SelectMany((part, index) => LibraryRules.Still($"$.edition.parts[{index}].name", part.Name)));
        problems.AddRange(EditionRules.SheetNames(file.Edition.Parts).Select(problem => problem with { Path = "$.edition" + problem.Path[1..] }));
        problems.AddRange(file.Stocks.SelectMany(stock => LibraryRules.Still($"$.stocks.{stock.Id}", stock.Id)));
        problems.AddRange(file.Stocks.SelectMany((stock, index) => LibraryRules.Named(NameOf(stock)).Select(problem => problem with { Path = $"$.stocks[{index}].name" })));
        problems.AddRange(LibraryRules.Still("$.shop.name", file.Shop.Name));
        problems.AddRange(PriceListStore.NameProblems(file.Shop).Select(problem => problem with { Path = "$.shop" + problem.Path[1..] }));
        problems.AddRange(LibraryRules.Names("edition.fixedCosts", file.Edition.FixedCosts.Select(cost => cost.Name)));
        return problems;
    }

    private async Task TakeStocksAsync(CancellationToken cancel)
    {
        var known = (await db.Stocks.ToListAsync(cancel)).ConvertAll(row => row.ToItem());
        var position = await db.Stocks.MaxAsync(row => (int?)row.Position, cancel) ?? -1;
        var ids = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var stock in file.Stocks)
        {
            if ((known.Find(other => other == stock) ?? known.Find(other => other with { Id = stock.Id } == stock)) is { } same)
            {
                ids.Add(stock.Id, same.Id);
                continue;
            }

            var added = stock with { Id = FreeId(stock.Id, known), Name = NameOf(stock) };
            var row = new StockRow { PressId = db.Press, Position = ++position };
            row.Take(added);
            db.Stocks.Add(row);
            known.Add(added);
            newStocks.Add(added.Name);
            ids.Add(stock.Id, added.Id);
        }

        job = file with
        {
            Stocks = [.. known.Where(stock => ids.ContainsValue(stock.Id))],
            Edition = file.Edition with { Parts = [.. file.Edition.Parts.Select(part => part with { StockId = ids[part.StockId] })] },
            SecondHalf = file.SecondHalf is { } half ? half with { StockId = ids[half.StockId] } : null,
            Shop = file.Shop with
            {
                Paper = [.. file.Shop.Paper.Select(price => price with { StockId = ids[price.StockId] })],
                BookPrices = [.. file.Shop.BookPrices.Select(price => price with { StockIds = price.StockIds?.Select(id => ids[id]).ToList() })],
            },
        };
    }

    private TitleRecord Title(Guid id, string slug) => new(id, slug, file.Edition.Title.Trim(), "", PlainColour, "", false, 0);

    private static string NameOf(Stock stock) => stock.Name.Length > 0 ? stock.Name : stock.Id;

    private static string FreeId(string wanted, List<Stock> known)
    {
        var id = wanted;
        for (var number = 2; known.Exists(stock => stock.Id == id); number++)
        {
            id = $"{wanted}-{number}";
        }

        return id;
    }

    // A list that says the same of this run is used; another one of the press's own is never changed by a file.
    private async Task<(PriceListRow List, string? NewShop)> PriceListAsync(CancellationToken cancel)
    {
        var used = job.Edition.Parts.Select(part => part.StockId).Append(job.SecondHalf?.StockId).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var wanted = Written(JobSource.OfThisRun(job.Shop, used));
        var shops = await db.Shops.ToDictionaryAsync(shop => shop.Id, shop => shop.Name, cancel);
        foreach (var list in await db.PriceLists.Where(list => list.ValidFrom == job.Shop.ValidFrom).ToListAsync(cancel))
        {
            var taken = JobSource.OfThisRun(list.Body, used) with { Name = shops[list.ShopId], Finishing = [.. list.Body.Finishing.Where(operation => job.Shop.Finishing.Any(other => other.Name == operation.Name))] };
            if (wanted == Written(taken))
            {
                return (list, null);
            }
        }

        var name = ShopName;
        name = shops.ContainsValue(name) ? $"{name}, by a job file of {now:yyyy-MM-dd}" : name;
        var added = new PriceListRow { PressId = db.Press, Id = Guid.CreateVersion7(), ShopId = SearchText.FreeSlug(name, shops.Keys), ValidFrom = job.Shop.ValidFrom, Body = job.Shop };
        var position = await db.Shops.MaxAsync(row => (int?)row.Position, cancel) ?? -1;
        db.Shops.Add(new ShopRow { PressId = db.Press, Id = added.ShopId, Name = name, Position = position + 1 });
        db.PriceLists.Add(added);
        return (added, name);
    }

    private string ShopName => PlainText.Shows(file.Shop.Name) ? Excerpt.Of(file.Shop.Name, PlanRules.MostName) : "The shop of a job file";

    private string PlanName(string ending) => Excerpt.Of(ShopName, PlanRules.MostName - ending.Length - 1) + ending;

    private string Written(Shop shop) => Convert.ToBase64String(JobWriter.Write(job with { Shop = shop }, indented: false));

    // The same leaves, however they are called in the file; a plan may have other papers, and so may the file. What was weighed stands in the file
    // as it is told on those papers.
    private bool IsSameBook(EditionRecord stored, IReadOnlyList<Stock> papers)
    {
        if (stored.Parts.Count != job.Edition.Parts.Count || stored.FreeCopies != job.FreeCopies || job.Channels.Any(channel => channel.Price != stored.Price))
        {
            return false;
        }

        var edition = stored.ToEdition().OnStocks([.. job.Edition.Parts.Select(part => part.StockId)], papers) with
        {
            Title = job.Edition.Title,
            Printing = job.Edition.Printing,
        };
        return JobWriter.Write(job with { Edition = edition }).AsSpan().SequenceEqual(JobWriter.Write(job));
    }

    // What a title of this id became when it was sent first; null where there is none.
    private async Task<SaveResult<TakenIn>?> MadeBeforeAsync(Guid titleId, CancellationToken cancel)
    {
        if (await db.Titles.SingleOrDefaultAsync(row => row.Id == titleId, cancel) is not { } title)
        {
            return null;
        }

        var plan = await db.RunPlans.Join(db.Editions.Where(row => row.TitleId == titleId), row => row.EditionId, edition => edition.Id, (row, edition) => new { row.Id, row.Position, edition.Printing })
            .OrderBy(row => row.Printing).ThenBy(row => row.Position).Select(row => (Guid?)row.Id).FirstOrDefaultAsync(cancel);
        return plan is { } id
            ? new SaveResult<TakenIn>.Saved(new TakenIn(title.Slug, (await JobSourceQuery.LoadAsync(db, [id], cancel))[id], false, [], null))
            : new SaveResult<TakenIn>.Gone();
    }

    private async Task<EditionRow> NewEditionAsync(Guid titleId, CancellationToken cancel)
    {
        var title = new TitleRow { PressId = db.Press, Id = titleId, Slug = await TitleStore.FreeSlugAsync(db, job.Edition.Title, cancel) };
        title.Take(Title(title.Id, title.Slug));
        db.Titles.Add(title);
        var edition = job.Edition;
        var row = EditionRow.New(db.Press, title.Id, now);
        row.Title = title;
        row.Take(new EditionRecord(
            row.Id, title.Id, edition.Title, edition.Printing, null, null, 0, job.Channels.Count > 0 ? job.Channels[0].Price : 0m, job.FreeCopies,
            edition.Page, edition.Binding, edition.Bleed, edition.Trim, edition.Fold, edition.Weighed,
            [.. edition.Parts.Select(part => new EditionPart(Guid.Empty, part))], edition.FixedCosts, false, false, 0));
        db.Editions.Add(row);
        return row;
    }

    private async Task<RunPlanRow> AddPlanAsync(EditionRow edition, PriceListRow list, CancellationToken cancel)
    {
        var parts = edition.ToRecord().Parts;
        var positions = await db.RunPlans.Where(plan => plan.EditionId == edition.Id).Select(plan => plan.Position).ToListAsync(cancel);
        var row = new RunPlanRow
        {
            PressId = db.Press,
            Id = Guid.CreateVersion7(),
            EditionId = edition.Id,
            Chosen = positions.Count == 0,
            Position = positions.DefaultIfEmpty(-1).Max() + 1,
            ChangedAt = now,
        };
        var others = parts.Zip(job.Edition.Parts).Where(pair => pair.First.Part.StockId != pair.Second.StockId).ToDictionary(pair => pair.First.Id, pair => pair.Second.StockId);
        var half = job.SecondHalf is { } second ? new PlanHalf(parts[second.Part].Id, second.StockId) : null;
        if (half is not null)
        {
            others.TryAdd(half.PartId, job.Edition.Parts[job.SecondHalf!.Part].StockId);
        }

        row.Take(new PlanRecord(
            row.Id, edition.Id, PlanName(positions.Count == 0 ? "" : ", from a file"), list.Id, list.ShopId, job.Date, job.Quantity, job.Ladder, others,
            [.. job.Shop.Finishing.Select(operation => operation.Name)], [.. job.Bench.Steps.Select(step => step.Name)], row.Chosen, 0)
        {
            SecondHalf = half,
        });
        db.RunPlans.Add(row);
        return row;
    }
}
