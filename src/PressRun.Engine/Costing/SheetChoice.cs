using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Costing;

/// <summary>A sheet that a part can be printed on, with the places of its prices in the list; -1 for an unprinted side.</summary>
internal readonly record struct SheetCandidate(Sheet Sheet, int PiecesPerSheet, int OutsidePrice, int InsidePrice, int PaperPrice, Mass SheetMass);

/// <summary>Which copies of a run a lot is for.</summary>
internal enum Share
{
    All,
    FirstHalf,
    SecondHalf,
}

/// <summary>Pieces that are printed together: a part, or the half of it that is on one of two stocks.</summary>
internal readonly record struct Lot(PartPieces Pieces, Share Share, SheetCandidate[] Candidates)
{
    /// <summary>Copies of the lot: of an odd number the first half has one more.</summary>
    public long Copies(long started) => Share switch
    {
        Share.FirstHalf => started - (started / 2),
        Share.SecondHalf => started / 2,
        _ => started,
    };
}

/// <summary>What was taken for a part at one quantity.</summary>
internal readonly record struct SheetsTaken(int Candidate, long Sheets, Layout Layout);

/// <summary>Finds the sheets that a part can be printed on.</summary>
internal static class SheetChoice
{
    /// <summary>Every sheet with prices for the part's stock and inks and at least one piece out, in the shop's order; problems where there is none.</summary>
    public static SheetCandidate[] Candidates(
        Job job, JobTables tables, PartPieces pieces, int partIndex, LayoutCounts layouts, List<Problem> problems)
    {
        var part = pieces.Part;
        var path = $"$.edition.parts[{partIndex}]";
        var shop = job.Shop;
        var found = new List<SheetCandidate>(part.SheetId is null ? shop.Sheets.Count : 1);
        List<string>? reasons = null;
        if (part.SheetId is { } named && shop.Sheets.All(sheet => sheet.Id != named))
        {
            problems.Add(new Problem(path + ".sheet", named, "The shop lists no such sheet."));
            return [];
        }

        foreach (var sheet in shop.Sheets)
        {
            if (part.SheetId is not null && sheet.Id != part.SheetId)
            {
                continue;
            }

            var (outside, inside) = (tables.PrintPrice(part.Outside, sheet.Id), tables.PrintPrice(part.Inside, sheet.Id));
            var paper = tables.PaperPrice(part.StockId, sheet.Id);
            if ((outside < 0 && part.Outside != Ink.None) || (inside < 0 && part.Inside != Ink.None) || paper < 0)
            {
                (reasons ??= []).Add($"on '{sheet.Id}' there is no price for {string.Join(" and ", MissingPrices(tables, part, sheet))}");
                continue;
            }

            if (layouts.Count(sheet, pieces.Piece) is not { } count)
            {
                problems.Add(new Problem(
                    $"$.shop.sheets['{sheet.Id}'].mixedLayout", "true",
                    $"Pieces of part '{part.Name}' are too small for exact mixed layouts on sheets this large and many; set mixedLayout to false."));
                continue;
            }

            if (count == 0)
            {
                (reasons ??= []).Add($"for '{sheet.Id}' the piece is too large by {TooLarge(PiecesOnSheet.Excess(sheet, pieces.Piece, job.Edition.Bleed))}");
                continue;
            }

            found.Add(new SheetCandidate(
                sheet,
                count,
                outside,
                inside,
                paper,
                Grams.Of(new Size(sheet.Width, sheet.Height), pieces.Stock.Weight)));
        }

        if (found.Count == 0 && reasons is not null)
        {
            problems.Add(new Problem(path, part.Name, $"No sheet of the shop takes this part: {string.Join("; ", reasons)}."));
        }

        return [.. found];
    }

    private static List<string> MissingPrices(JobTables tables, Part part, Sheet sheet)
    {
        var missing = new List<string>();
        foreach (var ink in new[] { part.Outside, part.Inside }.Distinct())
        {
            if (ink != Ink.None && tables.PrintPrice(ink, sheet.Id) < 0)
            {
                missing.Add($"{InkSubject.Of(ink)} print");
            }
        }

        if (tables.PaperPrice(part.StockId, sheet.Id) < 0)
        {
            missing.Add($"paper '{part.StockId}'");
        }

        return missing;
    }

    private static string TooLarge(Size excess) => (excess.Width > Length.Zero, excess.Height > Length.Zero) switch
    {
        (true, true) => $"{Text.Mm(excess.Width)} across and {Text.Mm(excess.Height)} along",
        (true, false) => $"{Text.Mm(excess.Width)} across",
        _ => $"{Text.Mm(excess.Height)} along",
    };
}
