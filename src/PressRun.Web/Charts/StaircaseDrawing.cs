using System.Text;
using PressRun.Engine.Ladder;

namespace PressRun.Web.Charts;

/// <summary>Where things stand in the picture of a staircase, in the units of its view box.</summary>
/// <param name="Width">Of the whole picture.</param>
/// <param name="Height">Of the whole picture.</param>
/// <param name="Left">Left edge of the plot.</param>
/// <param name="Top">Top edge of the plot.</param>
/// <param name="Right">Right edge of the plot.</param>
/// <param name="Bottom">Bottom edge of the plot, where the cost is 0.</param>
/// <param name="MostQuantityMarks">Steps of the quantity axis at most.</param>
/// <param name="MostCostMarks">Steps of the cost axis at most.</param>
public sealed record StaircaseFrame(double Width, double Height, double Left, double Top, double Right, double Bottom, int MostQuantityMarks, int MostCostMarks)
{
    /// <summary>Width of the loupe as a part of the plot's.</summary>
    public double LoupeWidth { get; init; } = 0.3;

    /// <summary>Beside its notes on a table.</summary>
    public static StaircaseFrame Wide { get; } = new(760, 376, 52, 42, 742, 328, 10, 4);

    /// <summary>On a phone, one unit a pixel at 390.</summary>
    public static StaircaseFrame Narrow { get; } = new(330, 318, 38, 40, 320, 274, 4, 4) { LoupeWidth = 0.42 };
}

/// <summary>A dot at a jump: closed where the amount holds, open where it does not hold any more.</summary>
public readonly record struct StaircaseDot(double X, double Y, bool Open);

/// <summary>A shaded range of quantities that are dearer than a larger one.</summary>
public readonly record struct ShadedBand(DearBand Band, double X, double Width, char Key)
{
    /// <summary>Middle of the letter: over the band, or beside the letter before where that is too near.</summary>
    public double KeyX { get; init; } = X + (Width / 2);

    /// <summary>The letter of a band by its place: a, b, c ..., and again from a after z.</summary>
    public static char KeyOf(int index) => (char)('a' + (index % 26));
}

/// <summary>A mark on the line with what a copy costs there.</summary>
public readonly record struct UnitCostMark(int Quantity, double X, double Y, decimal UnitCost, string Anchor)
{
    /// <summary>Foot of its figure: below the line, further below where it is pushed to the left of its mark.</summary>
    public double TextY => Y + (Anchor == "end" ? 25 : 19);
}

/// <summary>The picture of a cost curve as a staircase: treads and jumps, no slanted lines. A tread reaches from its quantity up to the next one.</summary>
public sealed class StaircaseDrawing
{
    private const double LeastTread = 0.75;

    // A letter of the key, with room to the next.
    private const double LetterWidth = 13;

    private readonly CostCurve curve;
    private readonly double mostCost;

    private StaircaseDrawing(CostCurve curve, StaircaseFrame frame)
    {
        this.curve = curve;
        Frame = frame;
        var most = (double)curve.Costs.Max();
        CostStep = NiceTicks.Step(most <= 0 ? 1 : most, frame.MostCostMarks, whole: false);
        mostCost = Math.Ceiling(most / CostStep) * CostStep;
        mostCost = mostCost <= 0 ? CostStep : mostCost;
    }

    /// <summary>The frame it is drawn in.</summary>
    public StaircaseFrame Frame { get; }

    /// <summary>Distance of marks on the cost axis.</summary>
    public double CostStep { get; }

    /// <summary>Cost at the top of the plot.</summary>
    public double MostCost => mostCost;

    /// <summary>The line, broken at every jump: horizontal and vertical moves only.</summary>
    public string Path { get; private set; } = "";

    /// <summary>Two dots at each jump.</summary>
    public IReadOnlyList<StaircaseDot> Dots { get; private set; } = [];

    /// <summary>Dear bands, keyed a, b, c ... in order.</summary>
    public IReadOnlyList<ShadedBand> Bands { get; private set; } = [];

