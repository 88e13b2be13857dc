using PressRun.Data;
using PressRun.Data.Postage;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Stocks;
using PressRun.Data.Titles;
using PressRun.Engine.Comparing;
using PressRun.Engine.Editions;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;
using PressRun.Web.Posting;
using PressRun.Web.Shared;
using PressRun.Web.Start;

namespace PressRun.Web.Papers;

/// <summary>A plan with what its papers are compared by.</summary>
/// <param name="Title">The title.</param>
/// <param name="Source">The plan with all that its costing needs.</param>
/// <param name="Plans">All plans of the printing with their names.</param>
/// <param name="Offered">Ids of the papers that the press offers, in the library's order.</param>
/// <param name="Mailers">Mailers that the press offers.</param>
public sealed record PapersView(
    TitleRecord Title, JobSource Source, IReadOnlyList<(Guid Id, string Name)> Plans, IReadOnlyList<string> Offered, IReadOnlyList<Mailer> Mailers)
{
    /// <summary>The plan that the printing goes by; null where there is none.</summary>
    public Guid? GoneBy { get; init; }

    /// <summary>Mailers and regions that can be looked at without a way of selling.</summary>
    public IReadOnlyList<Channel> TriedWays => WayTried.Of(Source, Mailers);

    /// <summary>What is missing before anything can be posted; null where nothing is.</summary>
    public string? MissingForPost => WayTried.Missing(Source, Mailers);

    /// <summary>A way of selling that posts although something is missing; null where nothing is, or none does.</summary>
    public Channel? StillPosts => MissingForPost is null ? null : WayTried.StillPosting(Source);

    /// <summary>What the press lacks before papers can be compared by what a copy costs in the reader's hands.</summary>
    public StillNeeded Needed => StillNeeded.Of(Source, Offered, mailer: Mailers.Count > 0 || StillPosts is not null);

    /// <summary>The plan seen through a way: with that way among its own where it is only looked at.</summary>
    /// <param name="wayId">Id of a way of selling or of one of <see cref="TriedWays"/>.</param>
    public JobSource Through(string? wayId) =>
        TriedWays.FirstOrDefault(way => way.Id == wayId) is { } tried ? Source with { Channels = [.. Source.Channels, tried] } : Source;

    /// <summary>The name of a paper; an example of the first book is called one.</summary>
    public string StockName(string id) => Source.Stocks.FirstOrDefault(stock => stock.Id == id) is { } stock
        ? FirstNumber.IsExample(stock) ? Say($"{stock.Name} (example)") : stock.Name
        : id;

    /// <summary>All papers that the shop prices for a part. Examples of the first book are passed over once there is a paper of one's own.</summary>
    /// <param name="place">Place of the part, from 0.</param>
    public IReadOnlyList<string> Priced(int place)
    {
        var priced = Offered.Where(id => Source.Prices(place, id)).ToList();
        return priced.Exists(id => !IsExample(id)) ? priced.FindAll(id => !IsExample(id)) : priced;
    }

    /// <summary>Papers to try on a part unasked: of those that the shop prices the ones that suit the part; all of them where none does.</summary>
    /// <param name="place">Place of the part, from 0.</param>
    public IReadOnlyList<string> ToTry(int place)
    {
        var priced = Priced(place);
        var suiting = priced.Where(id => PaperFit.Suits(Source.Edition.Binding, Parts, place, Source.Stocks.First(stock => stock.Id == id))).ToList();
        return suiting.Count > 0 ? suiting : priced;
    }

    /// <summary>Place of the cover, from 0; null where the book has none.</summary>
    public int? Cover => PageCount.CoverOf(Source.Edition.Binding, Parts);

    /// <summary>True where a part is planned on an example of the first book although there is a paper of one's own for it: then the comparison starts from those.</summary>
    /// <param name="place">Place of the part, from 0.</param>
    public bool StandsOnExample(int place) => IsExample(OwnStock(place)) && Priced(place).Any(id => !IsExample(id));

    private IReadOnlyList<Part> Parts => [.. Source.Edition.Parts.Select(part => part.Part)];

    private bool IsExample(string id) => Source.Stocks.Any(stock => stock.Id == id && FirstNumber.IsExample(stock));

    /// <summary>The paper of a part as planned.</summary>
    /// <param name="place">Place of the part, from 0.</param>
    public string OwnStock(int place) => Source.StockOf(Source.Edition.Parts[place]);

    /// <summary>What is said of the plan's own papers: of two halves, whole runs on the first half's stand for them.</summary>
    public string AsPlanned => Source.SecondHalf is null ? Say($"as planned") : Say($"as its first half is planned");

    /// <summary>The name of a postage service.</summary>
    public string ServiceName(string id) => Source.Postage.FirstOrDefault(service => service.Id == id)?.Name ?? id;
}

