namespace PressRun.JobFile.Reading;

/// <summary>Finds the word that a misspelt one was probably meant to be.</summary>
public static class Nearest
{
    // What is longer, or stands among more, is not compared: the help is not worth the time that a hostile file could make it cost.
    private const int LongestWord = 40;
    private const int MostWords = 200;

    /// <summary>The known word that is at most two edits (a third of its length for short ones) from what was written; null where none is.</summary>
    public static string? To(string written, IEnumerable<string> known)
    {
        if (written.Length > LongestWord)
        {
            return null;
        }

        string? best = null;
        var bestDistance = int.MaxValue;
        foreach (var word in known.Take(MostWords))
        {
            var most = Math.Min(2, Math.Max(1, word.Length / 3));
            if (Math.Abs(word.Length - written.Length) > most)
            {
                continue;
            }

            var distance = Distance(written, word);
            if (distance <= most && distance < bestDistance)
            {
                best = word;
                bestDistance = distance;
            }
        }

        return best;
    }

    // Edits between two words (insert, delete, replace), capitals not counted.
    private static int Distance(string left, string right)
    {
        var row = new int[right.Length + 1];
        for (var column = 0; column <= right.Length; column++)
        {
            row[column] = column;
        }

        for (var line = 1; line <= left.Length; line++)
        {
            var diagonal = row[0];
            row[0] = line;
            for (var column = 1; column <= right.Length; column++)
            {
                var same = char.ToUpperInvariant(left[line - 1]) == char.ToUpperInvariant(right[column - 1]);
                var change = diagonal + (same ? 0 : 1);
                diagonal = row[column];
                row[column] = Math.Min(change, 1 + Math.Min(row[column], row[column - 1]));
            }
        }

        return row[right.Length];
    }
}
