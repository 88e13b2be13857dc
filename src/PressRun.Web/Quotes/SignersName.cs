using System.Globalization;

namespace PressRun.Web.Quotes;

/// <summary>Whether the name that somebody writes under a quote is the one that their link was made for. Names are free to type, and people write their own in several ways.</summary>
internal static class SignersName
{
    private const CompareOptions Alike = CompareOptions.IgnoreCase | CompareOptions.IgnoreNonSpace | CompareOptions.IgnoreSymbols;

    private static readonly CompareInfo Comparing = CultureInfo.InvariantCulture.CompareInfo;

    /// <summary>True where two names differ in capitals, accents, blanks and signs between words at most.</summary>
    public static bool Same(string one, string other) => Comparing.Compare(one, other, Alike) == 0;

    /// <summary>True where a name is clearly another one: a word of each is missing in the other, be it as its first letter.</summary>
    public static bool IsOther(string one, string other) => !Same(one, other) && !Holds(one, other) && !Holds(other, one);

    private static bool Holds(string longer, string shorter)
    {
        var (all, words) = (Words(longer), Words(shorter));
        return words.Count > 0 && words.TrueForAll(word => all.Exists(known => Comparing.IsPrefix(known, word, Alike) && (known.Length == word.Length || word.Length == 1)));
    }

    private static List<string> Words(string name)
    {
        var plain = string.Concat(name.Select(sign => char.IsLetterOrDigit(sign) || char.IsSurrogate(sign) || CharUnicodeInfo.GetUnicodeCategory(sign) == UnicodeCategory.NonSpacingMark ? sign : ' '));
        return [.. plain.Normalize().Split(' ', StringSplitOptions.RemoveEmptyEntries)];
    }
}
