using System.Text;
using PressRun.Engine.Copies;
using PressRun.Web.Charts;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Copies;

/// <summary>Where things stand in the picture of copies over time, in the units of its view box.</summary>
/// <param name="Width">Of the whole picture.</param>
/// <param name="Height">Of the whole picture.</param>
/// <param name="Left">Left edge of the plot.</param>
/// <param name="Top">Top edge of the plot.</param>
/// <param name="Right">Right edge of the plot.</param>
/// <param name="Bottom">Bottom edge of the plot.</param>
/// <param name="MostDayMarks">Marks of the days at most.</param>
public sealed record CopiesFrame(double Width, double Height, double Left, double Top, double Right, double Bottom, int MostDayMarks)
{
    /// <summary>On a table.</summary>
    public static CopiesFrame Wide { get; } = new(1060, 300, 52, 30, 1046, 262, 12);

    /// <summary>On a phone, one unit a pixel at 390.</summary>
    public static CopiesFrame Narrow { get; } = new(330, 260, 40, 28, 322, 224, 4);
}

/// <summary>A time without copies, shaded and lettered.</summary>
public readonly record struct WithoutCopies(TimeWithoutCopies Time, double X, double Width, char Key);

/// <summary>A printing or a count on the line.</summary>
/// <param name="X">Across.</param>
/// <param name="Y">Down, at what was on hand when the day ended.</param>
/// <param name="Printed">True for a printing, false for a count.</param>
/// <param name="Label">A printing's copies, where there is room for them; null for a count.</param>
public readonly record struct CopiesMark(double X, double Y, bool Printed, PlacedLabel? Label);

/// <summary>A mark of the axis of days.</summary>
public readonly record struct DayMark(double X, string Words);

/// <summary>
/// Copies on hand over time as a step line: level from one day with a movement to the next, and straight up or down on it. A day's line shows how it
/// ended. The axis of copies begins at nothing, or below where more copies went than were known of.
/// </summary>
public sealed class CopiesDrawing
{
    // Shorter than this and a first day would stand in the middle of nothing.
    private const int LeastDays = 14;
    private const int MostCopiesMarks = 4;
    private const double NarrowestShade = 2;
    private const int DaysPerMonth = 30;

    private static readonly int[] MonthSteps = [1, 2, 3, 6, 12, 24, 60, 120];

    private readonly DateOnly from;
    private readonly DateOnly to;
    private readonly double least;
    private readonly double most;

    private CopiesDrawing(IReadOnlyList<(DateOnly Day, CopiesPosition Position)> days, DateOnly today, CopiesFrame frame)
    {
        Frame = frame;
        to = days[^1].Day > today ? days[^1].Day : today;
        from = to.DayNumber - days[0].Day.DayNumber < LeastDays ? to.AddDays(-LeastDays) : days[0].Day;
        var (low, high) = (Math.Min(0, days.Min(day => day.Position.OnHand)), Math.Max(1, days.Max(day => day.Position.OnHand)));
        var step = NiceTicks.Step(high - low, MostCopiesMarks, whole: true);
        (least, most) = (Math.Floor(low / step) * step, Math.Ceiling(high / step) * step);
        CopiesMarks = [.. NiceTicks.Between(least, most, step)];
        Path = Line(days);
    }

    /// <summary>The frame it is drawn in.</summary>
    public CopiesFrame Frame { get; }

    /// <summary>The line: level and upright moves only.</summary>
    public string Path { get; }

    /// <summary>Marks of the axis of copies.</summary>
    public IReadOnlyList<double> CopiesMarks { get; }

    /// <summary>Marks of the axis of days.</summary>
    public IReadOnlyList<DayMark> DayMarks { get; private init; } = [];

    /// <summary>Times without copies, keyed a, b, c ... in order.</summary>
    public IReadOnlyList<WithoutCopies> Gaps { get; private init; } = [];

    /// <summary>Printings and counts.</summary>
    public IReadOnlyList<CopiesMark> Marks { get; private init; } = [];

