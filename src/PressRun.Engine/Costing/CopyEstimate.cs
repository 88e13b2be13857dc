using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Costing;

/// <summary>One finished copy.</summary>
/// <param name="Mass">As weighed, else reckoned from the paper and the fittings.</param>
/// <param name="Thickness">As gauged, else the leaves' calipers.</param>
/// <param name="Creep">How far the innermost leaf of a nested book stands out before trimming; zero for other bindings.</param>
public readonly record struct CopyEstimate(Mass Mass, Length Thickness, Length Creep)
{
    /// <summary>A copy of a book.</summary>
    /// <param name="block">The book as reckoned.</param>
    /// <param name="weighed">What the scale and the gauge said; null where neither was used.</param>
    /// <param name="fittings">Mass of what is added at the bench.</param>
    internal static CopyEstimate Of(BookBlock block, Weighed? weighed, Mass fittings) =>
        new(weighed?.Mass ?? (block.PaperMass + fittings), weighed?.Thickness ?? block.Thickness, block.Creep);
}
