namespace PressRun.Web.Charts;

/// <summary>A pile of copies of one printing on the board of a shelf, in millimetres of the board.</summary>
/// <param name="Address">Where it leads.</param>
/// <param name="Words">Title, printing and copies.</param>
/// <param name="Height">Of a copy.</param>
/// <param name="CopyThickness">Of one copy.</param>
/// <param name="Copies">On hand.</param>
/// <param name="Colour">Of the cover.</param>
/// <param name="Asks">True where it needs a decision.</param>
/// <param name="Title">The words on its back.</param>
public sealed record StandingPile(string Address, string Words, double Height, double CopyThickness, int Copies, string Colour, bool Asks, string Title);

/// <summary>How a title is written on its pile.</summary>
public enum Lettering
{
    /// <summary>Not at all: there is no room.</summary>
    None,

    /// <summary>Along the back, as on a spine.</summary>
    Along,

    /// <summary>Across all the backs.</summary>
    Across,
}

/// <summary>A pile where it stands in the drawing.</summary>
/// <param name="Pile">The pile.</param>
/// <param name="X">Left edge.</param>
/// <param name="Y">Top edge.</param>
/// <param name="Width">Across all copies.</param>
/// <param name="Height">Of a copy.</param>
/// <param name="Lettering">How its title is written.</param>
/// <param name="Backs">Lines between its copies, so that they can be counted; empty where they would run together.</param>
public readonly record struct DrawnPile(StandingPile Pile, double X, double Y, double Width, double Height, Lettering Lettering, string Backs);

/// <summary>
/// The shelf as it stands: every printing that is on hand upright beside the next, as high as its page and as wide as its copies are thick.
/// Heights keep their proportions to each other; widths keep theirs, no pile is drawn thicker than it is high to scale, and none is too thin to be pointed at.
/// </summary>
public sealed record ShelfBoard(double Width, double Height, IReadOnlyList<DrawnPile> Piles)
{
    private const double Gap = 3;
    private const double Headroom = 10;
    private const double Thinnest = 6;
    private const double LetteringFrom = 15;
    private const double AcrossFrom = 84;
    private const double NarrowestBack = 2.4;

    /// <summary>Draws the piles on a board.</summary>
    /// <param name="piles">From left to right; those without copies are shown as a thin back that asks.</param>
    /// <param name="width">Of the board.</param>
    /// <param name="height">Of the board.</param>
    public static ShelfBoard Of(IReadOnlyList<StandingPile> piles, double width, double height)
    {
        if (piles.Count == 0)
        {
            return new ShelfBoard(width, height, []);
        }

        var tallest = piles.Max(pile => pile.Height);
        var free = Math.Max(0, width - (piles.Count * (Gap + Thinnest)));
        var thick = piles.Sum(Thickness);
        var scale = thick > 0 ? Math.Min(free / thick, (height - Headroom) / tallest) : 0;
        var drawn = new List<DrawnPile>();
        var x = 0.0;
        foreach (var pile in piles)
        {
            var across = Thinnest + (scale * Thickness(pile));
            var high = (height - Headroom) * pile.Height / tallest;
            var lettering = across >= AcrossFrom ? Lettering.Across : across >= LetteringFrom ? Lettering.Along : Lettering.None;
            drawn.Add(new DrawnPile(pile, x, height - high, across, high, lettering, Backs(pile.Copies, x, height - high, across, high)));
            x += across + Gap;
        }

        return new ShelfBoard(width, height, drawn);
    }

    private static double Thickness(StandingPile pile) => pile.Copies * pile.CopyThickness;

    private static string Backs(int copies, double x, double y, double width, double height)
    {
        if (copies < 2 || width / copies < NarrowestBack)
        {
            return "";
        }

        return string.Concat(Enumerable.Range(1, copies - 1).Select(copy => $"M{Svg.Point(x + (width * copy / copies), y)}v{Svg.N(height)}"));
    }
}
