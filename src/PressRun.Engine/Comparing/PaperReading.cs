using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;

namespace PressRun.Engine.Comparing;

/// <summary>An edition on certain papers, seen through one way of selling at one quantity.</summary>
/// <param name="StockIds">Stock of each part, in order.</param>
/// <param name="UnitCost">Landed cost of a copy, not rounded.</param>
/// <param name="InHand">A copy in the reader's hands, not rounded; the unit cost where nothing is posted or packed; null where no service takes the piece.</param>
/// <param name="Copy">A copy.</param>
/// <param name="Freight">What the shop sends.</param>
/// <param name="Postage">How the piece is posted; null where nothing is.</param>
/// <param name="HeadroomLeaves">Leaves of each part's stock that every copy could have more within its postage step; empty where nothing is posted.</param>
public sealed record PaperRow(
    IReadOnlyList<string> StockIds,
    decimal UnitCost,
    decimal? InHand,
    CopyEstimate Copy,
    FreightEstimate Freight,
    PostageChoice? Postage,
    IReadOnlyList<int> HeadroomLeaves);

/// <summary>A step of a service that copies of these papers meet, as a mass of one copy.</summary>
/// <param name="ServiceId">The service.</param>
/// <param name="CopyMass">Most that a copy weighs in this step.</param>
/// <param name="Price">Postage of a piece up to it.</param>
public sealed record PostageLine(string ServiceId, Mass CopyMass, decimal Price);

/// <summary>From the papers that the others are told from to the next heavier paper of one part.</summary>
/// <param name="Part">Place of the part, from 0.</param>
/// <param name="To">The same book on that paper.</param>
/// <param name="CostsMore">What a copy in the reader's hands costs more; null where either cannot be posted.</param>
/// <param name="PostageMore">What the piece's postage costs more; null where nothing is posted or either cannot be.</param>
public sealed record StepUp(int Part, PaperRow To, decimal? CostsMore, decimal? PostageMore);

