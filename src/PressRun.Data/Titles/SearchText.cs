using System.Globalization;
using System.Text;

namespace PressRun.Data.Titles;

/// <summary>Text made comparable: what a person types without accents finds what stands with them.</summary>
internal static class SearchText
{
    /// <summary>Lower case, accents dropped, everything but letters and digits turned into single spaces.</summary>
    public static string Fold(string text)
    {
        var folded = new StringBuilder(text.Length);
        foreach (var character in text.Normalize(NormalizationForm.FormKD))
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
}