/// <summary>Loads what papers are compared by, and makes plans of what was found.</summary>
public sealed class PapersService(TitleStore titles, EditionStore editions, PlanStore plans, StockStore stocks, MailerStore mailers)
{
    /// <summary>A plan of a printing by the printing's address; the one it goes by where none is named. Null where there is none.</summary>
    public async Task<PapersView?> LoadAsync(PressId press, string slug, int printing, Guid? planId)
    {
        if (await titles.FindAsync(press, slug) is not { } title || await editions.FindAsync(press, slug, printing) is not { } edition)
        {
            return null;
        }

        var all = await plans.OfEditionAsync(press, edition.Id);
        if (all.NamedOrChosen(planId) is not { } plan || await plans.SourceAsync(press, plan.Id) is not { } source)
        {
            return null;
        }

        return new PapersView(
            title,
            source,
            [.. all.Select(one => (one.Id, one.Name))],
            [.. (await stocks.ListAsync(press)).Select(item => item.Item.Id)],
            [.. (await mailers.ListAsync(press)).Select(item => item.Item)])
        {
            GoneBy = all.FirstOrDefault(one => one.Chosen)?.Id,
        };
    }

    /// <summary>Makes a printing go by a plan like one, but for its papers and its quantity. That is one of its plans where there is such a one, else a new plan beside it; the plan itself
    /// stays as it is.</summary>
    /// <param name="press">The press.</param>
    /// <param name="source">The plan that it is made from.</param>
    /// <param name="stockIds">Stock of each part, in order.</param>
    /// <param name="quantity">Good copies.</param>
    /// <param name="how">On which papers, in words: the end of the plan's name.</param>
    public async Task<(UsedPapers? Used, string? Problem)> UseAsync(PressId press, JobSource source, IReadOnlyList<string> stockIds, int quantity, string how)
    {
        var other = source.Edition.Parts.Select((part, place) => (part, StockId: stockIds[place])).Where(pair => pair.part.Part.StockId != pair.StockId);
        return await GoByAsync(press, source, how, source.Plan with
        {
            Id = Guid.Empty,
            Quantity = quantity,
            Stocks = other.ToDictionary(pair => pair.part.Id, pair => pair.StockId),
            SecondHalf = null,
            Chosen = false,
        });
    }

    /// <summary>The same with half of the run on each of two papers, as one order.</summary>
    /// <param name="press">The press.</param>
    /// <param name="source">The plan that it is made from.</param>
    /// <param name="part">Place of the part, from 0.</param>
    /// <param name="first">Its paper in the first half.</param>
    /// <param name="second">Its paper in the second half.</param>
    /// <param name="quantity">Good copies of the whole run.</param>
    /// <param name="how">On which two papers, in words: the end of the plan's name.</param>
    public async Task<(UsedPapers? Used, string? Problem)> UseHalvesAsync(PressId press, JobSource source, int part, string first, string second, int quantity, string how)
    {
        var id = source.Edition.Parts[part].Id;
        return await GoByAsync(press, source, how, source.Plan with
        {
            Id = Guid.Empty,
            Quantity = quantity,
            Stocks = source.Plan.Stocks.Where(stock => stock.Key != id).Append(new(id, first)).ToDictionary(),
            SecondHalf = new PlanHalf(id, second),
            Chosen = false,
        });
    }

    /// <summary>Takes back that a printing goes by a plan. A plan that was made for it goes too, unless it was changed since.</summary>
    /// <returns>Null when that is done, otherwise what stands in the way.</returns>
    public async Task<string?> TakeBackAsync(PressId press, UsedPapers used)
    {
        var now = await plans.LoadAsync(press, used.Plan.Id);
        if (now is not { Chosen: true })
        {
            return Say($"This printing goes by another plan since.");
        }

        if (used.Before is { } before)
        {
            await plans.ChooseAsync(press, before);
        }

        // No longer chosen it is a new version.
        if (used.Added && await plans.LoadAsync(press, used.Plan.Id) is { } left && left.PrintsAs(used.Plan) && left.Name == used.Plan.Name)
        {
            await plans.DeleteAsync(press, left);
        }

        return null;
    }

    private async Task<(UsedPapers? Used, string? Problem)> GoByAsync(PressId press, JobSource source, string how, PlanRecord wanted)
    {
        var all = await plans.OfEditionAsync(press, wanted.EditionId);
        var before = all.FirstOrDefault(plan => plan.Chosen)?.Id;
        if (all.FirstOrDefault(plan => plan.PrintsAs(wanted)) is { } there)
        {
            return (new UsedPapers(there, false, before, source.Plan.Id), await ChooseAsync(there));
        }

        return await plans.AddAsync(press, wanted with { Name = CalledPlan.Of(source, how, all.Select(plan => plan.Name)) }) switch
        {
            SaveResult<PlanRecord>.Saved saved => (new UsedPapers(saved.Now, true, before, source.Plan.Id), await ChooseAsync(saved.Now)),
            SaveResult<PlanRecord>.Refused refused => (null, Words.Standing(refused.Problems)),
            _ => (null, Say($"This printing has been taken out in between.")),
        };

        async Task<string?> ChooseAsync(PlanRecord plan) =>
            await plans.ChooseAsync(press, plan.Id) is SaveResult<PlanRecord>.Saved ? null : Say($"This plan has been taken out in between.");
    }
}

/// <summary>Papers that a printing goes by now.</summary>
/// <param name="Plan">The plan that it goes by.</param>
/// <param name="Added">True where the plan was made for it.</param>
/// <param name="Before">The plan that it went by before; null where there was none.</param>
/// <param name="From">The plan from which they were chosen.</param>
public sealed record UsedPapers(PlanRecord Plan, bool Added, Guid? Before, Guid From);
