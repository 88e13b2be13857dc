using System.Globalization;
using System.Text.RegularExpressions;
using PressRun.Data.Import.Tables;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Sheets;

namespace PressRun.Data.Import.Shapes;

/// <summary>Sheets that are named by their two measures, as many shops do: <c>320 x 450</c>, <c>32 x 45 cm</c>, <c>12 x 18 in</c>.</summary>
internal static partial class SheetMeasures
{
    // No two measures are longer, and the pattern stays quick.
    private const int MostText = 40;

    /// <summary>The id of the one sheet with these measures, whichever comes first; of a standard size where the list has none; null where there is none or are several.</summary>
    public static string? Find(string text, IReadOnlyList<Sheet> sheets)
    {
        if (text.Length > MostText || Measures().Match(text) is not { Success: true } match)
        {
            return null;
        }

        var unit = match.Groups["unit"].Value.ToLowerInvariant();
        var (width, height) = (Side(match.Groups["width"].Value, unit), Side(match.Groups["height"].Value, unit));
        var fits = sheets.Where(sheet => Fits(sheet.Width, sheet.Height)).Select(sheet => sheet.Id).ToList();
        // Of a sheet and those that stand in for it the sheet itself is meant.
        var own = fits.Where(id => !fits.Exists(other => other != id && OfferSheets.IsOf(id, other))).Take(2).ToList();
        return own.Count == 1 ? own[0] : own.Count > 1 ? null : StandardSizes.All.FirstOrDefault(size => Fits(size.Size.Width, size.Size.Height))?.Name;

        bool Fits(Length one, Length other) => (one == width && other == height) || (one == height && other == width);
    }

    /// <summary>The one standard size that a longer text names, such as <c>SRA3 (320 x 450 mm)</c>; null where it names none, or several.</summary>
    public static string? Named(string text)
    {
        var named = text.Length > MostText ? [] : Parts().Split(text).Select(StandardSizes.Find).OfType<NamedSize>().Distinct().Take(2).ToList();
        return named.Count == 1 ? named[0].Name : null;
    }

    private static Length? Side(string number, string unit) =>
        !NumberCells.TryParse(number, CultureInfo.InvariantCulture, out var side) ? null
        : unit switch
        {
            "cm" => Length.FromCentimetres(side),
            "in" or "\"" or "\u2033" => Length.FromInches(side),
            _ => Length.FromMillimetres(side),
        };

    [GeneratedRegex(@"[\s(),;/-]+")]
    private static partial Regex Parts();

    [GeneratedRegex("""^\s*(?<width>\d{1,4}(?:[.,]\d{1,3})?)\s*(?:mm|cm|in|["\u2033])?\s*[x\u00D7*/]\s*(?<height>\d{1,4}(?:[.,]\d{1,3})?)\s*(?<unit>mm|cm|in|["\u2033])?\s*$""", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture)]
    private static partial Regex Measures();
}
