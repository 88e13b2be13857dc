using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Imposing;

/// <summary>A place for a piece on a sheet, as seen on the sheet's front.</summary>
/// <param name="Letter">A, B, C and on from the upper left, row by row; AA after Z.</param>
/// <param name="Box">The piece before trimming.</param>
/// <param name="Turned">True where the piece lies a quarter turn clockwise, its head to the right.</param>
public sealed record Place(string Letter, Box Box, bool Turned)
{
    private const int Letters = 26;

    /// <summary>
    /// The places of the best layout, as many as <see cref="PiecesOnSheet.Count(Sheet, Size, bool)"/> says. They lie together in the middle of the sheet,
    /// so that both sides of a sheet turned over lie on each other (common practice).
    /// </summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="piece">The piece before trimming.</param>
    /// <param name="mixtures">Those of the run.</param>
    internal static IReadOnlyList<Place> On(Sheet sheet, Size piece, Mixtures mixtures)
    {
        var laid = mixtures.Places(sheet, piece);
        var boxes = laid.Select(place => new Box(
            place.Left, place.Top, place.Turned ? piece.Height : piece.Width, place.Turned ? piece.Width : piece.Height)).ToList();
        var (right, bottom) = boxes.Aggregate((Length.Zero, Length.Zero), (most, box) => (Longer(most.Item1, box.Right), Longer(most.Item2, box.Bottom)));
        var (left, top) = ((sheet.Width - right) * 0.5m, (sheet.Height - bottom) * 0.5m);
        return
        [
            .. boxes.Zip(laid, (box, place) => (Box: box with { Left = box.Left + left, Top = box.Top + top }, place.Turned))
                .OrderBy(place => place.Box.Top).ThenBy(place => place.Box.Left)
                .Select((place, index) => new Place(Lettered(index), place.Box, place.Turned)),
        ];
    }

    /// <summary>A box of the upright piece, seen on its outer face, as it lies on the sheet.</summary>
    internal Box Lay(Box onPiece) => Turned
        ? new Box(Box.Right - onPiece.Bottom, Box.Top + onPiece.Left, onPiece.Height, onPiece.Width)
        : onPiece with { Left = Box.Left + onPiece.Left, Top = Box.Top + onPiece.Top };

    /// <summary>A point of the sheet on the upright piece; the other way round than <see cref="Lay(Box)"/>.</summary>
    internal Spot Lift(Spot onSheet) => Turned
        ? new Spot(onSheet.Down - Box.Top, Box.Right - onSheet.Across)
        : new Spot(onSheet.Across - Box.Left, onSheet.Down - Box.Top);

    private static string Lettered(int index) =>
        index < Letters ? ((char)('A' + index)).ToString() : Lettered((index / Letters) - 1) + (char)('A' + (index % Letters));

    private static Length Longer(Length one, Length other) => one > other ? one : other;
}
