using System.Collections.Concurrent;
using PressRun.Engine.Editions;

namespace PressRun.Engine.Sheets;

/// <summary>Exact mixed layouts that were searched already, with the work each took. Thread-safe.</summary>
/// <param name="bleed">Whether the unprintable margin must be kept free.</param>
internal sealed class MixedLayouts(bool bleed)
{
    private readonly ConcurrentDictionary<(Sheet Sheet, Size Piece), (int? Count, long Work)> known = [];

    /// <summary>Whether the unprintable margin must be kept free.</summary>
    public bool Bleed => bleed;

    /// <summary>The count, null where a search by itself takes too long, and the work that the search takes.</summary>
    public (int? Count, long Work) Of(Sheet sheet, Size piece) => known.GetOrAdd((sheet, piece), Search);

    private (int? Count, long Work) Search((Sheet Sheet, Size Piece) wanted)
    {
        var left = GuillotineLayout.MostWork;
        var count = PiecesOnSheet.Count(wanted.Sheet, wanted.Piece, bleed, ref left);
        return (count, GuillotineLayout.MostWork - left);
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
