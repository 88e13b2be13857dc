using System.Globalization;
using System.Text;
using PressRun.JobFile.Reading;

namespace PressRun.Data.Import.Tables;

/// <summary>Numbers in cells as people and spreadsheets write them.</summary>
public static class NumberCells
{
    private const int GroupLength = 3;

    // Marks that mean one thing wherever they are written.
    private const string ArabicDecimal = "\u066B";
    private const string ArabicGroup = "\u066C";

    private static readonly int[] Thousands = [GroupLength];

    /// <summary>
    /// Reads a decimal number exactly, in the digits of any script. A number as the culture writes it is that number. Else, where point and comma both stand, the last one is the decimal mark. A lone mark is the culture's decimal
    /// mark, or groups thousands where exactly three digits follow it (<c>1,200</c>, but not <c>0,120</c>), or is understood as a decimal mark.
    /// Spaces and apostrophes between digits group; so does the Arabic mark of thousands, and the Arabic decimal mark is one.
    /// </summary>
    public static bool TryParse(string text, CultureInfo culture, out decimal number)
    {
        number = 0m;
        var format = culture.NumberFormat;
        var digits = Bare(text);
        if (TryWritten(digits, Bare(format.NumberDecimalSeparator), Bare(format.NumberGroupSeparator), format.NumberGroupSizes, out number))
        {
            return true;
        }

        if (digits.Contains(ArabicDecimal, StringComparison.Ordinal) || digits.Contains(ArabicGroup, StringComparison.Ordinal))
        {
            return TryWritten(digits, ArabicDecimal, ArabicGroup, Thousands, out number);
        }

        var point = digits.LastIndexOf('.');
        var comma = digits.LastIndexOf(',');
        if (point >= 0 && comma >= 0)
        {
            var (mark, group) = point > comma ? ('.', ',') : (',', '.');
            return Grouped(digits[..Math.Max(point, comma)], group)
                && digits.IndexOf(mark, StringComparison.Ordinal) == Math.Max(point, comma)
                && NumberText.TryParse(digits.Replace(group.ToString(), "", StringComparison.Ordinal).Replace(mark, '.'), out number);
        }

        var at = Math.Max(point, comma);
        if (at < 0)
        {
            return NumberText.TryParse(digits, out number);
        }

        var lone = digits[at];
        var isDecimal = digits.IndexOf(lone, StringComparison.Ordinal) == at
            && (culture.NumberFormat.NumberDecimalSeparator == lone.ToString() || !Grouped(digits, lone) || digits.TrimStart('-').StartsWith('0'));
        return isDecimal
            ? NumberText.TryParse(digits.Replace(lone, '.'), out number)
            : Grouped(digits, lone) && NumberText.TryParse(digits.Replace(lone.ToString(), "", StringComparison.Ordinal), out number);
    }

    /// <summary>A number with the culture's decimal mark, all its digits and no groups.</summary>
    public static string Write(decimal number, CultureInfo culture)
    {
        var plain = NumberText.Plain(number);
        return culture.NumberFormat.NumberDecimalSeparator == "," ? plain.Replace('.', ',') : plain;
    }

    /// <summary>A text with the digits of any script as those from 0 to 9, and without signs that only direct text.</summary>
    public static string PlainDigits(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var sign in text.EnumerateRunes())
        {
            var category = Rune.GetUnicodeCategory(sign);
            if (category == UnicodeCategory.DecimalDigitNumber)
            {
                plain.Append((char)('0' + (int)Rune.GetNumericValue(sign)));
            }
            else if (category != UnicodeCategory.Format)
            {
                plain.Append(sign.ToString());
            }
        }

        return plain.ToString();
    }

    private static string Bare(string text) =>
        string.Concat(PlainDigits(text).Where(sign => !char.IsWhiteSpace(sign) && sign is not ('\'' or '\u2019'))).Replace('\u2212', '-');

    // A number with its groups, if it has any, as long as the culture makes them, and none that begins with a nought: 0,120 is no thousand.
    private static bool TryWritten(string digits, string mark, string group, int[] sizes, out decimal number)
    {
        number = 0m;
        var parts = digits.Split(mark);
        var whole = parts[0].TrimStart('-');
        var groups = group.Length == 0 ? [whole] : whole.Split(group);
        var last = groups.Length - 1;
        var grouped = last == 0
            || (groups[0] is { Length: > 0 } first && first[0] != '0' && first.Length <= Size(last) && Enumerable.Range(1, last).All(place => groups[place].Length == Size(last - place)));
        return mark != group && parts.Length <= 2 && grouped
            && parts.Skip(1).Concat(groups).All(part => part.Length > 0 && part.All(char.IsAsciiDigit))
            && NumberText.TryParse(string.Join('.', [parts[0].Replace(group.Length == 0 ? mark : group, "", StringComparison.Ordinal), .. parts.Skip(1)]), out number);

        int Size(int fromTheEnd) => sizes.Length == 0 ? GroupLength : sizes[Math.Min(fromTheEnd, sizes.Length - 1)] is > 0 and var size ? size : int.MaxValue;
    }

    // Groups of three digits from the mark on: 1,200 and 1,200,000, not 12,5.
    private static bool Grouped(string digits, char group)
    {
        var groups = digits.TrimStart('-').Split(group);
        return groups[0].Length is >= 1 and <= GroupLength && groups.Skip(1).All(part => part.Length == GroupLength);
    }
}

