using System.Globalization;
using Microsoft.EntityFrameworkCore;
using PressRun.Engine.Costing;

namespace PressRun.Data.Titles;

/// <summary>What an edition must keep to be stored. Rules of binding and pages are the engine's, and are told where the run is costed: an
/// edition that breaks them for the moment is still kept.</summary>
internal static class EditionRules
{
    public static async Task<List<Problem>> CheckAsync(PressRunDbContext db, EditionRecord edition, CancellationToken cancel)
    {
        var problems = new List<Problem>();
        Range(problems, "$.printing", edition.Printing, 1, 1000, "Printings count from 1.");
        Range(problems, "$.copiesOnHand", edition.CopiesOnHand, 0, Job.MostCopies, "Copies on hand are 0 to 1,000,000.");
        Range(problems, "$.copiesPrinted", edition.CopiesPrinted ?? 0, 0, Job.MostCopies, "Copies printed are 0 to 1,000,000.");
        Range(problems, "$.freeCopies", edition.FreeCopies, 0, Job.MostCopies, "Free copies are 0 to 1,000,000.");
        if (edition.Price < 0m)
        {
            problems.Add(new Problem("$.price", edition.Price.ToString(CultureInfo.InvariantCulture), "A price is 0 or more."));
        }

        await PartsAsync(problems, db, edition.Parts, cancel);
        return problems;
    }

    private static async Task PartsAsync(List<Problem> problems, PressRunDbContext db, IReadOnlyList<EditionPart> parts, CancellationToken cancel)
    {
        if (parts.Count == 0)
        {
            problems.Add(new Problem("$.parts", null, "An edition has at least one part."));
        }

        var used = parts.Select(part => part.Part.StockId).Distinct().ToList();
        var known = await db.Stocks.Where(stock => used.Contains(stock.Id)).Select(stock => stock.Id).ToListAsync(cancel);
        for (var index = 0; index < parts.Count; index++)
        {
            var part = parts[index].Part;
            if (string.IsNullOrWhiteSpace(part.Name))
            {
                problems.Add(new Problem($"$.parts[{index}].name", part.Name, "A part needs a name."));
            }
            else if (parts.Take(index).Any(earlier => earlier.Part.Name == part.Name))
            {
                problems.Add(new Problem($"$.parts[{index}].name", part.Name, "Each part of an edition has a name of its own."));
            }

            Range(problems, $"$.parts[{index}].pages", part.Pages, 1, Job.MostPages, "A part has 1 to 10,000 pages.");
            if (!known.Contains(part.StockId))
            {
                problems.Add(new Problem($"$.parts[{index}].stock", part.StockId, "Choose one of the press's stocks."));
            }
        }
    }

    private static void Range(List<Problem> problems, string path, int value, int least, int most, string rule)
    {
        if (value < least || value > most)
        {
            problems.Add(new Problem(path, value.ToString(CultureInfo.InvariantCulture), rule));
        }
    }
}
