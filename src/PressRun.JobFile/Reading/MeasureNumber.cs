using System.Globalization;

namespace PressRun.JobFile.Reading;

/// <summary>The number in front of a unit: whole, decimal, or with a fraction, kept as a quotient so that thirds lose nothing before they must.</summary>
internal readonly struct MeasureNumber
{
    // So that the product with any unit stays far inside what a decimal holds.
    private const decimal Largest = 1_000_000_000_000_000m;
    private const string OneCharacterFractions = "\u00BD\u00BC\u00BE\u215B\u215C\u215D\u215E";

    private readonly decimal numerator;
    private readonly decimal denominator;

    private MeasureNumber(decimal numerator, decimal denominator)
    {
        this.numerator = numerator;
        this.denominator = denominator;
    }

    /// <summary>The number, rounded where it is a repeating decimal.</summary>
    public decimal Value => numerator / denominator;

    /// <summary>The number of units in smaller units.</summary>
    public decimal Times(decimal unit) => NumberText.Trimmed(numerator * unit / denominator);

    /// <summary>Takes a number, which has no sign, off the front of a text.</summary>
    /// <param name="rest">In: the text; out: what follows the number.</param>
    /// <param name="decimalMark">The culture's decimal mark.</param>
    /// <param name="number">The number.</param>
    public static bool TryTake(ref ReadOnlySpan<char> rest, string decimalMark, out MeasureNumber number)
    {
        number = default;
        if (!TryTakeQuotient(ref rest, decimalMark, out var top, out var bottom) || top > Largest)
        {
            return false;
        }

        number = new MeasureNumber(top, bottom);
        return true;
    }

    private static bool TryTakeQuotient(ref ReadOnlySpan<char> rest, string decimalMark, out decimal top, out decimal bottom)
    {
        top = 0m;
        bottom = 1m;
        if (TryTakeOneCharacterFraction(ref rest, out top, out bottom))
        {
            return true;
        }

        var whole = TakeDigits(ref rest);
        if (TakeMark(ref rest, decimalMark))
        {
            var part = TakeDigits(ref rest);
            bottom = 1m;
            return NumberText.TryParse(string.Concat(whole, ".", part), out top);
        }

        bottom = 1m;
        if (whole.Length == 0 || !NumberText.TryParse(whole, out top))
        {
            return false;
        }

        var after = rest.TrimStart();
        if (!after.IsEmpty && after[0] == '/')
        {
            rest = after;
            return TryTakeDenominator(ref rest, whole, out top, out bottom);
        }

        return TryAddFraction(ref rest, ref top, ref bottom);
    }

    // What may follow a whole number: 5 1/2, 5-1/2, 5½.
    private static bool TryAddFraction(ref ReadOnlySpan<char> rest, ref decimal top, ref decimal bottom)
    {
        var after = rest.TrimStart();
        if (!after.IsEmpty && after[0] is '-' or '\u2010')
        {
            after = after[1..].TrimStart();
        }

        if (TryTakeOneCharacterFraction(ref after, out var fractionTop, out var fractionBottom))
        {
            return Join(ref rest, after, ref top, ref bottom, fractionTop, fractionBottom);
        }

        var numerator = TakeDigits(ref after);
        if (numerator.Length == 0)
        {
            return true;
        }

        after = after.TrimStart();
        return TryTakeDenominator(ref after, numerator, out fractionTop, out fractionBottom)
            && Join(ref rest, after, ref top, ref bottom, fractionTop, fractionBottom);
    }

    private static bool Join(
        ref ReadOnlySpan<char> rest, ReadOnlySpan<char> after, ref decimal top, ref decimal bottom, decimal fractionTop, decimal fractionBottom)
    {
        if (top > Largest)
        {
            return false;
        }

        rest = after;
        top = top * fractionBottom + fractionTop;
        bottom = fractionBottom;
        return true;
    }

    private static bool TryTakeDenominator(ref ReadOnlySpan<char> rest, string numerator, out decimal top, out decimal bottom)
    {
        top = 0m;
        bottom = 1m;
        if (rest.IsEmpty || rest[0] != '/')
        {
            return false;
        }

        rest = rest[1..].TrimStart();
        var denominator = TakeDigits(ref rest);
        if (!int.TryParse(numerator, NumberStyles.None, CultureInfo.InvariantCulture, out var over)
            || !int.TryParse(denominator, NumberStyles.None, CultureInfo.InvariantCulture, out var under)
            || under == 0)
        {
            return false;
        }

        (top, bottom) = (over, under);
        return true;
    }

    private static bool TryTakeOneCharacterFraction(ref ReadOnlySpan<char> rest, out decimal top, out decimal bottom)
    {
        var which = rest.IsEmpty ? -1 : OneCharacterFractions.IndexOf(rest[0], StringComparison.Ordinal);
        (top, bottom) = which switch
        {
            0 => (1m, 2m),
            1 => (1m, 4m),
            2 => (3m, 4m),
            3 => (1m, 8m),
            4 => (3m, 8m),
            5 => (5m, 8m),
            6 => (7m, 8m),
            _ => (0m, 1m),
        };
        rest = which < 0 ? rest : rest[1..];
        return which >= 0;
    }

    private static string TakeDigits(ref ReadOnlySpan<char> rest)
    {
        var end = rest.IndexOfAnyExceptInRange('0', '9');
        var digits = end < 0 ? rest : rest[..end];
        rest = rest[digits.Length..];
        return digits.ToString();
    }

    private static bool TakeMark(ref ReadOnlySpan<char> rest, string mark)
    {
        if (!rest.StartsWith(mark, StringComparison.Ordinal))
        {
            return false;
        }

        rest = rest[mark.Length..];
        return true;
    }
}
