namespace PressRun.Web.Bindery.Drawn;

/// <summary>A sign for each paper of a book, told apart in black and white: strokes one way, the other way, level, upright, crossed, dashed.</summary>
public static class PaperSign
{
    private const double Apart = 5;

    /// <summary>The strokes of a paper in a box.</summary>
    /// <param name="paper">Place of the paper among the book's, from 0; they repeat after six.</param>
    /// <param name="x">Left of the box.</param>
    /// <param name="y">Top of the box.</param>
    /// <param name="width">Width of the box.</param>
    /// <param name="height">Height of the box.</param>
    public static IEnumerable<Mark> In(int paper, double x, double y, double width, double height) => (paper % 6) switch
    {
        0 => Slanted(x, y, width, height, rising: true),
        1 => Slanted(x, y, width, height, rising: false),
        2 => Along(height, Apart * 0.8).Select(at => new LineMark(Pen.Sign, x, y + at, x + width, y + at)),
        3 => Along(width, Apart).Select(at => new LineMark(Pen.Sign, x + at, y, x + at, y + height)),
        4 => Slanted(x, y, width, height, rising: true).Concat(Slanted(x, y, width, height, rising: false)),
        _ => Dashed(x, y, width, height),
    };

    private static IEnumerable<double> Along(double length, double step)
    {
        for (var at = step / 2; at < length; at += step)
        {
            yield return at;
        }
    }

    private static IEnumerable<LineMark> Dashed(double x, double y, double width, double height) =>
        from down in Along(height, Apart * 0.8)
        from left in Along(width, 2 * Apart)
        select new LineMark(Pen.Sign, x + left - (Apart / 2), y + down, x + Math.Min(width, left + (Apart / 2)), y + down);

    private static IEnumerable<LineMark> Slanted(double x, double y, double width, double height, bool rising)
    {
        for (var at = Apart - height; at < width; at += Apart)
        {
            var (from, to) = (Math.Max(0, at), Math.Min(width, at + height));
            var (first, last) = (from - at, to - at);
            yield return rising
                ? new LineMark(Pen.Sign, x + from, y + height - first, x + to, y + height - last)
                : new LineMark(Pen.Sign, x + from, y + first, x + to, y + last);
        }
    }
}
