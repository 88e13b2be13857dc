using PressRun.Engine.Editions;

namespace PressRun.Engine.Sheets;

/// <summary>Exact mixed layouts that were searched already, with the work each took. Not thread-safe.</summary>
/// <param name="bleed">Whether the unprintable margin must be kept free.</param>
internal sealed class MixedLayouts(bool bleed)
{
    private readonly Dictionary<(Sheet Sheet, Size Piece), (int? Count, long Work)> known = [];

    /// <summary>Whether the unprintable margin must be kept free.</summary>
    public bool Bleed => bleed;

    /// <summary>The count, null where a search by itself takes too long, and the work that the search takes.</summary>
    public (int? Count, long Work) Of(Sheet sheet, Size piece)
    {
        if (!known.TryGetValue((sheet, piece), out var found))
        {
            var left = GuillotineLayout.MostWork;
            var count = PiecesOnSheet.Count(sheet, piece, bleed, ref left);
            known.Add((sheet, piece), found = (count, GuillotineLayout.MostWork - left));
        }

        return found;
    }
}

/// <summary>Pieces out of the sheets of one job: the searches for all its pieces and sheets together are limited, whether or not another job
/// made them before.</summary>
/// <param name="layouts">The searches made so far.</param>
internal sealed class LayoutCounts(MixedLayouts layouts)
{
    private readonly HashSet<(Sheet Sheet, Size Piece)> charged = [];
    private long workLeft = GuillotineLayout.MostWork;

    /// <summary>The count, or null where exact mixed layouts would take too long.</summary>
    public int? Count(Sheet sheet, Size piece)
    {
        if (!sheet.MixedLayout)
        {
            return PiecesOnSheet.Count(sheet, piece, layouts.Bleed);
        }

        if (workLeft <= 0)
        {
            return null;
        }

        var (count, work) = layouts.Of(sheet, piece);
        workLeft -= charged.Add((sheet, piece)) ? work : 0;
        return workLeft > 0 ? count : null;
    }
}
