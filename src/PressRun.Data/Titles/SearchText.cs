using System.Globalization;
using System.Text;

namespace PressRun.Data.Titles;

/// <summary>Text made comparable: what a person types without accents finds what stands with them.</summary>
internal static class SearchText
{
    // A name that the store gives is shorter; one that comes in with an archive may have been given elsewhere.
    private const int MostSlug = 200;

    /// <summary>Lower case, accents dropped, everything but letters and digits turned into single spaces.</summary>
    public static string Fold(string text)
    {
        var folded = new StringBuilder(text.Length);
        foreach (var character in WithoutMarks(Sound(text)).Normalize(NormalizationForm.FormKD))
        {
            if (char.IsLetterOrDigit(character))
            {
                folded.Append(char.ToLowerInvariant(character));
            }
            else if (CharUnicodeInfo.GetUnicodeCategory(character) != UnicodeCategory.NonSpacingMark && folded.Length > 0 && folded[^1] != ' ')
            {
                folded.Append(' ');
            }
        }

        return folded.ToString().TrimEnd();
    }

    // They are dropped in any case; to put a long run of them in order takes time by the square of its length.
    private static string WithoutMarks(string text) => string.Concat(text.EnumerateRunes().Where(rune => Rune.GetUnicodeCategory(rune) != UnicodeCategory.NonSpacingMark));

    /// <summary>A text search query for words that begin so, all of them; null where nothing is asked.</summary>
    public static string? PrefixQuery(string? typed)
    {
        var words = Fold(typed ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words.Length == 0 ? null : string.Join(" & ", words.Select(word => word + ":*"));
    }

    /// <summary>A name for addresses: folded words joined by hyphens, never empty.</summary>
    public static string Slug(string text)
    {
        var slug = Fold(text).Replace(' ', '-');
        return slug.Length == 0 ? "untitled" : slug[..Math.Min(slug.Length, 80)].TrimEnd('-');
    }

    /// <summary>True where a text can stand as a name in addresses: small letters and digits of any script, words joined by hyphens, at most
    /// 200 characters. So is every slug that is made here.</summary>
    public static bool IsSlug(string text) => text.Length is > 0 and <= MostSlug && Fold(text).Replace(' ', '-') == text;

    /// <summary>The slug of a text, with the first free number where others have it.</summary>
    public static string FreeSlug(string text, IReadOnlyCollection<string> taken)
    {
        var wanted = Slug(text);
        var slug = wanted;
        for (var number = 2; taken.Contains(slug); number++)
        {
            slug = string.Create(CultureInfo.InvariantCulture, $"{wanted}-{number}");
        }

        return slug;
    }

    // Half a surrogate pair, or the one sign that is none, cannot be taken apart into its accents: both may be typed, and stand for nothing.
    private static string Sound(string text) => Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text)).Replace('\uFFFE', ' ');
}
