namespace PressRun.Web.Pdf;

/// <summary>Breaks words into lines.</summary>
internal static class LineBreaks
{
    /// <summary>The lines of a text, at least one. Words that are longer than a line are broken where the line ends.</summary>
    /// <param name="words">Parted by spaces.</param>
    /// <param name="fits">True where a text of two letters or more is no longer than a line; one letter is on a line whatever its width.</param>
    public static List<string> Of(string words, Predicate<string> fits)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in words.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var next = line.Length == 0 ? word : $"{line} {word}";
            if (Fits(next))
            {
                line = next;
                continue;
            }

            if (line.Length > 0)
            {
                lines.Add(line);
            }

            line = word;
            while (!Fits(line))
            {
                var length = Fitting(line);

                // A letter of two halves stays whole.
                length += char.IsHighSurrogate(line[length - 1]) ? 1 : 0;
                lines.Add(line[..length]);
                line = line[length..];
            }
        }

        return [.. lines, line];

        // Nobody but its writer says how long a word is, so that no more of it is measured than a line or two.
        int Fitting(string word)
        {
            var (fitting, most) = (1, 2);
            while (most < word.Length && Fits(word[..most]))
            {
                (fitting, most) = (most, 2 * most);
            }

            most = Math.Min(most, word.Length);
            while (most - fitting > 1)
            {
                var middle = (fitting + most) / 2;
                (fitting, most) = Fits(word[..middle]) ? (middle, most) : (fitting, middle);
            }

            return fitting;
        }

        bool Fits(string text) => text.Length <= 1 || fits(text);
    }
}
