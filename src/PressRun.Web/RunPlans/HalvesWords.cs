using PressRun.Engine.Costing;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.RunPlans;

/// <summary>Words for a run of which each half has a part on a paper of its own.</summary>
public static class HalvesWords
{
    /// <summary>What a part is printed on: its paper, or <c>75 copies on Cream, 75 on Blue</c>.</summary>
    /// <param name="job">The run.</param>
    /// <param name="part">Place of the part, from 0.</param>
    /// <param name="quantity">Good copies.</param>
    /// <param name="format">How figures are written.</param>
    public static string PaperOf(Job job, int part, int quantity, PressFormat format)
    {
        var first = NameOf(job, job.Edition.Parts[part].StockId);
        if (job.SecondHalf is not { } half || half.Part != part)
        {
            return first;
        }

        var (copies, others) = SecondHalf.Copies(quantity);
        return Say($"{Words.Copies(copies, format.Count)} on {first}, {format.Count(others)} on {NameOf(job, half.StockId)}");
    }

    /// <summary>Which copies get which paper at the table; null where all copies are alike.</summary>
    /// <param name="prepared">The run.</param>
    /// <param name="estimate">The same at its quantity.</param>
    /// <param name="format">How figures are written.</param>
    public static string? AtTheTable(PreparedJob prepared, Estimate estimate, PressFormat format)
    {
        if (estimate.SecondHalf is not { } half)
        {
            return null;
        }

        var (job, started) = (prepared.Job, estimate.CopiesToStart);
        var part = job.Edition.Parts[half.Half.Part];
        return string.Join(' ',
            Say($"There are two kinds of copies: {format.Count(started - (started / 2))} have the {Apart.Of(part.Name)} on {NameOf(job, part.StockId)} and {format.Count(started / 2)} have it on {NameOf(job, half.Half.StockId)}."),
            prepared.BoundBy == BoundBy.Shop ? Say($"Keep them apart.") : Say($"Make one kind after the other and keep them apart until they are packed."));
    }

    /// <summary>How far the innermost leaf stands out before trimming: <c>2.0 mm</c>, or of halves that differ <c>2.0 mm in the first half of the run and 2.3 mm in the second</c>.</summary>
    public static string Creep(Estimate estimate, PressFormat format)
    {
        var first = format.Thickness(estimate.Copy.Creep).ToString();
        return estimate.SecondHalf is { Copy.Creep: var creep } && format.Thickness(creep).ToString() is var second && second != first
            ? Say($"{first} in the first half of the run and {second} in the second")
            : first;
    }

    /// <summary>The papers by which the halves of a run differ: the first half's, then the second's; none where all copies are alike.</summary>
    public static IReadOnlyList<string> Papers(Job job) =>
        job.SecondHalf is { } half ? [NameOf(job, job.Edition.Parts[half.Part].StockId), NameOf(job, half.StockId)] : [];

    private static string NameOf(Job job, string stockId) => Apart.Of(job.Stocks.First(stock => stock.Id == stockId).Name);
}
