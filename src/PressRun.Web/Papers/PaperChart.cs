using System.Text;
using PressRun.Data.Presses;
using PressRun.Engine.Comparing;
using PressRun.Engine.Measures;
using PressRun.Web.Charts;

namespace PressRun.Web.Papers;

/// <summary>Where things stand in the picture of papers, in the units of its view box.</summary>
/// <param name="Width">Of the whole picture.</param>
/// <param name="Height">Of the whole picture.</param>
/// <param name="Left">Left edge of the plot.</param>
/// <param name="Top">Top edge of the plot.</param>
/// <param name="Right">Right edge of the plot.</param>
/// <param name="Bottom">Bottom edge of the plot.</param>
/// <param name="MostMassMarks">Steps of the mass axis at most.</param>
public sealed record PaperFrame(double Width, double Height, double Left, double Top, double Right, double Bottom, int MostMassMarks)
{
    /// <summary>Beside its notes on a table.</summary>
    public static PaperFrame Wide { get; } = new(760, 380, 52, 30, 742, 330, 8);

    /// <summary>On a phone, one unit a pixel at 390.</summary>
    public static PaperFrame Narrow { get; } = new(330, 330, 40, 28, 322, 284, 4);
}

/// <summary>How a paper stands out, by its shape in the picture.</summary>
public enum PaperShape
{
    /// <summary>A dot.</summary>
    Dot,

    /// <summary>A ring: the papers of now.</summary>
    Now,

    /// <summary>A diamond: the heaviest that keeps the postage step.</summary>
    Pick,

    /// <summary>A square: the cheapest.</summary>
    Cheapest,

    /// <summary>A triangle: the lightest.</summary>
    Lightest,
}

/// <summary>A paper that is named in the picture.</summary>
/// <param name="Row">The paper.</param>
/// <param name="Shape">How it is drawn.</param>
/// <param name="X">Across.</param>
/// <param name="Y">Down.</param>
/// <param name="Label">What stands beside it; null where there is no room, and where it stands on the mark of another that tells its number too.</param>
public sealed record NamedPaper(PaperRow Row, PaperShape Shape, double X, double Y, PlacedLabel? Label);

/// <summary>A postage step in the picture.</summary>
/// <param name="Line">The step.</param>
/// <param name="Key">Its letter.</param>
/// <param name="X">Across.</param>
public sealed record DrawnLine(PostageLine Line, char Key, double X);

/// <summary>The picture of papers: what a copy costs in the reader's hands against what it weighs, with the postage steps as upright lines.</summary>
public sealed class PaperChart
{
    // A small book's papers differ by cents and grams: the axes begin near the least and leave a little air.
    private const double Air = 0.09;
    private const double LeastSpan = 0.02;
    private const int MostCostMarks = 5;
    private const decimal Beyond = 0.3m;

    /// <summary>Up to so many papers each has its number beside it, and its name where there is room; of more, only what stands out is named, by what it stands out for.</summary>
    public const int NamedAtMost = 16;

    // Marks no further apart than this lie on each other.
    private const double OneMark = 7;

    private readonly PaperFrame frame;
    private readonly double perUnit;
    private readonly (double From, double To) mass;
    private readonly (double From, double To) cost;

    private PaperChart(PaperReading reading, UnitSystem units, PaperFrame frame)
    {
        this.frame = frame;
        perUnit = units == UnitSystem.Imperial ? (double)Mass.GramsPerOunce : 1;
        Posted = [.. reading.Rows.Where(row => row.InHand is not null)];
        mass = Span(Posted.Select(row => row.Copy.Mass).Concat(reading.Lines.Where(line => Reaches(reading, line)).Select(line => line.CopyMass)).Select(of => (double)of.Grams / perUnit));
        cost = Span(Posted.Select(row => (double)row.InHand!.Value));
    }

    /// <summary>Where it is drawn.</summary>
    public PaperFrame Frame => frame;

