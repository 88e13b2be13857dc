using System.Globalization;
using System.Text;
using MimeKit;

namespace PressRun.Data.People;

/// <summary>Mail addresses as people sign in by them and are told by them.</summary>
internal static class MailAddresses
{
    /// <summary>True for an address alone that a mail can be sent to, and that reads as it is: no name beside it, no blanks, no signs that cannot be seen.</summary>
    public static bool Is(string text) =>
        text.Length <= User.LongestEmail && PlainText.IsStill(text) && !text.EnumerateRunes().Any(IsHidden)
        && MailboxAddress.TryParse(text, out var read) && read.Address == text && read.LocalPart.Length > 0 && read.Domain.Length > 0;

    private static bool IsHidden(Rune rune) => Rune.IsWhiteSpace(rune) || Rune.GetUnicodeCategory(rune) is UnicodeCategory.Format;
}
