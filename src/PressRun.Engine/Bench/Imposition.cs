using PressRun.Engine.Measures;

namespace PressRun.Engine.Bench;

/// <summary>What the one who binds needs to know of an edition.</summary>
/// <param name="Pieces">Sheets, leaves or cover of one copy, from the outside in.</param>
/// <param name="StaplerStop">Distance from the piece's edge to the staple line; null where nothing is stapled.</param>
/// <param name="StaplesFromHead">Staple places from the head of the piece before trimming; empty where nothing is stapled.</param>
/// <param name="Cuts">In the order in which they are made.</param>
public sealed record Imposition(IReadOnlyList<ImposedPiece> Pieces, Length? StaplerStop, IReadOnlyList<Length> StaplesFromHead, IReadOnlyList<Cut> Cuts);

/// <summary>One piece of a copy with the pages on its faces.</summary>
/// <param name="Number">From the outside in, from 1.</param>
/// <param name="PartName">Its part.</param>
/// <param name="Outer">Pages of the outer face from left to right.</param>
/// <param name="Inner">Pages of the inner face from left to right; empty where it is blank.</param>
/// <param name="PushOut">How far creep pushes it out beyond the outermost.</param>
/// <param name="Shift">How far its pages move towards the spine so that the outer margin stays.</param>
public sealed record ImposedPiece(int Number, string PartName, IReadOnlyList<int> Outer, IReadOnlyList<int> Inner, Length PushOut, Length Shift);

/// <summary>An edge that can be cut.</summary>
public enum Edge
{
    /// <summary>At the spine, before binding.</summary>
    Spine,

    /// <summary>At the top.</summary>
    Head,

    /// <summary>Opposite the spine.</summary>
    ForeEdge,

    /// <summary>At the bottom.</summary>
    Foot,
}

/// <summary>A cut.</summary>
/// <param name="Edge">Which edge falls off.</param>
/// <param name="Fence">What stays: distance from the cutter's back fence to the blade.</param>
public readonly record struct Cut(Edge Edge, Length Fence);