    /// <summary>Draws a ledger.</summary>
    /// <param name="view">With one line or more.</param>
    /// <param name="format">How days and copies are written.</param>
    /// <param name="frame">Where.</param>
    public static CopiesDrawing Of(CopiesView view, PressFormat format, CopiesFrame frame)
    {
        var drawing = new CopiesDrawing(view.Days, view.Today, frame);
        var ends = view.Days.ToDictionary(day => day.Day, day => day.Position.OnHand);
        return new CopiesDrawing(view.Days, view.Today, frame)
        {
            DayMarks = [.. drawing.MarksOfDays(format)],
            Gaps =
            [
                .. view.TimesWithoutCopies.Select((time, place) => new WithoutCopies(
                    time, drawing.X(time.From), Math.Max(NarrowestShade, drawing.X(time.To.AddDays(1)) - drawing.X(time.From)), (char)('a' + (place % 26)))),
            ],
            Marks = [.. drawing.Marked(view, ends, format)],
        };
    }

    /// <summary>Across, of the beginning of a day.</summary>
    public double X(DateOnly day) => Frame.Left + ((Frame.Right - Frame.Left) * (Math.Min(day.DayNumber, to.DayNumber + 1) - from.DayNumber) / (to.DayNumber + 1 - from.DayNumber));

    /// <summary>Down, of a number of copies.</summary>
    public double Y(double copies) => Frame.Bottom - ((Frame.Bottom - Frame.Top) * (copies - least) / (most - least));

    // Where printings stand close, their copies keep out of each other's way and inside the picture.
    private IEnumerable<CopiesMark> Marked(CopiesView view, Dictionary<DateOnly, long> ends, PressFormat format)
    {
        var moved = view.Rows.Where(row => row.CanBeTakenBack && row.Line.Movement.Kind is MovementKind.Printed or MovementKind.Counted).Select(row => row.Line.Movement).ToList();
        var room = new LabelRoom(Frame.Left, 0, Frame.Width, Frame.Bottom);
        moved.ForEach(line => room.Take(X(line.Day), Y(ends[line.Day])));
        TakeLine(room, view.Days);
        foreach (var line in moved)
        {
            var (x, y, printed) = (X(line.Day), Y(ends[line.Day]), line.Kind == MovementKind.Printed);
            yield return new CopiesMark(x, y, printed, printed ? room.Place("+" + format.Count(line.Copies), x, y) : null);
        }
    }

    // The same moves as of the line that is drawn.
    private void TakeLine(LabelRoom room, IReadOnlyList<(DateOnly Day, CopiesPosition Position)> days)
    {
        var (x, y) = (X(days[0].Day), Y(0));
        foreach (var (day, position) in days)
        {
            var (nextX, nextY) = (X(day), Y(position.OnHand));
            room.TakeLine(x, y, nextX, y);
            room.TakeLine(nextX, y, nextX, nextY);
            (x, y) = (nextX, nextY);
        }

        room.TakeLine(x, y, Frame.Right, y);
    }

    private string Line(IReadOnlyList<(DateOnly Day, CopiesPosition Position)> days)
    {
        var path = new StringBuilder();
        path.Append('M').Append(Svg.Point(X(days[0].Day), Y(0)));
        foreach (var (day, position) in days)
        {
            path.Append('H').Append(Svg.N(X(day))).Append('V').Append(Svg.N(Y(position.OnHand)));
        }

        return path.Append('H').Append(Svg.N(Frame.Right)).ToString();
    }

    private IEnumerable<DayMark> MarksOfDays(PressFormat format)
    {
        var days = to.DayNumber - from.DayNumber;
        if (days <= DaysPerMonth * 2)
        {
            var stride = Math.Max(1, (days + Frame.MostDayMarks - 1) / Frame.MostDayMarks);
            for (var day = from; day <= to; day = day.AddDays(stride))
            {
                yield return new DayMark(X(day), format.DayOfYear(day));
            }

            yield break;
        }

        var step = MonthSteps.First(months => days / (DaysPerMonth * months) <= Frame.MostDayMarks || months == MonthSteps[^1]);
        for (var month = new DateOnly(from.Year, 1, 1); month <= to; month = month.AddMonths(step))
        {
            if (month >= from)
            {
                yield return new DayMark(X(month), format.MonthOfAxis(month));
            }
        }
    }
}
