using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Sheets;

/// <summary>How many pieces come out of one sheet.</summary>
public static class PiecesOnSheet
{
    /// <summary>What a side may be short of and still count as long enough, added once to each usable side.</summary>
    public static readonly Length Tolerance = Length.FromMicrometres(1m);

    // Along one side: no product of two leaves what an int holds.
    private const int Most = 30_000;

    /// <summary>Pieces out of a sheet; 0 where not one fits.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="piece">The piece before trimming; both sides more than zero.</param>
    /// <param name="bleed">Whether the unprintable margin must be kept free.</param>
    /// <returns>The count, or null where an exact mixed layout would take too long (see <see cref="GuillotineLayout.MostWork"/>).</returns>
    public static int? Count(Sheet sheet, Size piece, bool bleed)
    {
        var workLeft = GuillotineLayout.MostWork;
        return Count(sheet, piece, bleed, ref workLeft);
    }

    /// <summary>The same, for one of many counts that share what work may be done.</summary>
    internal static int? Count(Sheet sheet, Size piece, bool bleed, ref long workLeft)
    {
        var (width, height) = Usable(sheet, bleed);
        var upright = Grid(width, height, piece.Width, piece.Height, sheet.Gutter);
        if (sheet.Grain == GrainRule.ParallelToSpine)
        {
            return upright;
        }

        var grid = Math.Max(upright, Grid(width, height, piece.Height, piece.Width, sheet.Gutter));
        return sheet.MixedLayout
            ? GuillotineLayout.Count(
                width + sheet.Gutter + Tolerance, height + sheet.Gutter + Tolerance, piece.Width + sheet.Gutter, piece.Height + sheet.Gutter, grid,
                ref workLeft)
            : grid;
    }

    /// <summary>Where the pieces of that count lie, packed towards the upper left: the corner of each, and whether it lies a quarter turn.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="piece">The piece before trimming.</param>
    /// <param name="bleed">Whether the unprintable margin must be kept free.</param>
    /// <param name="mixed">What <see cref="Mixed"/> says of the same.</param>
    internal static IReadOnlyList<(Length Left, Length Top, bool Turned)> Places(
        Sheet sheet, Size piece, bool bleed, IReadOnlyList<(Length Left, Length Top, bool Turned)>? mixed)
    {
        if (mixed is not null)
        {
            return mixed;
        }

        var (width, height) = Usable(sheet, bleed);
        var (upright, turned) = Grids(sheet, piece, bleed);
        var lies = turned > upright;
        var (across, down) = lies ? (piece.Height, piece.Width) : (piece.Width, piece.Height);
        var columns = Along(width, across, sheet.Gutter);
        return
        [
            .. Enumerable.Range(0, Math.Max(upright, turned))
                .Select(at => (at % columns * (across + sheet.Gutter), at / columns * (down + sheet.Gutter), lies)),
        ];
    }

    /// <summary>Whether any piece of that count lies a quarter turn; takes as little time for millions of pieces.</summary>
    /// <inheritdoc cref="Places"/>
    internal static bool AnyTurned(Sheet sheet, Size piece, bool bleed, IReadOnlyList<(Length Left, Length Top, bool Turned)>? mixed)
    {
        var (upright, turned) = Grids(sheet, piece, bleed);
        return mixed?.Any(place => place.Turned) ?? turned > upright;
    }

    /// <summary>By how much the piece is too large for the sheet, in the orientation that lacks least; zero on a side that fits.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="piece">The piece before trimming; both sides more than zero.</param>
    /// <param name="bleed">Whether the unprintable margin must be kept free.</param>
    public static Size Excess(Sheet sheet, Size piece, bool bleed)
    {
        var (width, height) = Usable(sheet, bleed);
        var upright = new Size(Over(piece.Width, width), Over(piece.Height, height));
        if (sheet.Grain == GrainRule.ParallelToSpine)
        {
            return upright;
        }

        var turned = new Size(Over(piece.Height, width), Over(piece.Width, height));
        return Worst(turned) < Worst(upright) ? turned : upright;
    }

    private static (int Upright, int Turned) Grids(Sheet sheet, Size piece, bool bleed)
    {
        var (width, height) = Usable(sheet, bleed);
        return (
            Grid(width, height, piece.Width, piece.Height, sheet.Gutter),
            sheet.Grain == GrainRule.ParallelToSpine ? 0 : Grid(width, height, piece.Height, piece.Width, sheet.Gutter));
    }

    /// <summary>Where pieces lie that are turned and not turned on one sheet; null where no such mixture holds more than a grid does. The search can take a good part of a second.</summary>
    internal static IReadOnlyList<(Length Left, Length Top, bool Turned)>? Mixed(Sheet sheet, Size piece, bool bleed)
    {
        if (!sheet.MixedLayout || sheet.Grain != GrainRule.Any)
        {
            return null;
        }

        var ((width, height), (upright, turned)) = (Usable(sheet, bleed), Grids(sheet, piece, bleed));
        return GuillotineLayout.Places(
            width + sheet.Gutter + Tolerance, height + sheet.Gutter + Tolerance, piece.Width + sheet.Gutter, piece.Height + sheet.Gutter, Math.Max(upright, turned));
    }

    private static (Length Width, Length Height) Usable(Sheet sheet, bool bleed)
    {
        var margins = bleed ? 2m * sheet.Margin : Length.Zero;
        return (sheet.Width - margins, sheet.Height - margins);
    }

    private static int Grid(Length usableWidth, Length usableHeight, Length width, Length height, Length gutter) =>
        Along(usableWidth, width, gutter) * Along(usableHeight, height, gutter);

    private static int Along(Length usable, Length piece, Length gutter)
    {
        var (room, pitch) = ((usable + gutter + Tolerance).Millimetres, (piece + gutter).Millimetres);
        return room <= 0m ? 0 : pitch * Most <= room ? Most : (int)decimal.Floor(room / pitch);
    }

    private static Length Over(Length piece, Length usable) => piece > usable + Tolerance ? piece - usable : Length.Zero;

    private static Length Worst(Size excess) => excess.Width > excess.Height ? excess.Width : excess.Height;
}