    /// <summary>The papers that can be drawn: those that some service takes.</summary>
    public IReadOnlyList<PaperRow> Posted { get; }

    /// <summary>Marks of the mass axis, in the press's unit.</summary>
    public IReadOnlyList<double> MassMarks { get; private set; } = [];

    /// <summary>Marks of the cost axis.</summary>
    public IReadOnlyList<double> CostMarks { get; private set; } = [];

    /// <summary>Every paper as one path of points; those that fall on one place are drawn once.</summary>
    public string Cloud { get; private set; } = "";

    /// <summary>Papers that stand out, and all of them where they are few.</summary>
    public IReadOnlyList<NamedPaper> Named { get; private set; } = [];

    /// <summary>Postage steps within the picture.</summary>
    public IReadOnlyList<DrawnLine> Lines { get; private set; } = [];

    /// <summary>Draws a reading.</summary>
    /// <param name="reading">What is drawn.</param>
    /// <param name="units">Of the mass axis.</param>
    /// <param name="name">What a paper is called beside its mark.</param>
    /// <param name="frame">Where.</param>
    public static PaperChart Of(PaperReading reading, UnitSystem units, Func<PaperRow, string> name, PaperFrame frame)
    {
        var chart = new PaperChart(reading, units, frame);
        if (chart.Posted.Count == 0)
        {
            return chart;
        }

        chart.MassMarks = [.. NiceTicks.Between(chart.mass.From, chart.mass.To, NiceTicks.Step(chart.mass.To - chart.mass.From, frame.MostMassMarks, whole: false))];
        chart.CostMarks = [.. NiceTicks.Between(chart.cost.From, chart.cost.To, NiceTicks.Step(chart.cost.To - chart.cost.From, MostCostMarks, whole: false))];
        chart.Lines = [.. reading.Lines.Select((line, place) => new DrawnLine(line, ShadedBand.KeyOf(place), chart.X(line.CopyMass))).Where(line => Reaches(reading, line.Line))];
        chart.Cloud = chart.Points();
        chart.Named = chart.Names(reading, name);
        return chart;
    }

    /// <summary>Across, of a mark of the mass axis.</summary>
    public double X(double mark) => frame.Left + ((frame.Right - frame.Left) * (mark - mass.From) / (mass.To - mass.From));

    /// <summary>Down, of an amount.</summary>
    public double Y(double amount) => frame.Bottom - ((frame.Bottom - frame.Top) * (amount - cost.From) / (cost.To - cost.From));

    /// <summary>The numbers by which the picture and the table tell papers apart: the cheapest is 1. Empty where there are too many.</summary>
    public static IReadOnlyDictionary<PaperRow, int> Numbers(PaperReading reading) => reading.Rows.Count > NamedAtMost
        ? new Dictionary<PaperRow, int>()
        : reading.Rows.OrderBy(row => row.InHand is null).ThenBy(row => row.InHand).Select((row, place) => (row, Number: place + 1))
            .ToDictionary(pair => pair.row, pair => pair.Number, (IEqualityComparer<PaperRow>)ReferenceEqualityComparer.Instance);

    /// <summary>Whether a postage step lies near enough to the papers to be drawn with them.</summary>
    public static bool Reaches(PaperReading reading, PostageLine line)
    {
        var (lightest, heaviest) = (reading.Lightest.Copy.Mass, reading.Rows.Max(row => row.Copy.Mass.Grams));
        return line.CopyMass.Grams <= heaviest + (Beyond * Math.Max(heaviest - lightest.Grams, heaviest * Beyond));
    }

    /// <summary>How a paper stands out; what it is now outweighs the rest, as a ring around it.</summary>
    public static PaperShape ShapeOf(PaperReading reading, PaperRow row) =>
        row == reading.KeepsStep ? PaperShape.Pick
        : row == reading.Now ? PaperShape.Now
        : row == reading.Cheapest ? PaperShape.Cheapest
        : row == reading.Lightest ? PaperShape.Lightest
        : PaperShape.Dot;

