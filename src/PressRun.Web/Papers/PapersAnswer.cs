using PressRun.Data.RunPlans;
using PressRun.Engine.Comparing;
using PressRun.Engine.Costing;
using PressRun.JobFile.Results;
using PressRun.Web.Api;
using PressRun.Web.RunPlans;
using PressRun.Web.Shared;

namespace PressRun.Web.Papers;

/// <summary>Why some combinations cannot be printed.</summary>
/// <param name="Rule">The reason.</param>
/// <param name="Count">How many of them.</param>
/// <param name="Example">Stocks of one of them.</param>
public sealed record RefusedPapers(string Rule, int Count, IReadOnlyList<string> Example);

/// <summary>Papers side by side for a plan.</summary>
/// <param name="Job">The plan's job with the papers tried.</param>
/// <param name="Combinations">How many combinations were asked for.</param>
/// <param name="Readings">By quantity; null where nothing can be printed at it.</param>
/// <param name="Refused">What cannot be printed.</param>
/// <param name="Problem">Why nothing was compared; null where it was.</param>
public sealed record PapersAnswer(
    Job Job, int Combinations, IReadOnlyDictionary<int, PaperReading?> Readings, IReadOnlyList<RefusedPapers> Refused, string? Problem)
{
    /// <summary>Most combinations, at all quantities together, that a page compares: fourteen papers on each of three parts and a little more.</summary>
    public const int Most = 3_000;

    /// <summary>True where more was chosen than <see cref="Most"/>, and nothing was compared.</summary>
    public bool TooMany { get; private init; }

    /// <summary>Compares what was chosen; the plan's own papers are among what is compared but for those that are left out.</summary>
    public static PapersAnswer Of(JobSource source, PaperChoice choice)
    {
        var job = source.BuildToTry(choice.Tried.Values.SelectMany(ids => ids));
        var choices = choice.Tried.OrderBy(part => part.Key)
            .Select(part => new StockChoice(part.Key, choice.On(part.Key, job.Edition.Parts[part.Key].StockId))).ToList();
        var combinations = choices.Aggregate(1L, (count, part) => Math.Min(count * part.StockIds.Count, int.MaxValue / PaperChoice.MostQuantities));
        if (combinations * choice.Quantities.Count > Most)
        {
            return Nothing(job, (int)combinations, null) with { TooMany = true };
        }

        var request = new ComparisonRequest(choices, [], choice.Quantities);
        if (JobEffort.Of(JobQuestion.Compare, job with { Compare = request }) > CostingEffort.MostOfPage)
        {
            return Nothing(job, (int)combinations, CostingEffort.TooLong);
        }

        var compared = StockComparer.Compare(job, request);
        return compared.Succeeded
            ? new PapersAnswer(
                job,
                (int)combinations,
                choice.Quantities.ToDictionary(quantity => quantity, quantity => PaperReading.Of(job, compared.Value, choice.ChannelId, quantity)),
                Grouped(compared.Value.Refused),
                null)
            : Nothing(job, (int)combinations, Words.Standing(compared.Problems));
    }

    /// <summary>Half of a plan's run on each of two papers.</summary>
    /// <param name="source">The plan.</param>
    /// <param name="part">Place of the part, from 0.</param>
    /// <param name="first">Paper of the first half.</param>
    /// <param name="second">Paper of the second half.</param>
    /// <param name="quantity">Good copies of the whole run.</param>
    public static Outcome<HalvesReading> Halves(JobSource source, int part, string first, string second, int quantity) =>
        HalvesReading.Of(source.BuildToTry([first, second]), new HalvesChoice(part, first, second), quantity);

    private static PapersAnswer Nothing(Job job, int combinations, string? problem) =>
        new(job, combinations, new Dictionary<int, PaperReading?>(), [], problem);

    private static List<RefusedPapers> Grouped(IReadOnlyList<RefusedCombination> refused) =>
    [
        .. refused.SelectMany(combination => combination.Problems.Select(problem => (problem.Rule, combination.StockIds)))
            .GroupBy(one => one.Rule, StringComparer.Ordinal)
            .Select(group => new RefusedPapers(group.Key, group.Count(), group.First().StockIds)),
    ];
}
