using System.Globalization;

namespace PressRun.JobFile.Reading;

/// <summary>Reads decimal numbers exactly: the text of a JSON number or of a decimal string, never by way of binary floating point.</summary>
public static class NumberText
{
    // What a decimal can hold: 96 bits, so 28 digits always, and 28 places after the point.
    private const int MostDigits = 29;
    private const int MostPlaces = 28;
    private const int MostExponent = 1000;

    /// <summary>Reads digits with an optional sign, point (<c>.</c>) and exponent.</summary>
    /// <param name="text">Such as <c>0.40</c>, <c>-3</c> or <c>1.5e3</c>; no spaces and no thousands separators.</param>
    /// <param name="number">The number, without trailing zeros; 0 where the text is refused.</param>
    /// <returns>False where the text is no number, or one that a decimal cannot hold exactly (more than 28 digits, or too large or small).</returns>
    public static bool TryParse(ReadOnlySpan<char> text, out decimal number)
    {
        number = 0m;
        var mantissa = text.TrimStart('-');
        if (text.Length - mantissa.Length > 1)
        {
            return false;
        }

        var exponent = 0;
        var mark = mantissa.IndexOfAny('e', 'E');
        if (mark >= 0)
        {
            if (!TryParseExponent(mantissa[(mark + 1)..], out exponent))
            {
                return false;
            }

            mantissa = mantissa[..mark];
        }

        return TryParseMantissa(mantissa, exponent, out number) && Signed(text.Length > 0 && text[0] == '-', ref number);
    }

    /// <summary>A number without trailing zeros, invariant and without exponent: <c>0.4</c>.</summary>
    public static string Plain(decimal number) => Trimmed(number).ToString(CultureInfo.InvariantCulture);

    /// <summary>The same number with no trailing zeros in its scale, and never minus zero.</summary>
    public static decimal Trimmed(decimal number) => number == 0m ? 0m : number / 1.0000000000000000000000000000m;

    private static bool Signed(bool negative, ref decimal number)
    {
        if (negative && number != 0m)
        {
            number = -number;
        }

        return true;
    }

    private static bool TryParseExponent(ReadOnlySpan<char> text, out int exponent)
    {
        var digits = text.Length > 0 && text[0] is '+' or '-' ? text[1..] : text;
        exponent = 0;
        if (digits.IsEmpty || digits.ContainsAnyExceptInRange('0', '9'))
        {
            return false;
        }

        digits = digits.TrimStart('0');
        if (digits.Length > 4)
        {
            exponent = MostExponent + 1;
        }
        else
        {
            foreach (var digit in digits)
            {
                exponent = exponent * 10 + (digit - '0');
            }
        }

        exponent = text[0] == '-' ? -exponent : exponent;
        return true;
    }

    private static bool TryParseMantissa(ReadOnlySpan<char> mantissa, int exponent, out decimal number)
    {
        number = 0m;
        var point = mantissa.IndexOf('.');
        var whole = point < 0 ? mantissa : mantissa[..point];
        var part = point < 0 ? [] : mantissa[(point + 1)..];
        if (whole.Length + part.Length == 0 || whole.ContainsAnyExceptInRange('0', '9') || part.ContainsAnyExceptInRange('0', '9'))
        {
            return false;
        }

        var all = string.Concat(whole, part).AsSpan();
        var digits = all.TrimEnd('0');
        var places = part.Length - exponent - (all.Length - digits.Length);
        digits = digits.TrimStart('0');
        if (digits.IsEmpty)
        {
            return true;
        }

        if (digits.Length > MostDigits || places > MostPlaces || digits.Length - places > MostDigits)
        {
            return false;
        }

        var scale = Math.Max(places, 0);
        var padded = places < 0 ? string.Concat(digits, new string('0', -places)) : digits.ToString();
        if (!decimal.TryParse(padded, NumberStyles.None, CultureInfo.InvariantCulture, out var unscaled))
        {
            return false;
        }

        var bits = decimal.GetBits(unscaled);
        number = new decimal(bits[0], bits[1], bits[2], false, (byte)scale);
        return true;
    }
}
