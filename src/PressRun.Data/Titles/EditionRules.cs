using System.Globalization;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using PressRun.Data.Conversions;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.JobFile;
using PressRun.JobFile.Blocks;
using PressRun.JobFile.Reading;
using PressRun.JobFile.Writing;

namespace PressRun.Data.Titles;

/// <summary>What an edition must keep to be stored: the contract's ranges, known stocks, and a name of its own for each part. Rules of binding and
/// pages are the engine's, and are told where the run is costed: an edition that breaks them for the moment is still kept.</summary>
internal static class EditionRules
{
    public static async Task<List<Problem>> CheckAsync(PressRunDbContext db, EditionRecord edition, CancellationToken cancel)
    {
        var problems = new List<Problem>();
        Number(problems, "$.printing", edition.Printing, JobRules.Printing);
        Number(problems, "$.price", edition.Price, JobRules.Amount);
        Number(problems, "$.freeCopies", edition.FreeCopies, JobRules.CopiesOrNone);
        var stocks = await db.Stocks.Select(stock => stock.Id).ToHashSetAsync(cancel);
        problems.AddRange(Contract.Problems(
            json => EditionWriter.WriteMembers(json, edition.ToEdition(), Contract.NoCurrency),
            (element, path, found) => Read(element, path, stocks, found)));
        problems.AddRange(PartNames([.. edition.Parts.Select(part => part.Part.Name)]));
        problems.AddRange(SheetNames([.. edition.Parts.Select(part => part.Part)]));
        problems.AddRange(CostNames(edition.FixedCosts));
        return problems;
    }

    /// <summary>What is wrong with the names of costs; empty where nothing is.</summary>
    public static IEnumerable<Problem> CostNames(IReadOnlyList<FixedCost> costs) => LibraryRules.Names("fixedCosts", costs.Select(cost => cost.Name));

    /// <summary>What is wrong with the names of sheets that parts ask for; empty where nothing is.</summary>
    public static IEnumerable<Problem> SheetNames(IReadOnlyList<Part> parts) => parts.SelectMany((part, index) => LibraryRules.Still($"$.parts[{index}].sheet", part.SheetId ?? ""));

    /// <summary>Parts without a name of their own, by which plans and people tell them apart; empty where there are none.</summary>
    public static List<Problem> PartNames(IReadOnlyList<string> names)
    {
        var problems = new List<Problem>();
        foreach (var (index, name) in names.Index())
        {
            problems.AddRange(LibraryRules.Still($"$.parts[{index}].name", name));
            if (!PlainText.Shows(name) || names.Take(index).Contains(name))
            {
                problems.Add(new Problem($"$.parts[{index}].name", name, "Each part of an edition has a name of its own."));
            }
        }

        return problems;
    }

    /// <summary>What holds printings in place: lines of their ledgers, quotes that were frozen of them, and what was paid out of their sales.</summary>
    /// <param name="db">The press's rows.</param>
    /// <param name="printings">The printings by their ids.</param>
    /// <param name="cancel">Gives up waiting.</param>
    public static async Task<List<string>> UsesAsync(PressRunDbContext db, IReadOnlyDictionary<Guid, int> printings, CancellationToken cancel)
    {
        var moved = await db.CopyMovements.Where(line => printings.Keys.Contains(line.EditionId)).Select(line => line.EditionId).Distinct().ToListAsync(cancel);
        var quoted = await db.Quotes.Where(quote => printings.Keys.Contains(quote.EditionId)).OrderBy(quote => quote.Number)
            .Select(quote => new { quote.EditionId, quote.Number }).ToListAsync(cancel);
        var paid = await db.EditionPayments.Where(payment => printings.Keys.Contains(payment.EditionId)).Select(payment => payment.EditionId).Distinct().ToListAsync(cancel);
        var tallied = await db.Tallies.Where(tally => tally.Lines > 0 && printings.Keys.Contains(tally.EditionId)).Select(tally => tally.EditionId).Distinct().ToListAsync(cancel);
        return
        [
            .. moved.Select(id => printings[id]).Order().Select(printing => string.Create(CultureInfo.InvariantCulture, $"printing {printing}: lines in its copies ledger")),
            .. tallied.Select(id => printings[id]).Order().Select(printing => string.Create(CultureInfo.InvariantCulture, $"printing {printing}: a tally of its table")),
            .. quoted.Select(quote => string.Create(CultureInfo.InvariantCulture, $"printing {printings[quote.EditionId]}: quote {quote.Number}")),
            .. paid.Select(id => printings[id]).Order().Select(printing => string.Create(CultureInfo.InvariantCulture, $"printing {printing}: payments out of its sales")),
        ];
    }

    private static void Read(JsonElement element, JsonPath path, IReadOnlySet<string> stocks, ProblemList problems)
    {
        if (JsonBlock.Open(element, path, problems, "Write an edition.") is { } block)
        {
            EditionBlock.Read(block, "", 1, stocks);
        }
    }

    private static void Number(List<Problem> problems, string path, decimal value, NumberRule rule)
    {
        if (!rule.Holds(value))
        {
            problems.Add(new Problem(path, value.ToString(CultureInfo.InvariantCulture), rule.Sentence));
        }
    }
}
