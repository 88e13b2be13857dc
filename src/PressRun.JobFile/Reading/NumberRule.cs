namespace PressRun.JobFile.Reading;

/// <summary>The range of a number and the sentence that tells it. Bounds count as inside unless said otherwise.</summary>
/// <param name="Sentence">What would be right.</param>
/// <param name="Least">Lower bound.</param>
/// <param name="Most">Upper bound.</param>
/// <param name="IsWhole">True for counts; these are JSON numbers only, not strings.</param>
/// <param name="WithoutLeast">True where the lower bound itself is outside.</param>
/// <param name="WithoutMost">True where the upper bound itself is outside.</param>
public sealed record NumberRule(string Sentence, decimal Least, decimal Most, bool IsWhole = false, bool WithoutLeast = false, bool WithoutMost = false)
{
    /// <summary>True where the number keeps the rule.</summary>
    public bool Holds(decimal number) =>
        (WithoutLeast ? number > Least : number >= Least)
        && (WithoutMost ? number < Most : number <= Most)
        && (!IsWhole || decimal.Truncate(number) == number);
}
