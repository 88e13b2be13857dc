using PressRun.Engine.Costing;
using PressRun.Engine.Editions;

namespace PressRun.Engine.Postage;

/// <summary>The room that a piece of mail has left, in leaves.</summary>
internal static class LeafRoom
{
    /// <summary>Leaves of each part's stock that every copy of the piece could have more without leaving its step or its service's thickness.</summary>
    /// <param name="block">The book.</param>
    /// <param name="postage">The piece as it is posted.</param>
    /// <param name="copies">Copies in the piece, at least 1.</param>
    public static IReadOnlyList<int> Of(BookBlock block, PostageChoice postage, int copies) =>
        [.. block.Parts.Select(part => OfPart(part, block.Edition.Page, postage, copies))];

    private static int OfPart(PartPieces part, Size page, PostageChoice postage, int copies)
    {
        if (postage.HeadroomMass is not { } mass)
        {
            return 0;
        }

        var byMass = WholeLeaves(mass.Grams, copies * Grams.Of(page, part.Stock.Weight).Grams);
        var byThickness = postage.HeadroomThickness is { } thickness ? WholeLeaves(thickness.Millimetres, copies * part.Stock.Caliper.Millimetres) : byMass;
        return Math.Min(byMass, byThickness);
    }

    // Five leaves that just fit must not become four because a leaf's mass or caliper is a quotient that never ends; and a leaf of next to nothing
    // leaves room for as many as there may be.
    private static int WholeLeaves(decimal room, decimal leaf) =>
        leaf * Job.MostPages <= room ? Job.MostPages : (int)decimal.Floor(decimal.Round(room / leaf, 12));
}
