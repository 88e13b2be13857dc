namespace PressRun.JobFile.Reading;

/// <summary>The words that the job file has for the values of an enumeration, for reading and for writing.</summary>
/// <typeparam name="T">The enumeration.</typeparam>
public sealed class Words<T>
    where T : struct, Enum
{
    // Two plain arrays and loops: these are among the first things that run when the command line starts.
    private readonly string[] words;
    private readonly T[] values;

    /// <summary>Names the words, two or more.</summary>
    public Words(params (string Word, T Value)[] pairs)
    {
        words = new string[pairs.Length];
        values = new T[pairs.Length];
        for (var index = 0; index < pairs.Length; index++)
        {
            (words[index], values[index]) = pairs[index];
        }

        Rule = "Write " + string.Join(", ", words, 0, words.Length - 1) + " or " + words[^1] + ".";
    }

    /// <summary>All of them in a sentence: <c>Write saddle, side, perfect or loose.</c></summary>
    public string Rule { get; }

    /// <summary>All of them in order.</summary>
    public IReadOnlyList<string> All => words;

    /// <summary>The value of a word, or null where it has none.</summary>
    public T? Find(string word)
    {
        var index = Array.IndexOf(words, word);
        return index < 0 ? null : values[index];
    }

    /// <summary>The word of a value.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The table has no word for it.</exception>
    public string Of(T value)
    {
        var index = Array.IndexOf(values, value);
        return index < 0 ? throw new ArgumentOutOfRangeException(nameof(value), value, $"This table of words lacks one of {typeof(T).Name}.") : words[index];
    }
}
