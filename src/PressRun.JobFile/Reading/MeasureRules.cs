using PressRun.Engine.Measures;

namespace PressRun.JobFile.Reading;

/// <summary>What a text must be.</summary>
/// <param name="Sentence">What would be right.</param>
/// <param name="Most">Longest length in UTF-16 units.</param>
/// <param name="MayBeEmpty">True where the empty text will do.</param>
public sealed record TextRule(string Sentence, int Most, bool MayBeEmpty)
{
    /// <summary>True where the text keeps the rule: not too long, not blank where it must say something, no control characters.</summary>
    public bool Holds(string text) =>
        text.Length <= Most && (MayBeEmpty || !string.IsNullOrWhiteSpace(text)) && !text.Any(char.IsControl);
}

/// <summary>The range of a length and the sentence that tells it.</summary>
/// <param name="Sentence">What would be right.</param>
/// <param name="Least">Shortest.</param>
/// <param name="Most">Longest.</param>
/// <param name="WithoutLeast">True where the shortest itself is outside.</param>
public sealed record LengthRule(string Sentence, Length Least, Length Most, bool WithoutLeast = false)
{
    /// <summary>True where the length keeps the rule.</summary>
    public bool Holds(Length length) => length <= Most && (WithoutLeast ? length > Least : length >= Least);
}

/// <summary>The range of a mass and the sentence that tells it.</summary>
/// <param name="Sentence">What would be right.</param>
/// <param name="Least">Lightest.</param>
/// <param name="Most">Heaviest.</param>
/// <param name="WithoutLeast">True where the lightest itself is outside.</param>
public sealed record MassRule(string Sentence, Mass Least, Mass Most, bool WithoutLeast = false)
{
    /// <summary>True where the mass keeps the rule.</summary>
    public bool Holds(Mass mass) => mass <= Most && (WithoutLeast ? mass > Least : mass >= Least);
}
