using System.Text;
using PressRun.Engine.Ladder;
using PressRun.Engine.Reprint;

namespace PressRun.Web.Charts;

/// <summary>Expected profit over quantity as a staircase: treads and jumps, no slanted lines, with the line of nothing gained.</summary>
public sealed class ProfitDrawing
{
    private readonly IReadOnlyList<ReprintPoint> points;

    private ProfitDrawing(IReadOnlyList<ReprintPoint> points, StaircaseFrame frame)
    {
        (this.points, Frame) = (points, frame);
        var (least, most) = ((double)points.Min(point => point.ExpectedProfit), (double)points.Max(point => point.ExpectedProfit));
        (least, most) = (Math.Min(0, least), Math.Max(0, most));
        Step = NiceTicks.Step(most - least <= 0 ? 1 : most - least, frame.MostCostMarks + 1, whole: false);
        (Least, Most) = (Math.Floor(least / Step) * Step, Math.Max(Step, Math.Ceiling(most / Step) * Step));
    }

    /// <summary>The frame it is drawn in.</summary>
    public StaircaseFrame Frame { get; }

    /// <summary>Distance of marks on the axis of money.</summary>
    public double Step { get; }

    /// <summary>Money at the foot of the plot, 0 or less.</summary>
    public double Least { get; }

    /// <summary>Money at the top of the plot.</summary>
    public double Most { get; }

    /// <summary>First quantity.</summary>
    public int From => points[0].Quantity;

    /// <summary>Last quantity.</summary>
    public int To => points[^1].Quantity;

    /// <summary>The line, broken at every jump: horizontal and vertical moves only.</summary>
    public string Path { get; private set; } = "";

    /// <summary>Two dots at each jump, and a closed one where the line begins.</summary>
    public IReadOnlyList<StaircaseDot> Dots { get; private set; } = [];

    /// <summary>Marks of the axis of money.</summary>
    public IReadOnlyList<double> MoneyMarks { get; private set; } = [];

    /// <summary>Marks of the quantity axis.</summary>
    public IReadOnlyList<int> QuantityMarks { get; private set; } = [];

    /// <summary>Draws a curve.</summary>
    /// <param name="points">Rising by one copy from printing none, at least two.</param>
    /// <param name="frame">Where.</param>
    public static ProfitDrawing Of(IReadOnlyList<ReprintPoint> points, StaircaseFrame frame)
    {
        var drawing = new ProfitDrawing(points, frame);
        // A leap of what is gained is a leap of what the run costs.
        var jumps = LadderJump.Of(new CostCurve(0, [.. points.Select(point => point.LandedCost)])).Select(jump => jump.At).ToHashSet();
        var (path, dots) = (new StringBuilder(), new List<StaircaseDot> { new(drawing.X(0), drawing.Y(points[0].ExpectedProfit), Open: false) });
        path.Append('M').Append(Svg.Point(drawing.X(0), drawing.Y(points[0].ExpectedProfit)));
        for (var at = 1; at < points.Count; at++)
        {
            var (x, before, after) = (drawing.X(points[at].Quantity), drawing.Y(points[at - 1].ExpectedProfit), drawing.Y(points[at].ExpectedProfit));
            path.Append('H').Append(Svg.N(x));
            if (jumps.Contains(at))
            {
                path.Append('M').Append(Svg.Point(x, after));
                dots.AddRange([new(x, before, Open: true), new(x, after, Open: false)]);
            }
            else
            {
                path.Append('V').Append(Svg.N(after));
            }
        }

        (drawing.Path, drawing.Dots) = (path.ToString(), dots);
        drawing.MoneyMarks = [.. NiceTicks.Between(drawing.Least, drawing.Most, drawing.Step)];
        var step = NiceTicks.Step(Math.Max(1, drawing.To), frame.MostQuantityMarks, whole: true);
        drawing.QuantityMarks = [.. NiceTicks.Between(0, drawing.To, step).Select(mark => (int)mark)];
        return drawing;
    }

    /// <summary>Across, of a quantity.</summary>
    public double X(int quantity) => Frame.Left + ((Frame.Right - Frame.Left) * (quantity - From) / (To - From));

    /// <summary>Down, of money.</summary>
    public double Y(decimal profit) => Y((double)profit);

    /// <summary>What a profit is above the foot of the plot, which need not be at 0.</summary>
    public decimal AboveFoot(decimal profit) => profit - (decimal)Least;

    /// <summary>Down, of money.</summary>
    public double Y(double profit) => Frame.Bottom - ((Frame.Bottom - Frame.Top) * (profit - Least) / (Most - Least));
}
