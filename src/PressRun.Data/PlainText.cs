using System.Globalization;
using System.Text;

namespace PressRun.Data;

/// <summary>Text that PostgreSQL stores and a page can show.</summary>
internal static class PlainText
{
    private const int MostMarks = 8;

    private const int FirstJoined = 0x0590;

    private const int BlankBraille = 0x2800;

    private const int KeyCap = 0x20E3;

    // From the arrows on, what is called a symbol has a picture; of what else has one, these are no numbers of a key (UTS #51, emoji-variation-sequences).
    private const int FirstPicture = 0x2190;
    private static readonly int[] EarlyPictures = [0x00A9, 0x00AE, 0x203C, 0x2049, 0x2122, 0x2139, 0x3030, 0x303D];

    // Joiners, and marks of direction that turn nothing around.
    private static readonly int[] Joining = [0x200C, 0x200D, 0x200E, 0x200F, 0x061C];

    // Letters and signs of Unicode that have no shape: the Hangul fillers and the blank of Braille.
    private static readonly int[] Fillers = [0x115F, 0x1160, BlankBraille, 0x3164, 0xFFA0];

    /// <summary>True for what a person, a press, a book or anything else may be called: it can be seen, and reads as it stands. How long it may be is its field's to say.</summary>
    public static bool IsName(string text) => Shows(text) && IsStill(text);

    /// <summary>True where it is on one line, stays on it, and reads in the order in which it stands, with nothing in it that cannot be seen.</summary>
    public static bool IsStill(string text) => Is(text) && !Piles(text) && !Hides(text);

    /// <summary>True where it has no control characters and no ends of lines or paragraphs, and every surrogate its other half.</summary>
    public static bool Is(string text)
    {
        for (var index = 0; index < text.Length; index++)
        {
            if (char.IsControl(text[index]) || text[index] is '\u2028' or '\u2029' || (char.IsSurrogate(text[index]) && !char.IsSurrogatePair(text, index++)))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>True where something of it can be seen: more than blanks, marks of direction and letters that have no shape (Unicode's general categories, and its fillers).</summary>
    public static bool Shows(string text) => text.EnumerateRunes().Any(rune => !Fillers.Contains(rune.Value) && Rune.GetUnicodeCategory(rune) is not (
        UnicodeCategory.SpaceSeparator or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Control or UnicodeCategory.Format
        or UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark or UnicodeCategory.OtherNotAssigned or UnicodeCategory.Surrogate or UnicodeCategory.PrivateUse));

    /// <summary>True where more marks stand on one letter than any language puts there, so that they reach over the lines above and below (eight: from memory).</summary>
    public static bool Piles(string text)
    {
        var marks = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            marks = Rune.GetUnicodeCategory(rune) is UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark ? marks + 1 : 0;
            if (marks > MostMarks)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True where it holds signs that are not seen, by which two names that look the same are two or reads as something else
    /// than it is (Unicode's category of format characters, with the embeddings, overrides and isolates of UAX #9). Joiners and marks of direction
    /// stay beside letters of the scripts that are written with them, from the Hebrew block on, and beside pictures.</summary>
    public static bool Hides(string text)
    {
        var runes = text.EnumerateRunes().ToArray();
        var mayJoin = runes.Any(rune => rune.Value >= FirstJoined && (Rune.IsLetter(rune) || Rune.GetUnicodeCategory(rune) == UnicodeCategory.OtherSymbol));
        return runes.Where((rune, at) =>
            (Rune.GetUnicodeCategory(rune) == UnicodeCategory.Format && !(mayJoin && Joining.Contains(rune.Value)))
            || IsLeftUnseen(rune)
            || (Fillers.Contains(rune.Value) && !(rune.Value == BlankBraille && runes.Any(IsRaisedBraille)))
            || (IsUnseenMark(rune) && !(at > 0 && MayVary(runes[at - 1], rune, at + 1 < runes.Length ? runes[at + 1] : default)))).Any();
    }

    private static bool IsRaisedBraille(Rune rune) => rune.Value is > BlankBraille and <= 0x28FF;

    // Unassigned so far, and not to be seen whatever they come to mean (Unicode's Default_Ignorable_Code_Point, Other_Default_Ignorable_Code_Point).
    private static bool IsLeftUnseen(Rune rune) => rune.Value is 0x2065 or (>= 0xFFF0 and <= 0xFFF8) or ((>= 0xE0000 and <= 0xE0FFF) and not (>= 0xE0100 and <= 0xE01EF));

    // Marks without a shape of their own: the grapheme joiner, two vowels of Khmer that are never written, and the selectors of variants (Unicode's Default_Ignorable_Code_Point).
    private static bool IsUnseenMark(Rune rune) => rune.Value is 0x034F or 0x17B4 or 0x17B5 or (>= 0x180B and <= 0x180F) or (>= 0xFE00 and <= 0xFE0F) or (>= 0xE0100 and <= 0xE01EF);

    // A selector is seen by what it does to the picture, key cap, ideograph or Mongolian letter before it; after other signs it does nothing.
    private static bool MayVary(Rune before, Rune selector, Rune after) => selector.Value switch
    {
        >= 0xE0100 => IsIdeograph(before),
        >= 0xFE00 => IsIdeograph(before) || EarlyPictures.Contains(before.Value) || after.Value == KeyCap
            || (before.Value >= FirstPicture && Rune.GetUnicodeCategory(before) is UnicodeCategory.OtherSymbol or UnicodeCategory.MathSymbol),
        >= 0x180B and <= 0x180F => before.Value is >= 0x1820 and <= 0x18AA,
        _ => false,
    };

    private static bool IsIdeograph(Rune rune) => rune.Value is (>= 0x3400 and <= 0x9FFF) or (>= 0xF900 and <= 0xFAFF) or (>= 0x20000 and <= 0x3FFFF);
}
