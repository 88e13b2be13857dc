using System.Globalization;
using PressRun.Data.Presses;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.JobFile;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Import.Tables;

/// <summary>Reading with either decimal mark, where it is plain which one is meant.</summary>
internal static class MeasureCells
{
    // A number with more decimals than this in the press's unit was not stated in it, and is shown in the unit that keeps it short.
    private const int MostDecimals = 4;

    // They mean one thing wherever they are written.
    private const char ArabicDecimal = '\u066B';
    private const char ArabicGroup = '\u066C';

    private static readonly CultureInfo Comma = CultureInfo.GetCultureInfo("de");

    public delegate bool Parse<T>(string text, IFormatProvider culture, out T value);

    public static bool TryRead<T>(string text, CellManners manners, string? unit, Parse<T> parse, out T value)
    {
        var plain = NumberCells.PlainDigits(text);
        var whole = unit is not null && plain.Length > 0 && !plain.Any(IsUnitSign) ? $"{plain} {unit}" : plain;
        if (whole.AsSpan().ContainsAny(ArabicDecimal, ArabicGroup))
        {
            return parse(whole.Replace(ArabicGroup.ToString(), "", StringComparison.Ordinal).Replace(ArabicDecimal, '.'), CultureInfo.InvariantCulture, out value);
        }

        return parse(whole, manners.Culture, out value) || (!MayGroup(whole) && parse(whole, Other(manners), out value));
    }

    /// <summary>The number in a unit, where it is as short there as a person would write it; else null.</summary>
    public static string? Short(decimal inUnit, CellManners manners) =>
        NumberText.Trimmed(inUnit).Scale <= MostDecimals ? NumberCells.Write(inUnit, manners.Culture) : null;

    private static bool IsUnitSign(char sign) => char.IsLetter(sign) || sign is '"' or '\u2033' or '#';

    private static CultureInfo Other(CellManners manners) => manners.HasDecimalComma ? CultureInfo.InvariantCulture : Comma;

    // 1,200 mm could be 1.2 or 1200: it is not guessed.
    private static bool MayGroup(string text)
    {
        var at = text.AsSpan().IndexOfAny('.', ',');
        return at > 0 && text[0] != '0' && text[(at + 1)..].TakeWhile(char.IsAsciiDigit).Count() == 3;
    }
}

/// <summary>A length.</summary>
/// <param name="rule">The range and its sentence.</param>
/// <param name="fine">True for thicknesses of paper, which count in micrometres.</param>
public sealed class LengthCell(LengthRule rule, bool fine = false) : CellKind
{
    private const string Micrometre = "\u00B5m";

    /// <inheritdoc/>
    public override bool IsNumeric => true;

    /// <inheritdoc/>
    public override IReadOnlyList<string> Units { get; } = ["mm", "cm", "in", Micrometre];

    /// <inheritdoc/>
    public override string UnitOf(CellManners manners) => manners.Units == UnitSystem.Imperial ? "in" : fine ? Micrometre : "mm";

    /// <inheritdoc/>
    public override CellRead Read(string text, CellManners manners, string? unit = null) =>
        MeasureCells.TryRead<Length>(text, manners, unit ?? UnitOf(manners), MeasureText.TryParseLength, out var length) && rule.Holds(length)
            ? CellRead.Of(length)
            : CellRead.Refused(rule.Sentence);

    /// <inheritdoc/>
    public override string Write(object value, CellManners manners)
    {
        var length = (Length)value;
        var own = manners.Units == UnitSystem.Imperial ? length.Inches : fine ? length.Micrometres : length.Millimetres;
        return MeasureCells.Short(own, manners)
            ?? (manners.Units == UnitSystem.Metric ? ShortWith(length.Inches, "in", manners) : null)
            ?? ShortWith(length.Millimetres, "mm", manners)
            ?? $"{NumberCells.Write(length.Millimetres, manners.Culture)} mm";
    }

    private static string? ShortWith(decimal number, string unit, CellManners manners) =>
        MeasureCells.Short(number, manners) is { } text ? $"{text} {unit}" : null;
}

/// <summary>A mass.</summary>
/// <param name="rule">The range and its sentence.</param>
public sealed class MassCell(MassRule rule) : CellKind
{
    /// <inheritdoc/>
    public override bool IsNumeric => true;

    /// <inheritdoc/>
    public override IReadOnlyList<string> Units { get; } = ["g", "kg", "oz", "lb"];

    /// <inheritdoc/>
    public override string UnitOf(CellManners manners) => manners.Units == UnitSystem.Imperial ? "oz" : "g";

    /// <inheritdoc/>
    public override CellRead Read(string text, CellManners manners, string? unit = null) =>
        MeasureCells.TryRead<Mass>(text, manners, unit ?? UnitOf(manners), MeasureText.TryParseMass, out var mass) && rule.Holds(mass)
            ? CellRead.Of(mass)
            : CellRead.Refused(rule.Sentence);

    /// <inheritdoc/>
    public override string Write(object value, CellManners manners)
    {
        var mass = (Mass)value;
        if (manners.Units == UnitSystem.Metric && mass.Kilograms >= 1m && MeasureCells.Short(mass.Kilograms, manners) is { } kilograms)
        {
            return kilograms + " kg";
        }

        var own = manners.Units == UnitSystem.Imperial ? mass.Ounces : mass.Grams;
        return MeasureCells.Short(own, manners) ?? $"{NumberCells.Write(mass.Grams, manners.Culture)} g";
    }
}

/// <summary>A paper's weight as its maker states it.</summary>
public sealed class WeightCell : CellKind
{
    private const string Grammage = "gsm";

    /// <inheritdoc/>
    public override bool IsNumeric => true;

    /// <inheritdoc/>
    public override IReadOnlyList<string> Units { get; } =
        [Grammage, .. JobWords.PaperCategories.All.Select(category => $"lb {category}")];

    /// <inheritdoc/>
    public override CellRead Read(string text, CellManners manners, string? unit = null) =>
        MeasureCells.TryRead<PaperWeight>(text, manners, unit ?? Grammage, TryParse, out var weight) && JobRules.IsPaperWeight(weight)
            ? CellRead.Of(weight)
            : CellRead.Refused(JobRules.PaperWeightSentence);

    /// <inheritdoc/>
    public override string Write(object value, CellManners manners) => MeasureText.Stated((PaperWeight)value, manners.Culture);

    // "120 g" on the label of a paper is its grammage.
    private static bool TryParse(string text, IFormatProvider culture, out PaperWeight weight)
    {
        var trimmed = text.TrimEnd();
        return MeasureText.TryParseWeight(text, culture, out weight)
            || (trimmed.EndsWith('g') && MeasureText.TryParseWeight(trimmed[..^1] + Grammage, culture, out weight));
    }
}
