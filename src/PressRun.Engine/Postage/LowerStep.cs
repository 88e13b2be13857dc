using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Ladder;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

namespace PressRun.Engine.Postage;

/// <summary>Finds the smallest change to a book with which its piece of mail reaches a lower postage.</summary>
public sealed class LowerStep
{
    // What is sought is a touch to the book and not another book: at most an eighth of a side, and a quarter of a part's pages.
    private const decimal MostTrim = 0.125m;
    private const int PagesOverMost = 4;

    private readonly PreparedJob ready;
    private readonly IReadOnlyList<PostageService> services;
    private readonly Mailer mailer;
    private readonly int copies;
    private readonly Dictionary<string, Stock> stocks;

    private LowerStep(PreparedJob ready, Mailer mailer, string region, int copies, Length trimUnit, Func<int, IEnumerable<string>> papers)
    {
        this.ready = ready;
        this.mailer = mailer;
        this.copies = copies;
        services = [.. PostageTable.InForce(ready.Job.Postage, ready.Job.Date).Where(service => service.Region == region)];
        stocks = ready.Job.Stocks.ToDictionary(stock => stock.Id, StringComparer.Ordinal);
        Now = PostageTable.Choose(services, "", mailer, ready.Copy, copies);
        InHand = CostInHand(ready, Now);
        Ways = Now.Price is 0m ? [] : [.. Sought(trimUnit, papers).OfType<WayDown>()];
    }

    /// <summary>How the piece is posted as the book is; its channel is empty.</summary>
    public PostageChoice Now { get; }

    /// <summary>A copy in the reader's hands as the book is, not rounded; null where nothing takes the piece.</summary>
    public decimal? InHand { get; }

    /// <summary>At most one way for each edge, one for the pages and one for each part's paper; empty where none is found.</summary>
    public IReadOnlyList<WayDown> Ways { get; }

    /// <summary>
    /// Looks for the least trim of the fore-edge and of the foot (up to an eighth of the side), the fewest pages of a part (up to a quarter of them; of
    /// equals from the part with the most), and for each part the heaviest of the lighter papers that brings the postage below what it is.
    /// </summary>
    /// <param name="ready">The job. Its stocks hold those to try.</param>
    /// <param name="mailer">What the copies lie in.</param>
    /// <param name="region">Where they go.</param>
    /// <param name="copies">Copies of the piece, at least 1.</param>
    /// <param name="trimUnit">Trims are multiples of it; more than 0.</param>
    /// <param name="papers">Ids of the stocks to try on a part; those that are not lighter than the part's own are passed over.</param>
    public static LowerStep Find(PreparedJob ready, Mailer mailer, string region, int copies, Length trimUnit, Func<int, IEnumerable<string>> papers) =>
        new(ready, mailer, region, copies, trimUnit, papers);

    private IEnumerable<WayDown?> Sought(Length trimUnit, Func<int, IEnumerable<string>> papers) =>
    [
        Trimmed(Edge.ForeEdge, trimUnit),
        Trimmed(Edge.Foot, trimUnit),
        WithFewerPages(),
        .. Enumerable.Range(0, ready.Job.Edition.Parts.Count).Select(part => OnLighterPaper(part, papers(part))),
    ];

    private TrimmedMore? Trimmed(Edge edge, Length unit)
    {
        var edition = ready.Job.Edition;
        var side = edge == Edge.Foot ? edition.Page.Height : edition.Page.Width;
        for (var by = unit; by <= MostTrim * side; by += unit)
        {
            var changed = edge == Edge.Foot
                ? edition with { Page = edition.Page with { Height = side - by }, Trim = edition.Trim with { Foot = edition.Trim.Foot + by } }
                : edition with { Page = edition.Page with { Width = side - by }, Trim = edition.Trim with { ForeEdge = edition.Trim.ForeEdge + by } };
            if (Reached(changed) is { } at)
            {
                return new TrimmedMore(edge, by, at.Edition, at.Copy, at.Posted, at.Saves, at.InHand);
            }
        }

        return null;
    }

    private FewerPages? WithFewerPages()
    {
        FewerPages? fewest = null;
        foreach (var place in Enumerable.Range(0, ready.Job.Edition.Parts.Count).OrderByDescending(place => ready.Job.Edition.Parts[place].Pages))
        {
            var most = ready.Job.Edition.Parts[place].Pages / PagesOverMost;
            var unit = BindingRules.PagesPerPiece(ready.Job.Edition.Binding, place);
            for (var by = unit; by <= most && by < (fewest?.By ?? int.MaxValue); by += unit)
            {
                if (Reached(WithPart(place, part => part with { Pages = part.Pages - by })) is { } at)
                {
                    fewest = new FewerPages(place, by, at.Edition, at.Copy, at.Posted, at.Saves, at.InHand);
                }
            }
        }

        return fewest;
    }

    private LighterPaper? OnLighterPaper(int place, IEnumerable<string> papers)
    {
        var own = stocks[ready.Job.Edition.Parts[place].StockId].Weight.GramsPerSquareMetre;
        foreach (var id in papers.Where(id => stocks[id].Weight.GramsPerSquareMetre < own).OrderByDescending(id => stocks[id].Weight.GramsPerSquareMetre))
        {
            if (Reached(WithPart(place, part => part with { StockId = id })) is { } at)
            {
                return new LighterPaper(place, id, at.Edition, at.Copy, at.Posted, at.Saves, at.InHand);
            }
        }

        return null;
    }

    private Edition WithPart(int place, Func<Part, Part> change)
    {
        var edition = ready.Job.Edition;
        return edition with { Parts = [.. edition.Parts.Select((part, at) => at == place ? change(part) : part)] };
    }

    // The book with a change, where its piece is posted for less.
    private (Edition Edition, CopyEstimate Copy, PostageChoice Posted, decimal? Saves, decimal? InHand)? Reached(Edition changed)
    {
        // A scale's word stays, less what the reckoned copy loses.
        var block = BookBlock.Of(changed, stocks);
        var edition = changed with { Weighed = changed.Weighed?.Changed(ready.Block, block) };
        var copy = CopyEstimate.Of(block, edition.Weighed, ready.Job.Bench.FittingsMass);
        var posted = PostageTable.Choose(services, "", mailer, copy, copies);
        if (posted.Price is not { } price || price >= Now.Price)
        {
            return null;
        }

        var prepared = PreparedJob.Prepare(ready.Job with { Edition = edition });
        return (edition, copy, posted, Now.Price - price, prepared.Succeeded ? CostInHand(prepared.Value, posted) : null);
    }

    private decimal? CostInHand(PreparedJob job, PostageChoice posted) =>
        job.LandedCost(job.Job.Quantity, out var landed) is null ? mailer.InHand(new Rung(job.Job.Quantity, landed).UnitCost, posted, copies) : null;
}
