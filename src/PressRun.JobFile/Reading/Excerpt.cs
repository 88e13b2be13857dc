namespace PressRun.JobFile.Reading;

/// <summary>The beginning of a text that a document's author chose, for quoting: a hostile one is as long as the document.</summary>
public static class Excerpt
{
    /// <summary>Most characters of a value, or of a key in a sentence, that are quoted.</summary>
    public const int Longest = 80;

    /// <summary>The text, or its first characters and an ellipsis.</summary>
    /// <param name="text">Any.</param>
    /// <param name="longest">Most characters before the ellipsis, at least 1.</param>
    public static string Of(string text, int longest = Longest)
    {
        if (text.Length <= longest)
        {
            return text;
        }

        // Not between the halves of a surrogate pair.
        var end = char.IsHighSurrogate(text[longest - 1]) ? longest - 1 : longest;
        return text[..end] + "…";
    }
}
