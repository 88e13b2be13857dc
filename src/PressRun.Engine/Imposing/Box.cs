using PressRun.Engine.Measures;

namespace PressRun.Engine.Imposing;

/// <summary>A point on a face, from its upper left corner.</summary>
/// <param name="Across">To the right.</param>
/// <param name="Down">Downwards.</param>
public readonly record struct Spot(Length Across, Length Down);

/// <summary>A straight line on a face.</summary>
/// <param name="From">One end.</param>
/// <param name="To">The other.</param>
public readonly record struct Line(Spot From, Spot To);

/// <summary>A rectangle on a face, from its upper left corner.</summary>
/// <param name="Left">Distance from the left edge.</param>
/// <param name="Top">Distance from the upper edge.</param>
/// <param name="Width">Across.</param>
/// <param name="Height">Down.</param>
public readonly record struct Box(Length Left, Length Top, Length Width, Length Height)
{
    /// <summary>Distance of its right side from the left edge.</summary>
    public Length Right => Left + Width;

    /// <summary>Distance of its lower side from the upper edge.</summary>
    public Length Bottom => Top + Height;

    /// <summary>Its middle.</summary>
    public Spot Middle => new(Left + (Width * 0.5m), Top + (Height * 0.5m));

    /// <summary>True where a point lies in it or on its edge.</summary>
    /// <param name="spot">A point of the same face.</param>
    public bool Holds(Spot spot) => spot.Across >= Left && spot.Across <= Right && spot.Down >= Top && spot.Down <= Bottom;
}
