using System.Globalization;
using System.Text;

namespace PressRun.Data.People;

/// <summary>Whether what an owner wrote on an invitation could mean somebody, who is called as they like: words are compared without capitals, accents and what stands between them.</summary>
internal static class SomebodysName
{
    /// <summary>True where the words are the same, in whatever order.</summary>
    public static bool Same(string one, string other) => Words(one) is { Count: > 0 } words && words.SetEquals(Words(other));

    /// <summary>True where a word is the same. An initial alone is none, and of a mail address only what stands before its host counts.</summary>
    public static bool MayBe(string one, string other) => Same(one, other) || Words(Own(one)).Any(word => word.Length > 1 && Words(Own(other)).Contains(word));

    private static string Own(string name) => MailAddresses.Is(name) ? name[..name.LastIndexOf('@')] : name;

    private static HashSet<string> Words(string name)
    {
        var plain = new StringBuilder();
        foreach (var sign in name.Normalize(NormalizationForm.FormKD).Where(sign => CharUnicodeInfo.GetUnicodeCategory(sign) != UnicodeCategory.NonSpacingMark))
        {
            plain.Append(char.IsLetterOrDigit(sign) || char.IsSurrogate(sign) ? char.ToUpperInvariant(sign) : ' ');
        }

        return [.. plain.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries)];
    }
}