/// <summary>A number within a range.</summary>
/// <param name="rule">The range and its sentence.</param>
/// <param name="unit">What it counts, for the head; null where the head says it.</param>
public sealed class NumberCell(NumberRule rule, string? unit = null) : CellKind
{
    /// <inheritdoc/>
    public override bool IsNumeric => true;

    /// <inheritdoc/>
    public override string? UnitOf(CellManners manners) => unit;

    /// <inheritdoc/>
    public override CellRead Read(string text, CellManners manners, string? unit = null) =>
        NumberCells.TryParse(text, manners.Culture, out var number) && rule.Holds(number) ? CellRead.Of(number) : CellRead.Refused(rule.Sentence);

    /// <inheritdoc/>
    public override string Write(object value, CellManners manners) => NumberCells.Write((decimal)value, manners.Culture);
}

/// <summary>The first printed side that a price holds for; files may count sheets that are printed on both sides.</summary>
/// <param name="rule">The range and its sentence.</param>
public sealed class SideCell(NumberRule rule) : CellKind
{
    /// <summary>The unit of files that count and price sheets printed on both sides.</summary>
    public const string SheetOfTwo = "sheet, both sides";

    /// <inheritdoc/>
    public override bool IsNumeric => true;

    /// <inheritdoc/>
    public override IReadOnlyList<string> Units { get; } = [SheetOfTwo];

    /// <inheritdoc/>
    public override CellRead Read(string text, CellManners manners, string? unit = null) =>
        NumberCells.TryParse(text, manners.Culture, out var written) && rule.Holds(written) && (unit == SheetOfTwo ? FirstSide(written) : written) is var side && rule.Holds(side)
            ? CellRead.Of(side)
            : CellRead.Refused(rule.Sentence);

    /// <inheritdoc/>
    public override string Write(object value, CellManners manners) => NumberCells.Write((decimal)value, manners.Culture);

    // n sheets have 2n - 1 printed sides at least, for the last may have one.
    private static decimal FirstSide(decimal sheet) => (2m * sheet) - 1m;
}

/// <summary>An amount of money; signs and letters of a currency around it are passed over, for the press has only one.</summary>
/// <param name="rule">The range and its sentence.</param>
/// <param name="ofSide">True for the price of a printed side, which files may give by the sheet.</param>
public sealed class MoneyCell(NumberRule rule, bool ofSide = false) : CellKind
{
    /// <summary>The unit of files that name the price of a hundred.</summary>
    public const string PerHundred = "per 100";

    /// <summary>The unit of files that name the price of a thousand.</summary>
    public const string PerThousand = "per 1000";

    /// <inheritdoc/>
    public override bool IsNumeric => true;

    /// <inheritdoc/>
    public override IReadOnlyList<string> Units { get; } = ofSide ? [PerHundred, PerThousand, SideCell.SheetOfTwo] : [PerHundred, PerThousand];

    /// <inheritdoc/>
    public override CellRead Read(string text, CellManners manners, string? unit = null)
    {
        var start = 0;
        var end = text.Length;
        while (start < end && IsAround(text[start]))
        {
            start++;
        }

        while (end > start && IsAround(text[end - 1]))
        {
            end--;
        }

        return NumberCells.TryParse(text[start..end], manners.Culture, out var written)
            && NumberText.Trimmed(written / HowMany(unit)) is var amount
            && rule.Holds(amount)
            ? CellRead.Of(amount)
            : CellRead.Refused(rule.Sentence);
    }

    /// <inheritdoc/>
    public override string Write(object value, CellManners manners)
    {
        var amount = NumberText.Trimmed((decimal)value);
        var text = amount.ToString("F" + Math.Max(amount.Scale, manners.MinorDigits).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return manners.HasDecimalComma ? text.Replace('.', ',') : text;
    }

    private static decimal HowMany(string? unit) => unit switch
    {
        PerHundred => 100m,
        PerThousand => 1000m,
        SideCell.SheetOfTwo => 2m,
        _ => 1m,
    };

    private static bool IsAround(char sign) =>
        char.IsWhiteSpace(sign) || char.IsLetter(sign) || char.GetUnicodeCategory(sign) == UnicodeCategory.CurrencySymbol;
}

/// <summary>A rate, written in per cent and kept as a fraction.</summary>
/// <param name="rule">The range of the fraction.</param>
/// <param name="sentence">What would be right, in per cent.</param>
public sealed class PercentCell(NumberRule rule, string sentence) : CellKind
{
    /// <summary>The usual unit.</summary>
    public const string PerCent = "%";

    /// <summary>The unit of files that write 0.05 for five per cent.</summary>
    public const string Fraction = "of 1";

    private const decimal Hundred = 100m;

    /// <inheritdoc/>
    public override bool IsNumeric => true;

    /// <inheritdoc/>
    public override IReadOnlyList<string> Units { get; } = [PerCent, Fraction];

    /// <inheritdoc/>
    public override string UnitOf(CellManners manners) => PerCent;

    /// <inheritdoc/>
    public override CellRead Read(string text, CellManners manners, string? unit = null)
    {
        var trimmed = text.Trim();
        var inHundredths = trimmed.EndsWith('%') || unit != Fraction;
        return NumberCells.TryParse(trimmed.TrimEnd('%'), manners.Culture, out var number)
            && (inHundredths ? number / Hundred : number) is var rate
            && rule.Holds(rate)
            ? CellRead.Of(NumberText.Trimmed(rate))
            : CellRead.Refused(sentence);
    }

    /// <inheritdoc/>
    public override string Write(object value, CellManners manners) => NumberCells.Write((decimal)value * Hundred, manners.Culture);
}
