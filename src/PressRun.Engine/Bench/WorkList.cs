using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Bench;

/// <summary>A step of the work on one run.</summary>
/// <param name="Number">In the order of work, from 1.</param>
/// <param name="Kind">What is done.</param>
/// <param name="Name">The press's own name for it, by which its rates are learned; null where its table names no such step and the book needs it.</param>
/// <param name="Copies">
/// Copies that go in: those started, less what the shop and the earlier steps usually spoil, rounded up; never below the good copies wanted.
/// </param>
/// <param name="Spoilage">Part of them that usually goes wrong here, 0 up to but not including 1.</param>
/// <param name="Minutes">What it takes by the press's rates, with its set-up, for all copies started; null where it has no rates.</param>
public sealed record WorkStep(int Number, WorkKind Kind, string? Name, long Copies, decimal Spoilage, decimal? Minutes);

/// <summary>
/// The work at the press's table in order. Steps of the table stay in the table's own order with their own names; what the book needs, and neither the table
/// nor the shop's finishing names, is put where the trade does it, so that the list ends with finished books.
/// </summary>
public static class WorkList
{
    /// <summary>The steps of a run; where the shop binds, only what the plan leaves for the table.</summary>
    /// <param name="prepared">The run's job.</param>
    /// <param name="copiesToStart">Copies started, 1 or more.</param>
    /// <param name="goodCopies">Copies wanted, 1 or more.</param>
    /// <param name="scored">True where a part is too heavy to be folded without a scored line.</param>
    public static IReadOnlyList<WorkStep> Of(PreparedJob prepared, long copiesToStart, int goodCopies, bool scored)
    {
        var work = prepared.StepsAtTable.Zip(prepared.BenchSteps(copiesToStart))
            .Select(step => (Kind: Work.Named(step.First.Name), Rated: (BenchStep?)step.First, Minutes: (decimal?)step.Second.Minutes)).ToList();
        foreach (var kind in Missing(prepared, work.Select(step => step.Kind), scored))
        {
            work.Insert(PlaceOf(kind, work.ConvertAll(step => step.Kind), prepared.Job.Edition.Binding), (kind, null, null));
        }

        var steps = new List<WorkStep>(work.Count);
        var left = copiesToStart * (1m - prepared.Job.Shop.Spoilage);
        foreach (var (kind, rated, minutes) in work)
        {
            var copies = Math.Max(goodCopies, (long)decimal.Ceiling(left));
            var spoilage = rated?.Spoilage ?? 0m;
            steps.Add(new WorkStep(steps.Count + 1, kind, rated?.Name, copies, spoilage, minutes));
            left *= 1m - spoilage;
        }

        return steps;
    }

    /// <summary>Work that a run needs and that neither the press's table nor the shop's finishing names: it has no rates, and no cost has its hours in it.
    /// Lying under weight is left out, which takes nobody's time.</summary>
    /// <param name="prepared">The run's job.</param>
    /// <param name="scored">True where a part is too heavy to be folded without a scored line.</param>
    public static IReadOnlyList<WorkKind> Unrated(PreparedJob prepared, bool scored) =>
        [.. Missing(prepared, prepared.StepsAtTable.Select(step => Work.Named(step.Name)), scored).Where(kind => kind != WorkKind.Press)];

    // Packing, jogging and a step of one's own are never needed for a book; the rest is, as far as the book asks for it.
    private static IEnumerable<WorkKind> Missing(PreparedJob prepared, IEnumerable<WorkKind> present, bool scored)
    {
        // A list says what a shop hands over when it does all of the work: a table that trims was not handed trimmed copies.
        var atTable = present.ToHashSet();
        if (!prepared.BoundAtHome || (prepared.Delivers == Delivered.TrimmedCopies && !atTable.Contains(WorkKind.Trim)))
        {
            return [];
        }

        var (edition, trim, bound) = (prepared.Job.Edition, prepared.Job.Edition.Trim, prepared.Delivers == Delivered.UntrimmedCopies);
        var done = atTable.Concat(Work.SoldBy(prepared.Job.Shop)).ToHashSet();
        if (edition.Binding == Binding.Loose && done.Contains(WorkKind.CutApart))
        {
            // Prints that are cut to size are finished.
            done.Add(WorkKind.Trim);
        }

        return Work.Order(edition.Binding).Where(kind => !done.Contains(kind) && kind switch
        {
            WorkKind.Trim => trim.EdgeCount > (trim.Spine > Length.Zero && edition.Binding != Binding.Loose ? 1 : 0),
            _ when bound => false,
            WorkKind.CutApart => prepared.Delivers == Delivered.FlatSheets,
            WorkKind.Score => scored,
            WorkKind.Collate => !prepared.ShopCollates && prepared.Block.PiecesPerCopy > 1,
            WorkKind.TrimSpine => trim.Spine > Length.Zero,
            WorkKind.Jog or WorkKind.Pack => false,
            _ => true,
        });
    }

    // Before the first step that the trade does later; steps of one's own stay where they are.
    private static int PlaceOf(WorkKind kind, List<WorkKind> present, Binding binding)
    {
        var order = Work.Order(binding).ToList();
        var rank = order.IndexOf(kind);
        var later = present.FindIndex(other => order.IndexOf(other) > rank);
        return later < 0 ? present.Count : later;
    }
}
