using PressRun.Engine.Bench;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Imposing;

/// <summary>Puts the faces of pieces on the two faces of a sheet.</summary>
internal static class FaceLayer
{
    public static ImposedSheet Of(
        BookBlock block, int partIndex, Sheet sheet, Layout layout, int number, long prints, IReadOnlyList<(Place Place, ImposedPiece? Piece)> on)
    {
        var part = block.Parts[partIndex];
        var turn = Turning.Edge(sheet, upright: on.Count(place => !place.Place.Turned) * 2 >= on.Count);
        var laid = on.Where(place => place.Piece is not null)
            .Select(place => (place.Place, Faces: PieceFaces.Of(block, part.Piece, place.Piece!))).ToList();
        return new ImposedSheet(
            number, part.Part.Name, partIndex, sheet, layout, prints,
            new SheetFace(
                part.Part.Outside,
                [.. laid.SelectMany(piece => piece.Faces.Outer.Select(page => Front(piece.Place, page)))],
                Lines(Folds, front: true),
                Lines(Trims, front: true),
                [.. on.Select(place => (place.Place.Letter, place.Place.Box))]),
            new SheetFace(
                part.Part.Inside,
                [.. laid.SelectMany(piece => piece.Faces.Inner.Select(page => Back(piece.Place, page)))],
                Lines(Folds, front: false),
                Lines(Trims, front: false),
                [.. on.Select(place => (place.Place.Letter, Turning.Over(sheet, turn, place.Place.Box)))]),
            turn,
            [.. on.Select(place => new Stack(place.Place, place.Piece?.Number))]);

        PlacedPage Front(Place place, PageOnPiece page) => new(
            page.Page, place.Letter, place.Lay(page.Area), place.Lay(page.Bleed), page.Shift, place.Turned ? 1 : 0, page.SpineLeft);

        // An inner face lies behind the outer one as a leaf that is turned about its spine: left and right change places.
        PlacedPage Back(Place place, PageOnPiece page) => new(
            page.Page, place.Letter, Behind(place, page.Area), Behind(place, page.Bleed), page.Shift,
            Turning.Over(sheet, turn, place.Turned ? 1 : 0), page.SpineLeft);

        Box Behind(Place place, Box box) => Turning.Over(sheet, turn, place.Lay(box with { Left = part.Piece.Width - box.Right }));

        List<Line> Lines(Func<PieceFaces, IEnumerable<Box>> of, bool front) =>
        [
            .. laid.SelectMany(piece => of(piece.Faces).Select(box => front ? piece.Place.Lay(box) : Turning.Over(sheet, turn, piece.Place.Lay(box))))
                .Select(box => new Line(new Spot(box.Left, box.Top), new Spot(box.Right, box.Bottom))),
        ];

        IEnumerable<Box> Folds(PieceFaces faces) => faces.Folds.Select(at => new Box(at, Length.Zero, Length.Zero, part.Piece.Height));

        IEnumerable<Box> Trims(PieceFaces faces) => TrimLines(block.Edition, part.Piece, faces);
    }

    // Where the knife goes through the upright piece, as thin boxes; a folded piece has a fore-edge at both ends.
    private static IEnumerable<Box> TrimLines(Edition edition, Size size, PieceFaces faces)
    {
        var trim = edition.Trim;
        var (left, right) = (faces.Outer[0].Area.Left, faces.Outer[^1].Area.Right);
        if (trim.Head > Length.Zero)
        {
            yield return new Box(Length.Zero, trim.Head, size.Width, Length.Zero);
        }

        if (trim.Foot > Length.Zero)
        {
            yield return new Box(Length.Zero, size.Height - trim.Foot, size.Width, Length.Zero);
        }

        if (left > Length.Zero && (faces.Folds.Count > 0 ? trim.ForeEdge : trim.Spine) > Length.Zero)
        {
            yield return new Box(left, Length.Zero, Length.Zero, size.Height);
        }

        if (trim.ForeEdge > Length.Zero)
        {
            yield return new Box(right, Length.Zero, Length.Zero, size.Height);
        }
    }
}
