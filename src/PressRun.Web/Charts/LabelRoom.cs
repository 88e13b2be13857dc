namespace PressRun.Web.Charts;

/// <summary>A text beside a mark.</summary>
/// <param name="Text">What it says.</param>
/// <param name="X">Where it is anchored.</param>
/// <param name="Y">Its foot.</param>
/// <param name="Anchor">How it lies to its anchor: start, middle or end.</param>
/// <param name="Led">True where it stands off its mark and a line leads to it.</param>
public sealed record PlacedLabel(string Text, double X, double Y, string Anchor, bool Led = false);

/// <summary>Finds room for names beside marks: right of the mark, left, above or below, where nothing else lies.</summary>
/// <param name="left">Left edge of the plot.</param>
/// <param name="top">Top edge.</param>
/// <param name="right">Right edge.</param>
/// <param name="bottom">Bottom edge.</param>
public sealed class LabelRoom(double left, double top, double right, double bottom)
{
    // Of a letter of 12 units on average, and how far a name stands off its mark.
    private const double LetterWidth = 6.9;
    private const double Height = 14;
    private const double Off = 12;
    private const double MarkRadius = 6;
    private const double LineOff = 1.5;

    // Of a label that stands off: how far at most, at what intervals, and on how many sides it is tried.
    private const int MostRings = 9;
    private const double Ring = 13;
    private const int Sides = 16;

    // A text nearer than this to the mark of another would be read as that one's.
    private const double Clear = 5;

    private readonly List<(double X1, double Y1, double X2, double Y2)> taken = [];
    private readonly List<(double X, double Y)> marks = [];

    /// <summary>Keeps the place of a mark free.</summary>
    public void Take(double x, double y)
    {
        taken.Add((x - MarkRadius, y - MarkRadius, x + MarkRadius, y + MarkRadius));
        marks.Add((x, y));
    }

    /// <summary>Keeps names off a level or upright line.</summary>
    public void TakeLine(double x1, double y1, double x2, double y2) =>
        taken.Add((Math.Min(x1, x2) - LineOff, Math.Min(y1, y2) - LineOff, Math.Max(x1, x2) + LineOff, Math.Max(y1, y2) + LineOff));

    /// <summary>A place for a name; null where all are taken.</summary>
    public PlacedLabel? Place(string text, double x, double y)
    {
        var width = Width(text);
        (double Left, double Foot, PlacedLabel Label)[] places =
        [
            (x + Off, y + 4, new PlacedLabel(text, x + Off, y + 4, "start")),
            (x - Off - width, y + 4, new PlacedLabel(text, x - Off, y + 4, "end")),
            (x - (width / 2), y - Off, new PlacedLabel(text, x, y - Off, "middle")),
            (x - (width / 2), y + Off + 10, new PlacedLabel(text, x, y + Off + 10, "middle")),
            (x + 4, y - Off, new PlacedLabel(text, x + 4, y - Off, "start")),
            (x - 4 - width, y - Off, new PlacedLabel(text, x - 4, y - Off, "end")),
            (x + 4, y + Off + 10, new PlacedLabel(text, x + 4, y + Off + 10, "start")),
            (x - 4 - width, y + Off + 10, new PlacedLabel(text, x - 4, y + Off + 10, "end")),
            (x - 8, y + Off + 10, new PlacedLabel(text, x - 8, y + Off + 10, "start")),
        ];
        foreach (var (from, foot, label) in places)
        {
            if (IsClear(Box(from, foot, width), x, y) && Lay(from, foot, width))
            {
                return label;
            }
        }

        return null;
    }

    /// <summary>A place for a short text: beside its mark, or as near as there is room, with a line that leads to it; null where the plot is full.</summary>
    public PlacedLabel? PlaceNear(string text, double x, double y)
    {
        if (Place(text, x, y) is { } beside)
        {
            return beside;
        }

        var width = Width(text);
        for (var at = 0; at < MostRings * Sides; at++)
        {
            var (away, turn) = ((2 + (at / Sides)) * Ring, 2 * Math.PI * (at % Sides) / Sides);
            var (middle, foot) = (x + (away * Math.Cos(turn)), y + (away * Math.Sin(turn)) + 4);
            if (Lay(middle - (width / 2), foot, width))
            {
                return new PlacedLabel(text, middle, foot, "middle", Led: true);
            }
        }

        return null;
    }

    /// <summary>Gives the place of a label free again.</summary>
    public void Free(PlacedLabel label) => taken.Remove(Box(Left(label), label.Y, Width(label.Text)));

    /// <summary>Takes the place of a label that was given free.</summary>
    public void TakeBack(PlacedLabel label) => taken.Add(Box(Left(label), label.Y, Width(label.Text)));

    private static double Width(string text) => text.Length * LetterWidth;

    private static double Left(PlacedLabel label) => label.Anchor switch
    {
        "start" => label.X,
        "end" => label.X - Width(label.Text),
        _ => label.X - (Width(label.Text) / 2),
    };

    private static (double X1, double Y1, double X2, double Y2) Box(double from, double foot, double width) => (from, foot - Height + 3, from + width, foot + 3);

    private bool Lay(double from, double foot, double width)
    {
        var box = Box(from, foot, width);
        if (box.X1 < left || box.X2 > right || box.Y1 < top || box.Y2 > bottom || taken.Exists(other => Overlap(other, box)))
        {
            return false;
        }

        taken.Add(box);
        return true;
    }

    // True where a text lies on no mark but its own, and near none.
    private bool IsClear((double X1, double Y1, double X2, double Y2) box, double x, double y) => !marks.Exists(other =>
        Math.Abs(other.X - x) + Math.Abs(other.Y - y) > MarkRadius
        && Overlap(box, (other.X - MarkRadius - Clear, other.Y - MarkRadius - Clear, other.X + MarkRadius + Clear, other.Y + MarkRadius + Clear)));

    private static bool Overlap((double X1, double Y1, double X2, double Y2) a, (double X1, double Y1, double X2, double Y2) b) =>
        a.X1 < b.X2 && b.X1 < a.X2 && a.Y1 < b.Y2 && b.Y1 < a.Y2;
}
