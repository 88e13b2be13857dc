using PressRun.Engine.Comparing;
using PressRun.Engine.Costing;
using PressRun.JobFile.Results;

namespace PressRun.Web.Api;

/// <summary>Tells from a job, without working it out, whether it is a matter of milliseconds.</summary>
internal static class JobEffort
{
    // Of parts costed on a sheet: each takes about a microsecond, so that a short job is over within a few hundredths of a second.
    private const decimal MostOfShort = 20_000m;

    // A combination of papers is prepared anew and costed with all its lines.
    private const decimal CostingsOfCombination = 20m;

    /// <summary>True where the answer is worth waiting for among short jobs.</summary>
    public static bool IsShort(JobQuestion question, Job job) =>
        Costings(question, job) * job.Edition.Parts.Count * Math.Max(1, job.Shop.Sheets.Count) <= MostOfShort;

    // Combinations past the engine's own limit are refused before any work, so they need not be counted further.
    private static decimal Costings(JobQuestion question, Job job) => question switch
    {
        JobQuestion.Ladder when job.Ladder is { } range => range.Last - range.From + 1,
        JobQuestion.Reprint when job.Reprint is { } plan => ((plan.To - plan.From) / Math.Max(1, plan.Step)) + 1,
        JobQuestion.Compare when job.Compare is { } request => CostingsOfCombination * request.Quantities.Count * (Combinations(request) + (2 * request.Halves.Count)),
        _ => 1m,
    };

    private static decimal Combinations(ComparisonRequest request)
    {
        var combinations = 1m;
        foreach (var choice in request.Choices)
        {
            combinations = Math.Min(combinations * choice.StockIds.Count, ComparisonRequest.MostRows);
        }

        return combinations;
    }
}
