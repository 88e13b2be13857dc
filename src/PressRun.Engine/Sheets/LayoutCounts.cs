using PressRun.Engine.Editions;

namespace PressRun.Engine.Sheets;

/// <summary>Pieces out of the sheets of one job: each piece and sheet is laid out once, and the searches together are limited.</summary>
/// <param name="bleed">Whether the unprintable margin must be kept free.</param>
internal sealed class LayoutCounts(bool bleed)
{
    private readonly Dictionary<(Sheet Sheet, Size Piece), int?> known = [];
    private long workLeft = GuillotineLayout.MostWork;

    /// <summary>The count, or null where exact mixed layouts would take too long.</summary>
    public int? Count(Sheet sheet, Size piece)
    {
        if (!sheet.MixedLayout)
        {
            return PiecesOnSheet.Count(sheet, piece, bleed);
        }

        if (!known.TryGetValue((sheet, piece), out var count))
        {
            known.Add((sheet, piece), count = PiecesOnSheet.Count(sheet, piece, bleed, ref workLeft));
        }

        return count;
    }
}
