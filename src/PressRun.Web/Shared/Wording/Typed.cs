using System.Globalization;
using System.Text.RegularExpressions;
using PressRun.Data.Import.Tables;
using PressRun.Data.Presses;
using PressRun.Engine.Measures;

namespace PressRun.Web.Shared.Wording;

/// <summary>Reads what a person types into a field, in the viewer's locale and the press's units. Null where it cannot be read.</summary>
public static partial class Typed
{
    // No measure is longer, and the pattern stays quick.
    private const int MostMeasure = 100;

    private const char ArabicGroup = '\u066C';
    private const char ArabicPercent = '\u066A';

    private static readonly Dictionary<char, string> Vulgar = new()
    {
        ['¼'] = "1/4", ['½'] = "1/2", ['¾'] = "3/4", ['⅛'] = "1/8", ['⅜'] = "3/8", ['⅝'] = "5/8", ['⅞'] = "7/8", ['⅓'] = "1/3", ['⅔'] = "2/3",
    };

    /// <summary>A whole number of 0 or more; spaces are allowed, and the locale's group separators where they part thousands: <c>1,5</c> is no count.</summary>
    public static int? Count(string typed, CultureInfo culture)
    {
        var plain = Spaceless(NumberCells.PlainDigits(typed));
        var groups = plain.Split(plain.Contains(ArabicGroup) ? ArabicGroup.ToString() : culture.NumberFormat.NumberGroupSeparator);
        var grouped = groups.Length == 1 || (groups[0].Length is 1 or 2 or 3 && groups[^1].Length == 3 && groups[1..^1].All(group => group.Length is 2 or 3));
        return grouped && int.TryParse(string.Concat(groups), NumberStyles.None, CultureInfo.InvariantCulture, out var count) ? count : null;
    }

    /// <summary>An amount or another decimal number, as in the cells of tables: the locale's decimal sign is read first; a lone point or comma that cannot
    /// group thousands is understood as one too.</summary>
    public static decimal? Number(string typed, CultureInfo culture) => NumberCells.TryParse(typed, culture, out var number) ? number : null;

    /// <summary>A day: year-month-day, in figures in the order of the viewer's locale (behind points the day comes first), or with its month in words.</summary>
    public static DateOnly? Day(string typed, CultureInfo culture) =>
        NumberCells.PlainDigits(typed).Trim() is var plain && new DayCell().Read(plain, new CellManners(culture, UnitSystem.Metric)).Value is DateOnly day || DateOnly.TryParse(plain, Texts.Language, DateTimeStyles.AllowWhiteSpaces, out day)
            ? day
            : null;

    /// <summary>A percentage, with or without its sign, as a fraction: <c>12.5</c> is 0.125.</summary>
    public static decimal? Percent(string typed, CultureInfo culture) =>
        Number(string.Concat(typed.Replace(culture.NumberFormat.PercentSymbol, "", StringComparison.Ordinal).Where(sign => sign is not ('%' or ArabicPercent))), culture) is { } number
            ? number / 100m
            : null;

    /// <summary>A length: <c>140</c>, <c>14 cm</c>, <c>5 1/2 in</c>, <c>5½</c>; without a unit it is in <paramref name="units"/>' own.</summary>
    public static Length? Length(string typed, UnitSystem units, CultureInfo culture)
    {
        if (Measure(typed, culture) is not var (number, unit))
        {
            return null;
        }

        return unit switch
        {
            "" => units == UnitSystem.Imperial ? Engine.Measures.Length.FromInches(number) : Engine.Measures.Length.FromMillimetres(number),
            "mm" => Engine.Measures.Length.FromMillimetres(number),
            "cm" => Engine.Measures.Length.FromCentimetres(number),
            "in" or "inch" or "inches" or "\"" or "″" => Engine.Measures.Length.FromInches(number),
            "um" or "µm" or "μm" => Engine.Measures.Length.FromMicrometres(number),
            _ => null,
        };
    }

    /// <summary>A mass: <c>56</c>, <c>2 oz</c>, <c>1.2 kg</c>; without a unit it is in <paramref name="units"/>' own.</summary>
    public static Mass? Mass(string typed, UnitSystem units, CultureInfo culture)
    {
        if (Measure(typed, culture) is not var (number, unit))
        {
            return null;
        }

        return unit switch
        {
            "" => units == UnitSystem.Imperial ? Engine.Measures.Mass.FromOunces(number) : Engine.Measures.Mass.FromGrams(number),
            "g" => Engine.Measures.Mass.FromGrams(number),
            "kg" => Engine.Measures.Mass.FromKilograms(number),
            "oz" => Engine.Measures.Mass.FromOunces(number),
            "lb" or "lbs" => Engine.Measures.Mass.FromPounds(number),
            _ => null,
        };
    }

    // The number of a measure (decimal, or whole and common fraction) and the letters after it.
    private static (decimal Number, string Unit)? Measure(string typed, CultureInfo culture)
    {
        if (typed.Length > MostMeasure)
        {
            return null;
        }

        var text = string.Concat(Thousands().Replace(NumberCells.PlainDigits(typed).Trim(), "").Select(sign => Vulgar.TryGetValue(sign, out var fraction) ? " " + fraction : sign.ToString()))
            .Replace('⁄', '/').Trim();
        var match = MeasurePattern().Match(text);
        var whole = match.Groups["whole"].Value;
        if (!match.Success || (whole.Length == 0 && !match.Groups["over"].Success))
        {
            return null;
        }

        var number = whole.Length == 0 ? 0m : Number(whole, culture);
        if (match.Groups["over"].Success)
        {
            var over = decimal.Parse(match.Groups["over"].Value, CultureInfo.InvariantCulture);
            var under = decimal.Parse(match.Groups["under"].Value, CultureInfo.InvariantCulture);
            number = under == 0m ? null : number + (over / under);
        }

        return number is { } known ? (known, match.Groups["unit"].Value.ToLowerInvariant()) : null;
    }

    private static string Spaceless(string text) => string.Concat(text.Where(sign => !char.IsWhiteSpace(sign)));

    // A space or an apostrophe before three digits parts thousands, and is no gap between a whole number and its fraction.
    [GeneratedRegex("""(?<=\d)[\s'\u2019](?=\d{3}(?!\d|\s*/))""")]
    private static partial Regex Thousands();

    // Signs between the digits of any region (CLDR): what they mean is for whoever reads the number.
    [GeneratedRegex("""^(?<whole>[-\u2212]?[\d.,\u066B\u066C\u2E41]+(?![\d]*\s*/))?\s*(?:(?<over>\d{1,4})\s*/\s*(?<under>\d{1,4}))?\s*(?<unit>[a-zA-Zµμ"″]*)$""", RegexOptions.ExplicitCapture)]
    private static partial Regex MeasurePattern();
}
