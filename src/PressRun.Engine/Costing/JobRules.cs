using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Costing;

/// <summary>Rules that hold across the fields of a job.</summary>
internal static class JobRules
{
    // Every part is tried on every sheet at every quantity.
    private const int MostPartsBySheets = 10_000;

    public static void Check(Job job, List<Problem> problems)
    {
        BindingRules.Check(job.Edition, problems);
        CheckPage(job.Edition, problems);
        CheckStocks(job, problems);
        if (job.Shop.ValidFrom > job.Date)
        {
            problems.Add(new Problem(
                "$.shop.validFrom", Text.Date(job.Shop.ValidFrom), $"The price list must be in force on the job's date, {Text.Date(job.Date)}."));
        }

        if ((long)job.Shop.Sheets.Count * job.Edition.Parts.Count > MostPartsBySheets)
        {
            problems.Add(new Problem(
                "$.shop.sheets", Text.Of(job.Shop.Sheets.Count),
                $"Parts times sheet sizes are at most {MostPartsBySheets}; leave out the sheets that this edition does not use."));
        }

        CheckQuantity(job.Quantity, "$.quantity", problems);
        CheckSpoilage(job.Shop.Spoilage, "$.shop.spoilage", problems);
        for (var index = 0; index < job.Bench.Steps.Count; index++)
        {
            CheckSpoilage(job.Bench.Steps[index].Spoilage, $"$.bench.steps[{index}].spoilage", problems);
        }

        var mailers = job.Mailers.Select(mailer => mailer.Id).ToHashSet(StringComparer.Ordinal);
        for (var index = 0; index < job.Channels.Count; index++)
        {
            if (job.Channels[index].MailerId is { } mailer && !mailers.Contains(mailer))
            {
                problems.Add(new Problem($"$.channels[{index}].mailer", mailer, "There is no mailer with this id."));
            }
        }
    }

    public static void CheckQuantity(long quantity, string path, List<Problem> problems)
    {
        if (quantity is < 1 or > Job.MostCopies)
        {
            problems.Add(new Problem(path, Text.Of(quantity), $"A run has 1 to {Job.MostCopies} good copies."));
        }
    }

    /// <summary>What a shop that sells whole books cannot do.</summary>
    public static void CheckWholeBooks(Shop shop, List<Problem> problems)
    {
        if (shop.Delivers is Delivered.FlatSheets or Delivered.CutPieces)
        {
            problems.Add(new Problem(
                "$.shop.delivers", shop.Delivers == Delivered.FlatSheets ? "flatSheets" : "cutPieces",
                "A shop that is paid for whole books delivers trimmedCopies or untrimmedCopies."));
        }

        for (var index = 0; index < shop.Finishing.Count; index++)
        {
            if (shop.Finishing[index].Per == FinishingUnit.Sheet)
            {
                problems.Add(new Problem(
                    $"$.shop.finishing[{index}].per", "sheet", "Whole books have no sheets to count; use copy, piece, cut or edition."));
            }
        }
    }

    private static void CheckPage(Edition edition, List<Problem> problems)
    {
        Positive(edition.Page.Width, "$.edition.page.width");
        Positive(edition.Page.Height, "$.edition.page.height");

        void Positive(Length side, string path)
        {
            if (side <= Length.Zero)
            {
                problems.Add(new Problem(path, Text.Mm(side), "A page side is longer than 0."));
            }
        }
    }

    private static void CheckStocks(Job job, List<Problem> problems)
    {
        foreach (var stock in job.Stocks.Where(stock => stock.CaliperIsEstimated && stock.Finish is null))
        {
            problems.Add(new Problem(
                $"$.stocks['{stock.Id}']", stock.Name, "A stock needs a caliper, a bulk or at least a finish, to know how thick it is."));
        }

        var stocks = job.Stocks.Select(stock => stock.Id).ToHashSet(StringComparer.Ordinal);
        for (var index = 0; index < job.Edition.Parts.Count; index++)
        {
            var part = job.Edition.Parts[index];
            if (!stocks.Contains(part.StockId))
            {
                problems.Add(new Problem($"$.edition.parts[{index}].stock", part.StockId, "There is no stock with this id."));
            }
        }

        CheckSecondHalf(job, stocks, problems);
    }

    private static void CheckSecondHalf(Job job, HashSet<string> stocks, List<Problem> problems)
    {
        if (job.SecondHalf is not { } half)
        {
            return;
        }

        if (half.Part < 0 || half.Part >= job.Edition.Parts.Count)
        {
            problems.Add(new Problem("$.halves.part", Text.Of(half.Part), "The edition has no such part."));
        }
        else if (!stocks.Contains(half.StockId))
        {
            problems.Add(new Problem("$.halves.second", half.StockId, "There is no stock with this id."));
        }
        else if (job.Edition.Parts[half.Part].StockId == half.StockId)
        {
            problems.Add(new Problem("$.halves.second", half.StockId, "Both halves would be on one stock; name another one for the second, or leave the halves out."));
        }
    }

    private static void CheckSpoilage(decimal spoilage, string path, List<Problem> problems)
    {
        if (spoilage is < 0m or >= 1m)
        {
            problems.Add(new Problem(path, Text.Exact(spoilage), "Spoilage is at least 0 and less than 1; at 1 no copy would survive."));
        }
    }
}
