using System.Globalization;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile;

/// <summary>
/// Lengths, masses and paper weights as text with a unit, the way a person writes them: <c>5.5 in</c>, <c>5 1/2 in</c>, <c>140 mm</c>,
/// <c>2.5 kg</c>, <c>80 lb cover</c>. Capitals and spaces do not matter. The decimal mark is the culture's; the job file uses the invariant one.
/// No thousands separators: a mark that could be either is not guessed.
/// </summary>
public static class MeasureText
{
    private static readonly Dictionary<string, decimal> MillimetresIn = new(StringComparer.OrdinalIgnoreCase)
    {
        ["mm"] = 1m, ["cm"] = 10m, ["m"] = 1000m,
        ["um"] = 0.001m, ["\u00B5m"] = 0.001m, ["\u03BCm"] = 0.001m,
        ["in"] = Length.MillimetresPerInch, ["inch"] = Length.MillimetresPerInch, ["inches"] = Length.MillimetresPerInch,
        ["\""] = Length.MillimetresPerInch, ["\u2033"] = Length.MillimetresPerInch,
    };

    private static readonly Dictionary<string, decimal> GramsIn = new(StringComparer.OrdinalIgnoreCase)
    {
        ["g"] = 1m, ["kg"] = 1000m, ["mg"] = 0.001m,
        ["oz"] = Mass.GramsPerOunce, ["lb"] = Mass.GramsPerPound, ["lbs"] = Mass.GramsPerPound,
    };

    private static readonly string[] GrammageUnits = ["gsm", "g/m2", "g/m\u00B2", "g/m^2"];

    private static readonly string[] PoundUnits = ["lbs", "lb", "#"];

    private static readonly Dictionary<string, PaperCategory> Categories = new(StringComparer.OrdinalIgnoreCase)
    {
        ["bond"] = PaperCategory.Bond, ["writing"] = PaperCategory.Bond, ["ledger"] = PaperCategory.Bond,
        ["text"] = PaperCategory.Text, ["book"] = PaperCategory.Text, ["offset"] = PaperCategory.Text,
        ["cover"] = PaperCategory.Cover, ["index"] = PaperCategory.Index, ["tag"] = PaperCategory.Tag, ["bristol"] = PaperCategory.Bristol,
    };

    /// <summary>Reads a length: a number or a fraction and mm, cm, m, in (also <c>"</c>) or um (also µm).</summary>
    /// <returns>False where the text is none; the length is never negative and may be zero, ranges are the caller's.</returns>
    public static bool TryParseLength(string text, IFormatProvider culture, out Length length)
    {
        length = default;
        if (!TryParseNumber(text, culture, out var number, out var unit) || !MillimetresIn.TryGetValue(unit, out var millimetres))
        {
            return false;
        }

        length = Length.FromMillimetres(number.Times(millimetres));
        return true;
    }

    /// <summary>Reads a mass: a number or a fraction and g, kg, mg, oz or lb.</summary>
    /// <returns>False where the text is none; the mass is never negative and may be zero, ranges are the caller's.</returns>
    public static bool TryParseMass(string text, IFormatProvider culture, out Mass mass)
    {
        mass = default;
        if (!TryParseNumber(text, culture, out var number, out var unit) || !GramsIn.TryGetValue(unit, out var grams))
        {
            return false;
        }

        mass = Mass.FromGrams(number.Times(grams));
        return true;
    }

    /// <summary>Reads a paper weight: a number and gsm (also g/m²), or lb (also #) and bond, writing, ledger, text, book, offset, cover, index,
    /// tag or bristol.</summary>
    /// <returns>False where the text is none; the weight is never negative and may be zero, ranges are the caller's.</returns>
    public static bool TryParseWeight(string text, IFormatProvider culture, out PaperWeight weight)
    {
        weight = default;
        if (!TryParseNumber(text, culture, out var number, out var unit) || number.Value > 1_000_000m)
        {
            return false;
        }

        if (GrammageUnits.Contains(unit, StringComparer.OrdinalIgnoreCase))
        {
            weight = PaperWeight.FromGrammage(number.Times(1m));
            return true;
        }

        foreach (var pounds in PoundUnits)
        {
            if (unit.StartsWith(pounds, StringComparison.OrdinalIgnoreCase)
                && Categories.TryGetValue(unit[pounds.Length..].Trim(), out var category))
            {
                weight = PaperWeight.FromBasisWeight(number.Times(1m), category);
                return true;
            }
        }

        return false;
    }

    /// <summary>A length as the job file writes it, exact: <c>139.7 mm</c>.</summary>
    public static string Exact(Length length) => NumberText.Plain(length.Millimetres) + " mm";

    /// <summary>A thickness as the job file writes it, exact: <c>230 um</c>.</summary>
    public static string ExactThin(Length thickness) => NumberText.Plain(thickness.Micrometres) + " um";

    /// <summary>A mass as the job file writes it, exact: <c>28 g</c>.</summary>
    public static string Exact(Mass mass) => NumberText.Plain(mass.Grams) + " g";

    /// <summary>A paper weight as it was stated: <c>80 lb cover</c>, <c>90 gsm</c>.</summary>
    public static string Exact(PaperWeight weight) => Stated(weight, CultureInfo.InvariantCulture);

    /// <summary>A paper weight as it was stated, with the decimal mark of a culture.</summary>
    public static string Stated(PaperWeight weight, IFormatProvider culture)
    {
        var number = NumberText.Trimmed(weight.Stated).ToString(culture);
        return weight.Category is { } category ? $"{number} lb {JobWords.PaperCategories.Of(category)}" : number + " gsm";
    }

    private static bool TryParseNumber(string text, IFormatProvider culture, out MeasureNumber number, out string unit)
    {
        var rest = text.AsSpan().Trim();
        var found = MeasureNumber.TryTake(ref rest, NumberFormatInfo.GetInstance(culture).NumberDecimalSeparator, out number);
        unit = rest.Trim().ToString();
        return found;
    }
}
