using System.Numerics;
using PressRun.Engine.Editions;
using PressRun.Engine.Imposing;

namespace PressRun.Engine.Tests.Support;

/// <summary>
/// A copy made of points in space, as an oracle for the engine's reading: every page is an arrow from its foot to its head on one side of a sheet;
/// sheets are turned, cut, folded and stacked by rotations, and who reads looks from above and turns leaf after leaf. Nothing here knows which page belongs where.
/// </summary>
internal static class PaperDummy
{
    // An arrow on paper, and which way the printed side looks.
    private readonly record struct Arrow(int Page, Vector3 Foot, Vector3 Head, Vector3 Looks)
    {
        public Vector3 Middle => (Foot + Head) / 2;

        public Arrow Moved(Vector3 by) => this with { Foot = Foot + by, Head = Head + by };

        public Arrow Turned(Vector3 about, Vector3 axis, float degrees)
        {
            var turn = Quaternion.CreateFromAxisAngle(axis, float.DegreesToRadians(degrees));
            return new Arrow(
                Page, about + Vector3.Transform(Foot - about, turn), about + Vector3.Transform(Head - about, turn), Vector3.Transform(Looks, turn));
        }
    }

    /// <summary>Pages in the order of reading, and whether the head of each is up.</summary>
    public static List<(int Page, bool Upright)> Read(BookBlock block, IReadOnlyList<ImposedSheet> sheets, Func<ImposedSheet, TurnEdge> turn, int copy)
    {
        var piles = sheets.SelectMany(sheet => Pieces(sheet, turn(sheet))).GroupBy(piece => piece.Pile).OrderBy(pile => pile.Key)
            .Select(pile => pile.ElementAt(copy % pile.Count()).Arrows).ToList();
        var lying = block.Edition.Binding switch
        {
            Binding.Saddle => Folded(piles, (float)(block.Parts[0].Piece.Width.Millimetres / 2m)),
            Binding.Perfect => Wrapped(piles, (float)(block.Parts[0].Piece.Width - block.Spine).Millimetres / 2f, (float)block.Spine.Millimetres),
            _ => [.. piles.SelectMany((piece, index) => piece.Select(arrow => arrow.Moved(-index * Vector3.UnitZ)))],
        };

        // From the top downwards; on a leaf first the side that looks up. Behind it one reads with the leaf turned about the upright spine, so up stays up.
        return [.. lying.OrderByDescending(arrow => MathF.Round(arrow.Middle.Z)).ThenByDescending(arrow => arrow.Looks.Z)
            .Select(arrow => (arrow.Page, Vector3.Dot(Vector3.Normalize(arrow.Head - arrow.Foot), Vector3.UnitY) > 0.99f))];
    }

    // The sheet lies with its front up and its upper left corner at the origin; y points to its upper edge.
    private static IEnumerable<(int Pile, List<Arrow> Arrows)> Pieces(ImposedSheet sheet, TurnEdge turn)
    {
        var (width, height) = ((float)sheet.Sheet.Width.Millimetres, (float)sheet.Sheet.Height.Millimetres);
        var middle = new Vector3(width / 2, -height / 2, 0);
        var upright = (turn == TurnEdge.Long) == (height >= width);
        var arrows = sheet.Front.Pages.Select(Drawn)
            .Concat(sheet.Back.Pages.Select(page => Drawn(page).Turned(middle, upright ? Vector3.UnitY : Vector3.UnitX, 180))).ToList();
        foreach (var stack in sheet.Stacks.Where(stack => stack.Pile is not null))
        {
            var box = stack.Place.Box;
            var centre = new Vector3((float)box.Middle.Across.Millimetres, -(float)box.Middle.Down.Millimetres, 0);
            var corner = stack.Place.Turned ? new Vector3((float)box.Height.Millimetres, (float)box.Width.Millimetres, 0) : new Vector3((float)box.Width.Millimetres, (float)box.Height.Millimetres, 0);
            yield return (stack.Pile!.Value, [.. arrows.Where(arrow => box.Holds(new Spot(Support.Jobs.Mm((decimal)arrow.Middle.X), Support.Jobs.Mm(-(decimal)arrow.Middle.Y))))
                .Select(arrow => stack.Place.Turned ? arrow.Turned(centre, Vector3.UnitZ, 90) : arrow)
                .Select(arrow => arrow.Moved((corner / 2) - centre))]);
        }
    }

    private static Arrow Drawn(PlacedPage page)
    {
        var middle = new Vector3((float)page.Area.Middle.Across.Millimetres, -(float)page.Area.Middle.Down.Millimetres, 0);
        var up = page.QuarterTurns switch { 0 => Vector3.UnitY, 1 => Vector3.UnitX, 2 => -Vector3.UnitY, _ => -Vector3.UnitX };
        return new Arrow(page.Page, middle - up, middle + up, Vector3.UnitZ);
    }

    // Sheets lie outer face down, the outermost lowest; the left half is folded over onto the right.
    private static List<Arrow> Folded(List<List<Arrow>> piles, float fold)
    {
        var spine = new Vector3(fold, 0, 0);
        return
        [
            .. piles.SelectMany((piece, index) => piece.Select(arrow => arrow.Turned(spine, Vector3.UnitY, 180).Moved(index * Vector3.UnitZ)))
                .Select(arrow => arrow.Middle.X >= fold ? arrow : arrow.Turned(spine + (piles.Count * Vector3.UnitZ), Vector3.UnitY, 180)),
        ];
    }

    // The cover lies outer face down, the leaves on its right side with the last lowest; then its left side is folded up and over the spine.
    private static List<Arrow> Wrapped(List<List<Arrow>> piles, float joint, float spine)
    {
        var width = (2 * joint) + spine;
        var cover = piles[0].Select(arrow => arrow.Turned(new Vector3(width / 2, 0, 0), Vector3.UnitY, 180));
        var leaves = piles.Skip(1).SelectMany((piece, index) => piece.Select(arrow => arrow.Moved((piles.Count - 1 - index) * Vector3.UnitZ)));
        return
        [
            .. leaves,
            .. cover.Select(arrow => arrow.Middle.X > width / 2 ? arrow : arrow.Turned(new Vector3(width / 2, 0, piles.Count / 2f), Vector3.UnitY, 180)),
        ];
    }
}