    /// <summary>Marks of the quantity axis.</summary>
    public IReadOnlyList<int> QuantityMarks { get; private set; } = [];

    /// <summary>Marks of the cost axis.</summary>
    public IReadOnlyList<double> CostMarks { get; private set; } = [];

    /// <summary>What a copy costs, at the marks of the quantity axis.</summary>
    public IReadOnlyList<UnitCostMark> UnitCosts { get; private set; } = [];

    /// <summary>Draws a curve.</summary>
    /// <param name="curve">Landed cost at every whole quantity.</param>
    /// <param name="bands">Its dear bands.</param>
    /// <param name="jumps">Its jumps.</param>
    /// <param name="frame">Where.</param>
    public static StaircaseDrawing Of(CostCurve curve, IReadOnlyList<DearBand> bands, IReadOnlyList<LadderJump> jumps, StaircaseFrame frame)
    {
        var drawing = new StaircaseDrawing(curve, frame);
        drawing.Path = drawing.Line(jumps);
        drawing.Dots = [.. jumps.SelectMany(jump => new StaircaseDot[]
        {
            new(drawing.X(jump.At), drawing.Y(jump.Before), Open: true),
            new(drawing.X(jump.At), drawing.Y(jump.After), Open: false),
        })];
        var free = double.MinValue;
        drawing.Bands = [.. bands.Select((band, i) => new ShadedBand(
            band, drawing.X(band.From), Math.Max(3, drawing.X(band.Better) - drawing.X(band.From)), ShadedBand.KeyOf(i))).Select(band =>
            {
                var key = Math.Max(band.KeyX, free);
                free = key + LetterWidth;
                return band with { KeyX = key };
            })];
        drawing.CostMarks = [.. NiceTicks.Between(0, drawing.mostCost, drawing.CostStep)];
        var step = NiceTicks.Step(Math.Max(1, curve.To - curve.From), frame.MostQuantityMarks, whole: true);
        drawing.QuantityMarks = [.. NiceTicks.Between(curve.From, curve.To, step).Select(mark => (int)mark)];
        drawing.UnitCosts = [.. drawing.QuantityMarks.Select(drawing.UnitCostAt)];
        return drawing;
    }

    /// <summary>Across, of a quantity.</summary>
    public double X(int quantity) => curve.To == curve.From
        ? (Frame.Left + Frame.Right) / 2
        : Frame.Left + ((Frame.Right - Frame.Left) * (quantity - curve.From) / (curve.To - curve.From));

    /// <summary>Down, of an amount.</summary>
    public double Y(decimal cost) => Y((double)cost);

    /// <summary>Down, of an amount.</summary>
    public double Y(double cost) => Frame.Bottom - ((Frame.Bottom - Frame.Top) * cost / mostCost);

    private UnitCostMark UnitCostAt(int quantity)
    {
        var (x, cost) = (X(quantity), curve.At(quantity));
        var anchor = x > Frame.Right - 14 ? "end" : "middle";
        return new UnitCostMark(quantity, x, Y(cost), new Rung(quantity, cost).UnitCost, anchor);
    }

    private string Line(IReadOnlyList<LadderJump> jumps)
    {
        var at = jumps.Select(jump => jump.At).ToHashSet();
        var path = new StringBuilder();
        path.Append('M').Append(Svg.Point(X(curve.From), Y(curve.At(curve.From))));
        var drawnTo = X(curve.From);
        for (var quantity = curve.From + 1; quantity <= curve.To; quantity++)
        {
            var (x, y) = (X(quantity), Svg.N(Y(curve.At(quantity))));
            if (at.Contains(quantity))
            {
                path.Append('H').Append(Svg.N(x)).Append('M').Append(Svg.N(x)).Append(',').Append(y);
                drawnTo = x;
            }
            else if (x - drawnTo >= LeastTread || quantity == curve.To)
            {
                path.Append('H').Append(Svg.N(x)).Append('V').Append(y);
                drawnTo = x;
            }
        }

        return path.ToString();
    }
}
