using System.Globalization;
using System.Text.RegularExpressions;

namespace PressRun.Data.Import.Tables;

/// <summary>
/// A day. Year-month-day is always understood (ISO 8601). Of a day in figures with the year last, the column's cells say which comes first where one of them is over twelve;
/// else points put the day first, as everywhere where points part a date (common practice), and other signs follow the person's own manners.
/// </summary>
public sealed partial class DayCell : CellKind
{
    /// <summary>The order 31/12/2026, as a unit of the column.</summary>
    public const string DayFirst = "day first";

    /// <summary>The order 12/31/2026, as a unit of the column.</summary>
    public const string MonthFirst = "month first";

    private const string Iso = "yyyy-MM-dd";

    private static readonly string[] DaysFirst = ["d.M.yyyy", "d.M.yy"];
    private static readonly string[] MonthsFirst = ["M.d.yyyy", "M.d.yy"];

    /// <inheritdoc/>
    public override bool IsNumeric => true;

    /// <inheritdoc/>
    public override IReadOnlyList<string> Units => [DayFirst, MonthFirst];

    /// <summary>The order that the cells of a column can only have; null where they fit both orders, or neither.</summary>
    public static string? OrderOf(IEnumerable<string> cells)
    {
        var figures = cells.Select(cell => Figures().Match(cell)).Where(match => match.Success).ToList();
        var dayFirst = figures.Exists(match => Part(match, 1) > 12);
        var monthFirst = figures.Exists(match => Part(match, 2) > 12);
        return dayFirst == monthFirst ? null : dayFirst ? DayFirst : MonthFirst;
    }

    /// <inheritdoc/>
    public override CellRead Read(string text, CellManners manners, string? unit = null)
    {
        if (DateOnly.TryParseExact(text, Iso, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
        {
            return CellRead.Of(day);
        }

        var figures = Figures().Match(text);
        var stands = figures.Success
            ? DateOnly.TryParseExact(
                string.Join('.', figures.Groups[1].Value, figures.Groups[2].Value, figures.Groups[3].Value), Order(figures, manners, unit), CultureInfo.InvariantCulture, DateTimeStyles.None, out day)
            : DateOnly.TryParse(text, manners.Culture, DateTimeStyles.AllowWhiteSpaces, out day);
        return stands ? CellRead.Of(day) : CellRead.Refused(YearFirst().IsMatch(text) ? "The calendar has no such day: write another, such as 2026-03-02." : "Write a day as year-month-day, such as 2026-03-02.");
    }

    /// <inheritdoc/>
    public override string Write(object value, CellManners manners) => ((DateOnly)value).ToString(Iso, CultureInfo.InvariantCulture);

    private static string[] Order(Match figures, CellManners manners, string? unit)
    {
        var pattern = manners.Culture.DateTimeFormat.ShortDatePattern;
        var monthFirst = unit switch
        {
            DayFirst => false,
            MonthFirst => true,
            _ => figures.Groups["sign"].Value != "." && pattern.IndexOf('M', StringComparison.Ordinal) < pattern.IndexOf('d', StringComparison.Ordinal),
        };
        return monthFirst ? MonthsFirst : DaysFirst;
    }

    private static int Part(Match figures, int group) => int.Parse(figures.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^\s*([0-9]{1,2})\s*(?<sign>[./-])\s*([0-9]{1,2})\s*\k<sign>\s*([0-9]{4}|[0-9]{2})\s*$")]
    private static partial Regex Figures();

    [GeneratedRegex("^[0-9]{4}-[0-9]{2}-[0-9]{2}$")]
    private static partial Regex YearFirst();
}
