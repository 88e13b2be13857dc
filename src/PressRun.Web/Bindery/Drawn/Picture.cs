namespace PressRun.Web.Bindery.Drawn;

/// <summary>What a line or an outline stands for; its look on screen, in a file and on paper follows from it.</summary>
public enum Pen
{
    /// <summary>A sheet or a piece of paper.</summary>
    Paper,

    /// <summary>A piece on its sheet, where it is cut apart.</summary>
    Piece,

    /// <summary>A page in the finished book.</summary>
    Page,

    /// <summary>As far as art runs.</summary>
    Bleed,

    /// <summary>A fold.</summary>
    Fold,

    /// <summary>A cut of the finished book.</summary>
    Trim,

    /// <summary>A staple.</summary>
    Staple,

    /// <summary>The sign of a paper.</summary>
    Sign,
}

/// <summary>Something drawn. Lengths are in the picture's own units, from its upper left corner.</summary>
public abstract record Mark;

/// <summary>A straight line.</summary>
public sealed record LineMark(Pen Pen, double X1, double Y1, double X2, double Y2) : Mark;

/// <summary>A rectangle.</summary>
public sealed record BoxMark(Pen Pen, double X, double Y, double Width, double Height) : Mark;

/// <summary>Words about their middle.</summary>
/// <param name="Words">What is written.</param>
/// <param name="X">Middle across.</param>
/// <param name="Y">Middle down.</param>
/// <param name="Size">Height of the letters' line.</param>
/// <param name="QuarterTurns">Clockwise from upright, 0 to 3.</param>
/// <param name="Strong">True for what is read from afar.</param>
/// <param name="Wrong">True for what has come out wrong.</param>
/// <param name="Room">Of a note: the length that it may take; 0 for what is no note.</param>
public sealed record TextMark(string Words, double X, double Y, double Size, int QuarterTurns = 0, bool Strong = false, bool Wrong = false, double Room = 0) : Mark
{
    // What a letter takes of its height, on average.
    private const double LetterWidth = 0.56;

    // Of a picture as wide as a phone a letter this large is read without a glass.
    private const double PartOfWidth = 14.0 / 320;

    /// <summary>Height of a note's letters on a phone: larger than on a table, as far as there is room.</summary>
    /// <param name="pictureWidth">Width of the picture.</param>
    public double SizeOnPhone(double pictureWidth) => Math.Max(Size, Math.Min(pictureWidth * PartOfWidth, LargestIn(Room, Words)));

    /// <summary>The largest letters in which words fit into a length.</summary>
    public static double LargestIn(double room, string words) => room / (LetterWidth * Math.Max(1, words.Length));
}

/// <summary>A triangle that points to the head: this way up.</summary>
/// <param name="X">Middle across.</param>
/// <param name="Y">Middle down.</param>
/// <param name="Size">Its height.</param>
/// <param name="QuarterTurns">Where it points, clockwise from upwards.</param>
public sealed record HeadMark(double X, double Y, double Size, int QuarterTurns = 0) : Mark
{
    /// <summary>Its corners.</summary>
    public IReadOnlyList<(double X, double Y)> Corners
    {
        get
        {
            var half = Size / 2;
            (double X, double Y)[] upright = [(0, -half), (half, half), (-half, half)];
            return [.. upright.Select(corner => QuarterTurns switch
            {
                0 => (X + corner.X, Y + corner.Y),
                1 => (X - corner.Y, Y + corner.X),
                2 => (X - corner.X, Y - corner.Y),
                _ => (X + corner.Y, Y - corner.X),
            })];
        }
    }
}

/// <summary>A drawing that can be shown, saved and printed.</summary>
/// <param name="Width">Its width; of sheets in millimetres.</param>
/// <param name="Height">Its height.</param>
/// <param name="Marks">From the back to the front.</param>
/// <param name="Words">What it shows.</param>
public sealed record Picture(double Width, double Height, IReadOnlyList<Mark> Marks, string Words);
