using PressRun.Engine.Reprint;

namespace PressRun.Web.Charts;

/// <summary>A future as a dot.</summary>
public readonly record struct FutureDot(double X, double Y, Future Future);

/// <summary>
/// Fifty equally likely futures as stacked dots (a quantile dot plot: Kay and others, When (ish) is my bus?, CHI 2016). A column takes the futures of a few
/// neighbouring numbers of copies, and its dots stand in its middle; whether a dot is filled goes by its own number.
/// </summary>
public sealed class FuturesDrawing
{
    private const double Top = 34;
    private const double Foot = 44;
    private const double Side = 18;
    private const double MostRadius = 11;

    private FuturesDrawing(double width, int from, int to, int copiesPerColumn)
    {
        (Width, From, To, CopiesPerColumn) = (width, from, to, copiesPerColumn);
    }

    /// <summary>Width of the picture.</summary>
    public double Width { get; }

    /// <summary>Height of the picture.</summary>
    public double Height => Bottom + Foot;

    /// <summary>Foot of the lowest dots.</summary>
    public double Bottom { get; private set; }

    /// <summary>Radius of a dot.</summary>
    public double Radius { get; private set; }

    /// <summary>First number of copies on the axis.</summary>
    public int From { get; }

    /// <summary>Last number of copies on the axis.</summary>
    public int To { get; }

    /// <summary>Neighbouring numbers of copies that share a column.</summary>
    public int CopiesPerColumn { get; }

    /// <summary>The dots, by the copies asked for.</summary>
    public IReadOnlyList<FutureDot> Dots { get; private set; } = [];

    /// <summary>Marks of the axis.</summary>
    public IReadOnlyList<int> Marks { get; private set; } = [];

    /// <summary>Draws futures.</summary>
    /// <param name="futures">By the copies asked for, at least one.</param>
    /// <param name="width">Of the picture, in the units of its view box.</param>
    /// <param name="mostColumns">Columns at most.</param>
    public static FuturesDrawing Of(IReadOnlyList<Future> futures, double width, int mostColumns)
    {
        var (least, most) = (futures[0].Copies, futures[^1].Copies);
        var perColumn = Math.Max(1, (int)Math.Ceiling((most - least + 1) / (double)mostColumns));
        var from = least / perColumn * perColumn;
        var columns = ((most - from) / perColumn) + 1;
        var drawing = new FuturesDrawing(width, from, from + (columns * perColumn), perColumn);
        var stacks = futures.GroupBy(future => (future.Copies - from) / perColumn).ToList();
        drawing.Radius = Math.Min(MostRadius, (width - (2 * Side)) / Math.Max(columns, mostColumns) / 2);
        drawing.Bottom = Top + (2 * drawing.Radius * stacks.Max(stack => stack.Count()));
        drawing.Dots = [.. stacks.SelectMany(stack => stack.Select((future, place) => new FutureDot(
            drawing.X(from + ((stack.Key + 0.5) * perColumn)), drawing.Bottom - (((2 * place) + 1) * drawing.Radius), future)))];
        var step = NiceTicks.Step(Math.Max(1, drawing.To - from), (int)(width / 70), whole: true);
        drawing.Marks = [.. NiceTicks.Between(from, drawing.To, step).Select(mark => (int)mark)];
        return drawing;
    }

    /// <summary>Across, of a number of copies: the left edge of its own place on the axis.</summary>
    public double X(double copies) => Side + ((Width - (2 * Side)) * (copies - From) / (To - From));
}