/// <summary>What papers side by side say at one quantity through one way of selling.</summary>
/// <param name="Rows">As in the comparison.</param>
/// <param name="Now">The papers that the edition has; null where they are not among the rows.</param>
/// <param name="Cheapest">Lowest cost in the reader's hands; the first of equals.</param>
/// <param name="Lightest">Lightest copy; the first of equals.</param>
/// <param name="KeepsStep">The heaviest copy that is posted no dearer than <see cref="Start"/>; of equals the cheapest. Null where nothing is posted.</param>
/// <param name="FirstOver">The lightest copy that is posted dearer than <see cref="Start"/>, or not at all; null where there is none.</param>
/// <param name="OverBecause">Limits of the service of <see cref="Start"/> that <paramref name="FirstOver"/> breaks; empty where its mass alone reaches a dearer step.</param>
/// <param name="StepsUp">For each part the next heavier paper among the rows, all else as in <see cref="Start"/>.</param>
/// <param name="Lines">Postage steps between the lightest and the heaviest copy and the next one beyond, by rising mass.</param>
public sealed record PaperReading(
    IReadOnlyList<PaperRow> Rows,
    PaperRow? Now,
    PaperRow Cheapest,
    PaperRow Lightest,
    PaperRow? KeepsStep,
    PaperRow? FirstOver,
    IReadOnlyList<RefusedService> OverBecause,
    IReadOnlyList<StepUp> StepsUp,
    IReadOnlyList<PostageLine> Lines)
{
    /// <summary>From where the others are told: the papers of now, or the cheapest where those are not among the rows.</summary>
    public PaperRow Start => Now ?? Cheapest;

    /// <summary>Reads a comparison.</summary>
    /// <param name="job">The job that was compared.</param>
    /// <param name="comparison">Its papers side by side.</param>
    /// <param name="channelId">The channel that posts; null, or one that does not, for the unit cost alone.</param>
    /// <param name="quantity">One of the comparison's quantities.</param>
    /// <returns>Null where none of the papers can be printed at that quantity.</returns>
    public static PaperReading? Of(Job job, StockComparison comparison, string? channelId, int quantity)
    {
        var rows = comparison.Rows.Where(row => row.Estimate.Quantity == quantity).Select(row => RowOf(row, channelId)).ToList();
        if (rows.Count == 0)
        {
            return null;
        }

        var own = job.Edition.Parts.Select(part => part.StockId).ToList();
        var now = rows.Find(row => row.StockIds.SequenceEqual(own, StringComparer.Ordinal));
        var lightest = rows.MinBy(row => row.Copy.Mass.Grams)!;
        var cheapest = rows.Where(row => row.InHand is not null).MinBy(row => row.InHand) ?? rows.MinBy(row => row.UnitCost)!;
        var start = now ?? cheapest;
        var limit = start.Postage;
        var over = limit?.Price is { } most ? rows.Where(row => row.Postage?.Price is not { } own || own > most).MinBy(row => row.Copy.Mass.Grams) : null;
        return new PaperReading(
            rows,
            now,
            cheapest,
            lightest,
            limit?.Price is { } price
                ? rows.Where(row => row.Postage?.Price <= price).OrderByDescending(row => row.Copy.Mass.Grams).ThenBy(row => row.InHand).FirstOrDefault()
                : null,
            over,
            over is null || limit?.ServiceId is not { } service ? [] : Broken(comparison, over, channelId, quantity, service),
            [.. Enumerable.Range(0, own.Count).Select(part => Up(rows, start, part)).OfType<StepUp>()],
            PostageLines(job, channelId, rows));
    }

    // Rows let go of what refuses them, thousands of times the same; it is looked up again for the one row of which it is told.
    private static List<RefusedService> Broken(StockComparison comparison, PaperRow row, string? channelId, int quantity, string serviceId) =>
    [
        .. comparison.Rows.First(compared => compared.Estimate.Quantity == quantity && ReferenceEquals(compared.StockIds, row.StockIds))
            .InHand.First(way => way.ChannelId == channelId).Postage!.Refused.Where(refused => refused.ServiceId == serviceId),
    ];

    private static PaperRow RowOf(ComparedRow row, string? channelId)
    {
        var (estimate, inHand) = (row.Estimate, row.InHand.FirstOrDefault(way => way.ChannelId == channelId));
        return new PaperRow(
            row.StockIds,
            estimate.UnitCost,
            inHand is null ? estimate.UnitCost : inHand.Cost,
            estimate.Copy,
            estimate.Freight,
            inHand?.Postage is { } postage ? postage with { Refused = [] } : null,
            inHand?.HeadroomLeaves ?? []);
    }

    private static StepUp? Up(List<PaperRow> rows, PaperRow start, int part)
    {
        var next = rows
            .Where(row => row.Copy.Mass > start.Copy.Mass && !row.StockIds.Where((id, at) => at != part && id != start.StockIds[at]).Any())
            .OrderBy(row => row.Copy.Mass.Grams).ThenBy(row => row.InHand).FirstOrDefault();
        return next is null ? null : new StepUp(part, next, next.InHand - start.InHand, next.Postage?.Price - start.Postage?.Price);
    }

    // A step counts where a copy of just that mass, as thick as the nearest row, would take it.
    private static List<PostageLine> PostageLines(Job job, string? channelId, List<PaperRow> rows)
    {
        if (job.Channels.FirstOrDefault(channel => channel.Id == channelId) is not { MailerId: { } mailerId, PostageRegion: { } region } posts)
        {
            return [];
        }

        var mailer = job.Mailers.First(candidate => candidate.Id == mailerId);
        var services = PostageTable.InForce(job.Postage, job.Date).Where(service => service.Region == region).ToList();
        var lines = new List<PostageLine>();
        foreach (var service in services.Where(service => rows.Exists(row => row.Postage?.ServiceId == service.Id)))
        {
            foreach (var step in service.Steps.Where(step => step.Most > mailer.Mass))
            {
                var mass = Mass.FromGrams((step.Most - mailer.Mass).Grams / posts.CopiesPerOrder);
                var nearest = rows.MinBy(row => Math.Abs((row.Copy.Mass - mass).Grams))!.Copy;
                var choice = PostageTable.Choose(services, posts.Id, mailer, nearest with { Mass = mass }, posts.CopiesPerOrder);
                if (choice.ServiceId == service.Id)
                {
                    lines.Add(new PostageLine(service.Id, mass, step.Price));
                }
            }
        }

        var (from, to) = (rows.Min(row => row.Copy.Mass.Grams), rows.Max(row => row.Copy.Mass.Grams));
        var inOrder = lines.Where(line => line.CopyMass.Grams >= from).OrderBy(line => line.CopyMass.Grams).ToList();
        var beyond = inOrder.FindIndex(line => line.CopyMass.Grams >= to);
        return beyond < 0 ? inOrder : inOrder[..(beyond + 1)];
    }
}
