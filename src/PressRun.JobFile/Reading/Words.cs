namespace PressRun.JobFile.Reading;

/// <summary>The words that the job file has for the values of an enumeration, for reading and for writing.</summary>
/// <typeparam name="T">The enumeration.</typeparam>
public sealed class Words<T>
    where T : struct, Enum
{
    private readonly (string Word, T Value)[] pairs;

    /// <summary>Names the words.</summary>
    public Words(params (string Word, T Value)[] pairs) => this.pairs = pairs;

    /// <summary>All of them, as a person lists them: <c>saddle, side, perfect or loose</c>.</summary>
    public string Listed => pairs.Length == 1
        ? pairs[0].Word
        : string.Join(", ", pairs.SkipLast(1).Select(pair => pair.Word)) + " or " + pairs[^1].Word;

    /// <summary>All of them in order.</summary>
    public IReadOnlyList<string> All => [.. pairs.Select(pair => pair.Word)];

    /// <summary>The value of a word, or null where it has none.</summary>
    public T? Find(string word)
    {
        foreach (var pair in pairs)
        {
            if (pair.Word == word)
            {
                return pair.Value;
            }
        }

        return null;
    }

    /// <summary>The word of a value.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The job file has no word for it.</exception>
    public string Of(T value)
    {
        foreach (var pair in pairs)
        {
            if (EqualityComparer<T>.Default.Equals(pair.Value, value))
            {
                return pair.Word;
            }
        }

        throw new ArgumentOutOfRangeException(nameof(value), value, "The job file has no word for this.");
    }
}
