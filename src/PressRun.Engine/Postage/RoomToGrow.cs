using PressRun.Engine.Editions;

namespace PressRun.Engine.Postage;

/// <summary>The room that a piece of mail has left, in what the binding can add.</summary>
public static class RoomToGrow
{
    /// <summary>Whole leaves that a part can gain: as many as the room takes, in the binding's own steps (a folded sheet of two leaves where it is
    /// saddle-stitched; the cover of a perfect-bound book gains none).</summary>
    /// <param name="binding">The edition's binding.</param>
    /// <param name="part">Place of the part from the outside in, from 0.</param>
    /// <param name="room">Leaves that mass and thickness leave room for, 0 or more.</param>
    public static int Leaves(Binding binding, int part, int room)
    {
        var step = Step(binding, part);
        return step == 0 ? 0 : room / step * step;
    }

    /// <summary>Leaves that the binding adds to a part at a time: 2, 1, or 0 where it adds none.</summary>
    /// <param name="binding">The edition's binding.</param>
    /// <param name="part">Place of the part from the outside in, from 0.</param>
    public static int Step(Binding binding, int part) =>
        binding == Binding.Perfect && part == 0 ? 0 : Math.Max(1, BindingRules.PagesPerPiece(binding, part) / 2);
}
