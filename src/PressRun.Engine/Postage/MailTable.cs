using PressRun.Engine.Costing;
using PressRun.Engine.Editions;

namespace PressRun.Engine.Postage;

/// <summary>Copies of an edition in a mailer to a region.</summary>
/// <param name="Region">Where they go.</param>
/// <param name="Mailer">What they lie in.</param>
/// <param name="Copies">How many, at least 1.</param>
/// <param name="Lies">True where the page lies in the mailer.</param>
/// <param name="Choice">How they are posted; its channel is empty.</param>
/// <param name="Cost">Mailer and postage of the piece; null where no service takes it.</param>
/// <param name="HeadroomLeaves">Leaves of each part's stock that every copy could have more.</param>
public sealed record MailedCopies(
    string Region, Mailer Mailer, int Copies, bool Lies, PostageChoice Choice, decimal? Cost, IReadOnlyList<int> HeadroomLeaves)
{
    /// <summary>Mailer and postage of one copy, not rounded; null where no service takes the piece.</summary>
    public decimal? CostPerCopy => Cost / Copies;

    /// <summary>Whole leaves that a part of every copy can gain, in the binding's own steps; 0 where the job has no such part.</summary>
    /// <param name="binding">The edition's binding.</param>
    /// <param name="part">Place of the part from the outside in, from 0.</param>
    public int LeavesToSpare(Binding binding, int part) => part < HeadroomLeaves.Count ? RoomToGrow.Leaves(binding, part, HeadroomLeaves[part]) : 0;

    /// <summary>True among the mailers that the page lies in for the one in which these copies go to the region at the lowest cost; the first of equals.</summary>
    public bool Cheapest { get; init; }
}

/// <summary>What copies of an edition cost to post, mailer by mailer.</summary>
public static class MailTable
{
    /// <summary>Every region that the services in force go to, in every mailer, so many copies at a time.</summary>
    /// <param name="ready">The job; its copy is posted.</param>
    /// <param name="mailers">What is offered, in this order.</param>
    /// <param name="copies">Copies of a piece, each at least 1.</param>
    /// <returns>Regions in the order of their first service; in each, for each number of copies, the mailers.</returns>
    public static IReadOnlyList<MailedCopies> Of(PreparedJob ready, IReadOnlyList<Mailer> mailers, IReadOnlyList<int> copies) =>
    [
        .. from region in PostageTable.InForce(ready.Job.Postage, ready.Job.Date).GroupBy(service => service.Region, StringComparer.Ordinal)
           from count in copies
           from mailed in Marked([.. mailers.Select(mailer => Of(ready, [.. region], region.Key, mailer, count))])
           select mailed,
    ];

    private static MailedCopies Of(PreparedJob ready, IReadOnlyList<PostageService> services, string region, Mailer mailer, int copies)
    {
        var choice = PostageTable.Choose(services, "", mailer, ready.Copy, copies);
        return new MailedCopies(
            region, mailer, copies, mailer.Holds(ready.Job.Edition.Page), choice, mailer.Piece(choice), LeafRoom.Of(ready.Block, choice, copies));
    }

    private static IEnumerable<MailedCopies> Marked(IReadOnlyList<MailedCopies> mailed)
    {
        var cheapest = mailed.Where(one => one.Lies && one.Cost is not null).MinBy(one => one.Cost);
        return mailed.Select(one => one == cheapest ? one with { Cheapest = true } : one);
    }
}
