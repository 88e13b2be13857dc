namespace PressRun.Web.Shared.Wording;

/// <summary>
/// Keeps the direction of somebody's words to themselves where no element can: in the name of a page, in a label, in a sentence that is put together.
/// In a page's own markup <c>&lt;bdi&gt;</c> does the same. Written by the Unicode Bidirectional Algorithm (Unicode Standard Annex 9).
/// </summary>
public static class Apart
{
    private const char FirstStrongIsolate = '\u2068';
    private const char PopIsolate = '\u2069';

    /// <summary>The words between isolate characters where something in them runs from right to left or turns the direction; others as they are. Isolates
    /// within them are dropped, so that none can close ours.</summary>
    public static string Of(string words) => words.Any(Turns) ? FirstStrongIsolate + string.Concat(words.Where(sign => !IsIsolate(sign))) + PopIsolate : words;

    private static bool IsIsolate(char sign) => sign is >= '\u2066' and <= PopIsolate;

    // Marks and overrides, the blocks of scripts that are written from right to left, and the halves of pairs that begin such blocks further up.
    private static bool Turns(char sign) => sign
        is '\u200E' or '\u200F' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= PopIsolate)
        or (>= '\u0590' and <= '\u08FF') or (>= '\uFB1D' and <= '\uFDFF') or (>= '\uFE70' and <= '\uFEFE')
        or '\uD802' or '\uD803' or '\uD83A' or '\uD83B';
}
