using PressRun.Engine.Measures;

namespace PressRun.Engine.Sheets;

/// <summary>Which way the grain must run.</summary>
public enum GrainRule
{
    /// <summary>Either way.</summary>
    Any,

    /// <summary>Along the spine: only upright pieces count. A sheet's grain runs along its height, whichever side is longer.</summary>
    ParallelToSpine,
}

/// <summary>How the pieces of a part share sheets.</summary>
public enum Layout
{
    /// <summary>Whichever of the others takes the fewest sheets; of equals the first in their order.</summary>
    Best,

    /// <summary>Each sheet carries the same piece n times.</summary>
    StepAndRepeat,

    /// <summary>Each sheet carries n different pieces of one copy.</summary>
    CutAndStack,

    /// <summary>Full sheets of different pieces, and the rest repeated.</summary>
    Combined,
}

/// <summary>A sheet size that a shop prints on.</summary>
/// <param name="Id">Its id in the price list.</param>
/// <param name="Width">First dimension.</param>
/// <param name="Height">Second dimension; the grain runs along it.</param>
/// <param name="Margin">Unprintable margin on each edge; it counts only where the edition bleeds.</param>
/// <param name="Gutter">Space between neighbouring pieces.</param>
/// <param name="MixedLayout">True where the cutter may mix both orientations on a sheet.</param>
/// <param name="Grain">Which orientations count.</param>
public sealed record Sheet(string Id, Length Width, Length Height, Length Margin, Length Gutter, bool MixedLayout, GrainRule Grain);
