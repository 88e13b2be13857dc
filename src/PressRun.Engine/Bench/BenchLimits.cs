using PressRun.Engine.Measures;

namespace PressRun.Engine.Bench;

/// <summary>From where on a press wants to be warned before it prints. Every figure is the press's own; the usual ones are common practice.</summary>
/// <param name="StapleLeg">Length of a staple's leg.</param>
/// <param name="Clinch">What of a leg must come through to be bent over.</param>
/// <param name="ScoreOver">Grammage, g/m², over which paper is scored before it is folded.</param>
/// <param name="GrainOver">Grammage, g/m², over which a fold against the grain is pointed out.</param>
/// <param name="CreepBeyondTrim">How far inner leaves may stand out beyond what the fore-edge trim takes off.</param>
public sealed record BenchLimits(Length StapleLeg, Length Clinch, decimal ScoreOver, decimal GrainOver, Length CreepBeyondTrim)
{
    /// <summary>
    /// What holds where a press has said nothing (common practice, from memory): legs of 6 mm, as on the staples of most desk staplers, of which 3 mm are
    /// bent over; scoring over 170 g/m²; grain over 120 g/m²; no creep beyond the trim.
    /// </summary>
    public static BenchLimits Usual { get; } = new(Length.FromMillimetres(6m), Length.FromMillimetres(3m), 170m, 120m, Length.Zero);

    /// <summary>The thickest paper that a staple still holds; never below zero.</summary>
    public Length StapleHolds => StapleLeg > Clinch ? StapleLeg - Clinch : Length.Zero;

    /// <summary>The shortest leg that holds some paper: what goes through it, and what is bent over.</summary>
    /// <param name="paper">Thickness under the staple.</param>
    public Length LegFor(Length paper) => paper + Clinch;
}
