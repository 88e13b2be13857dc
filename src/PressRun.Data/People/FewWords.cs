namespace PressRun.Data.People;

/// <summary>Finds passwords that are a common word or two, or names, and nothing else but digits and signs that make them long: what programs that guess put together first.</summary>
internal static class FewWords
{
    // Three words that belong to nobody are left to their owner; fewer are tried in all pairs within minutes.
    private const int Most = 2;

    // So many letters beside the words are no third one.
    private const int MostOtherLetters = 3;

    // Signs that stand for letters they look like.
    private const string Signs = "@4031!57$";
    private const string Meant = "aaoeiists";

    /// <summary>True for one that is hardly more than a common word or two, or words of its owner.</summary>
    /// <param name="password">As typed.</param>
    /// <param name="known">Words that others know of its owner, in small letters.</param>
    public static bool Make(string password, IReadOnlyCollection<string> known)
    {
        var lower = password.ToLowerInvariant();
        return MakeAll(lower, known) || MakeAll(Spelled(lower), known);
    }

    private static bool MakeAll(string text, IReadOnlyCollection<string> known)
    {
        var counted = Runs(text).Distinct(StringComparer.Ordinal).Select(run => (Letters: run.Length, Words: Fewest(run, known))).ToList();
        return counted.Where(run => run.Words is null).Sum(run => run.Letters) <= MostOtherLetters && counted.Sum(run => run.Words ?? 0) is >= 1 and <= Most;
    }

    // Letters that stand side by side.
    private static string[] Runs(string text) => new string([.. text.Select(sign => char.IsLetter(sign) ? sign : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries);

    // Digits and signs at the ends are there for the length; between letters they may be meant as letters.
    private static string Spelled(string text)
    {
        var (first, last) = (Array.FindIndex(text.ToCharArray(), char.IsLetter), Array.FindLastIndex(text.ToCharArray(), char.IsLetter));
        return first < 0 ? "" : new string([.. text[first..(last + 1)].Select(sign => Signs.IndexOf(sign, StringComparison.Ordinal) is >= 0 and var at ? Meant[at] : sign)]);
    }

    // The fewest different words that a run of letters is made of, side by side; null where it is made of others.
    private static int? Fewest(string run, IReadOnlyCollection<string> known)
    {
        var fewest = new HashSet<string>?[run.Length + 1];
        fewest[0] = [];
        for (var end = 1; end <= run.Length; end++)
        {
            for (var start = Math.Max(0, end - User.LongestName); start < end; start++)
            {
                var word = run[start..end];
                if (fewest[start] is not { } before || (!CommonPasswords.HaveWord(word) && !known.Contains(word)))
                {
                    continue;
                }

                HashSet<string> with = [.. before, word];
                fewest[end] = fewest[end] is { } found && found.Count <= with.Count ? found : with;
            }
        }

        return fewest[^1]?.Count;
    }
}
