using System.Globalization;
using PressRun.Data.RunPlans;
using PressRun.Engine.Costing;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.RunPlans;

/// <summary>What stands in the way of a plan, in the press's own names, and where it is mended.</summary>
/// <param name="Words">A sentence.</param>
/// <param name="MendAt">The page on which it is mended, relative to the app.</param>
/// <param name="MendWords">What the link to it says.</param>
public sealed record PlanProblem(string Words, string MendAt, string MendWords)
{
    private const string Parts = "$.edition.parts[";

    /// <summary>The words of a problem.</summary>
    /// <param name="problem">As the costing says it, with the file's ids.</param>
    /// <param name="source">What was costed.</param>
    /// <param name="editionAddress">Page of the printing.</param>
    /// <param name="format">How figures are written.</param>
    public static PlanProblem Of(Problem problem, JobSource source, string editionAddress, PressFormat format)
    {
        var list = $"shops/{source.Plan.ShopId}?list={source.Plan.PriceListId}";
        var words = Named(SayWhole(problem.Rule), source, format);
        return problem.Path switch
        {
            // That no sheet takes a part is told of the part, and is mostly a price that the list lacks.
            var path when PartOf(path, source) is { } part && problem.Value == part => new PlanProblem($"{Capital(part)}: {words}", list, Say($"Open the price list")),
            var path when PartOf(path, source) is { } part => new PlanProblem($"{Capital(part)}: {words}", editionAddress, Say($"Change the book")),
            var path when Starts(path, "$.shop") => new PlanProblem(words, list, Say($"Open the price list")),
            var path when Starts(path, "$.stocks") => new PlanProblem(problem.Value is { } paper ? $"{paper}: {words}" : words, "papers", Say($"Open the papers")),
            var path when Starts(path, "$.bench") => new PlanProblem(words, "bench", Say($"Open your table")),
            var path when Starts(path, "$.channels") => new PlanProblem(words, "selling", Say($"Open the ways of selling")),
            var path when Starts(path, "$.mailers") || Starts(path, "$.postage") => new PlanProblem(words, "post", Say($"Open the post")),
            var path when Starts(path, "$.edition") => new PlanProblem(words, editionAddress, Say($"Change the book")),
            _ => new PlanProblem(words, list, Say($"Open the price list")),
        };
    }

    private static bool Starts(string path, string block) => path.StartsWith(block, StringComparison.Ordinal);

    private static string? PartOf(string path, JobSource source) =>
        Starts(path, Parts)
        && int.TryParse(path[Parts.Length..path.IndexOf(']', StringComparison.Ordinal)], NumberStyles.None, CultureInfo.InvariantCulture, out var place)
        && place < source.Edition.Parts.Count
            ? source.Edition.Parts[place].Part.Name
            : null;

    private static string Capital(string name) => name.Length == 0 ? name : char.ToUpperInvariant(name[0]) + name[1..];

    // The costing names papers and sheets by the ids of the file, in quotes.
    private static string Named(string rule, JobSource source, PressFormat format)
    {
        foreach (var stock in source.Stocks)
        {
            rule = rule.Replace($"'{stock.Id}'", stock.Name, StringComparison.Ordinal);
        }

        foreach (var sheet in source.PriceList.Sheets)
        {
            rule = rule.Replace($"'{sheet.Id}'", format.Size(new(sheet.Width, sheet.Height)), StringComparison.Ordinal);
        }

        return rule;
    }
}