    private static string Word(PaperShape shape) => shape switch
    {
        PaperShape.Now => Say($"as planned"),
        PaperShape.Pick => Say($"keeps the postage"),
        PaperShape.Cheapest => Say($"cheapest"),
        _ => Say($"lightest"),
    };

    private double X(Mass of) => X((double)of.Grams / perUnit);

    private string Points()
    {
        var path = new StringBuilder();
        foreach (var (x, y) in Posted.Select(row => (Math.Round(X(row.Copy.Mass)), Math.Round(Y((double)row.InHand!.Value)))).Distinct())
        {
            path.Append('M').Append(Svg.Point(x, y)).Append("h0");
        }

        return path.ToString();
    }

    private List<NamedPaper> Names(PaperReading reading, Func<PaperRow, string> name)
    {
        var numbers = Numbers(reading);
        List<NamedPaper> marks =
        [
            .. Posted.Select(row => new NamedPaper(row, ShapeOf(reading, row), X(row.Copy.Mass), Y((double)row.InHand!.Value), null))
                .Where(mark => numbers.Count > 0 || mark.Shape != PaperShape.Dot).OrderBy(mark => mark.Shape == PaperShape.Dot),
        ];
        var room = new LabelRoom(frame.Left, frame.Top, frame.Right, frame.Bottom);
        marks.ForEach(mark => room.Take(mark.X, mark.Y));
        foreach (var line in Lines)
        {
            room.TakeLine(line.X, frame.Top, line.X, frame.Bottom);
        }

        return numbers.Count == 0 ? marks.ConvertAll(mark => mark with { Label = room.Place(Word(mark.Shape), mark.X, mark.Y) }) : Numbered(marks, numbers, name, room);
    }

    // Every mark gets its number first; then names take what room is left, those that stand out before the others.
    private static List<NamedPaper> Numbered(List<NamedPaper> marks, IReadOnlyDictionary<PaperRow, int> numbers, Func<PaperRow, string> name, LabelRoom room)
    {
        var placed = new List<NamedPaper>();
        var alone = new HashSet<PaperRow>(ReferenceEqualityComparer.Instance);
        foreach (var on in Together(marks))
        {
            var told = string.Join(", ", on.Select(mark => numbers[mark.Row]).Order());
            placed.Add(on[0] with { Label = room.PlaceNear(told, on[0].X, on[0].Y) });
            placed.AddRange(on.Skip(1));
            if (on.Count == 1)
            {
                alone.Add(on[0].Row);
            }
        }

        return placed.ConvertAll(mark => alone.Contains(mark.Row) && mark.Label is { Led: false } number ? mark with { Label = WithName(mark, number) } : mark);

        PlacedLabel WithName(NamedPaper mark, PlacedLabel number)
        {
            room.Free(number);
            if (room.Place($"{number.Text} {name(mark.Row)}", mark.X, mark.Y) is { } whole)
            {
                return whole;
            }

            room.TakeBack(number);
            return number;
        }
    }

    private static List<List<NamedPaper>> Together(List<NamedPaper> marks)
    {
        var groups = new List<List<NamedPaper>>();
        foreach (var mark in marks)
        {
            if (groups.Find(on => Math.Abs(on[0].X - mark.X) < OneMark && Math.Abs(on[0].Y - mark.Y) < OneMark) is { } group)
            {
                group.Add(mark);
            }
            else
            {
                groups.Add([mark]);
            }
        }

        return groups;
    }

    private static (double From, double To) Span(IEnumerable<double> values)
    {
        var all = values.DefaultIfEmpty(1).ToList();
        var (least, most) = (all.Min(), all.Max());
        var air = Math.Max((most - least) * Air, most * LeastSpan);
        return (Math.Max(0, least - air), most + Math.Max(air, LeastSpan));
    }
}
