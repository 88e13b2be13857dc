namespace PressRun.Web.Charts;

/// <summary>A text beside a mark.</summary>
/// <param name="Text">What it says.</param>
/// <param name="X">Where it is anchored.</param>
/// <param name="Y">Its foot.</param>
/// <param name="Anchor">How it lies to its anchor: start, middle or end.</param>
public sealed record PlacedLabel(string Text, double X, double Y, string Anchor);

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
    private const double Off = 10;
    private const double MarkRadius = 6;

    private readonly List<(double X1, double Y1, double X2, double Y2)> taken = [];

    /// <summary>Keeps the place of a mark free.</summary>
    public void Take(double x, double y) => taken.Add((x - MarkRadius, y - MarkRadius, x + MarkRadius, y + MarkRadius));

    /// <summary>A place for a name; null where all are taken.</summary>
    public PlacedLabel? Place(string text, double x, double y)
    {
        var width = text.Length * LetterWidth;
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
            (x - 8, y - Off - Height, new PlacedLabel(text, x - 8, y - Off - Height, "start")),
            (x - 8, y + Off + 10 + Height, new PlacedLabel(text, x - 8, y + Off + 10 + Height, "start")),
        ];
        foreach (var (from, foot, label) in places)
        {
            var box = (X1: from, Y1: foot - Height + 3, X2: from + width, Y2: foot + 3);
            if (box.X1 >= left && box.X2 <= right && box.Y1 >= top && box.Y2 <= bottom && !taken.Exists(other => Overlap(other, box)))
            {
                taken.Add(box);
                return label;
            }
        }

        return null;
    }

    private static bool Overlap((double X1, double Y1, double X2, double Y2) a, (double X1, double Y1, double X2, double Y2) b) =>
        a.X1 < b.X2 && b.X1 < a.X2 && a.Y1 < b.Y2 && b.Y1 < a.Y2;
}
