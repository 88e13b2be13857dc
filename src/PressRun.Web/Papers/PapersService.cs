using PressRun.Data;
using PressRun.Data.Postage;
using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Stocks;
using PressRun.Data.Titles;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;
using PressRun.Web.Posting;
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
        ? FirstNumber.IsExample(stock) ? $"{stock.Name} (example)" : stock.Name
        : id;

    /// <summary>Papers to try on a part unasked: those that the shop prices. Examples of the first book are passed over once there is a paper of one's own.</summary>
    /// <param name="place">Place of the part, from 0.</param>
    public IReadOnlyList<string> ToTry(int place)
    {
        var examples = Source.Stocks.Where(FirstNumber.IsExample).Select(stock => stock.Id).ToHashSet(StringComparer.Ordinal);
        var priced = Offered.Where(id => Source.Prices(place, id)).ToList();
        return priced.Exists(id => !examples.Contains(id)) ? priced.FindAll(id => !examples.Contains(id)) : priced;
    }

    /// <summary>The paper of a part as planned.</summary>
    /// <param name="place">Place of the part, from 0.</param>
    public string OwnStock(int place) => Source.StockOf(Source.Edition.Parts[place]);

    /// <summary>The name of a postage service.</summary>
    public string ServiceName(string id) => Source.Postage.FirstOrDefault(service => service.Id == id)?.Name ?? id;
}

/// <summary>Loads what papers are compared by, and makes plans of what was found.</summary>
public sealed class PapersService(TitleStore titles, EditionStore editions, PlanStore plans, StockStore stocks, MailerStore mailers)
{
    private const int LongestName = 120;

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
            [.. (await mailers.ListAsync(press)).Select(item => item.Item)]);
    }

    /// <summary>A new plan beside one, the same but for its papers and its quantity; the plan itself stays as it is.</summary>
    /// <param name="press">The press.</param>
    /// <param name="source">The plan that it is made from.</param>
    /// <param name="stockIds">Stock of each part, in order.</param>
    /// <param name="quantity">Good copies.</param>
    /// <param name="name">What the papers are called.</param>
    public async Task<(PlanRecord? Plan, string? Problem)> BesideAsync(PressId press, JobSource source, IReadOnlyList<string> stockIds, int quantity, string name)
    {
        var own = source.Edition.Parts.Select((part, place) => (part, StockId: stockIds[place])).Where(pair => pair.part.Part.StockId != pair.StockId);
        var called = $"{source.Plan.Name}, on {name}";
        var beside = source.Plan with
        {
            Id = Guid.Empty,
            Name = called[..Math.Min(called.Length, LongestName)],
            Quantity = quantity,
            Stocks = own.ToDictionary(pair => pair.part.Id, pair => pair.StockId),
            Chosen = false,
        };
        return await plans.AddAsync(press, beside) switch
        {
            SaveResult<PlanRecord>.Saved saved => (saved.Now, null),
            SaveResult<PlanRecord>.Refused refused => (null, string.Join(" ", refused.Problems.Select(problem => problem.Rule))),
            _ => (null, "This printing has been taken out in between."),
        };
    }

    /// <summary>Takes a plan out that was made here.</summary>
    public async Task TakeOutAsync(PressId press, Guid plan) => await plans.DeleteAsync(press, plan);
}
