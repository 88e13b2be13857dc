using PressRun.Engine.Ladder;

namespace PressRun.Web.Charts;

/// <summary>A row of the table that says what the staircase shows.</summary>
/// <param name="Rung">Quantity and cost.</param>
/// <param name="Chosen">True for the quantity of the plan.</param>
/// <param name="Better">A larger quantity that costs no more; null where none does.</param>
/// <param name="Jump">The jump at this quantity, where there is one.</param>
public sealed record StaircaseRow(Rung Rung, bool Chosen, int? Better, LadderJump? Jump)
{
    /// <summary>Rows at the marks of the axis, at the chosen quantity, at each jump and just before it, and at both ends.</summary>
    public static IReadOnlyList<StaircaseRow> Of(
        CostCurve curve, IReadOnlyList<DearBand> bands, IReadOnlyList<LadderJump> jumps, IEnumerable<int> marks, int chosen)
    {
        var quantities = new SortedSet<int>(marks) { curve.From, curve.To };
        if (chosen >= curve.From && chosen <= curve.To)
        {
            quantities.Add(chosen);
        }

        foreach (var jump in jumps)
        {
            quantities.Add(jump.At - 1);
            quantities.Add(jump.At);
        }

        return [.. quantities.Select(quantity => new StaircaseRow(
            new Rung(quantity, curve.At(quantity)),
            quantity == chosen,
            bands.Where(band => band.Holds(quantity)).Select(band => (int?)band.Better).FirstOrDefault(),
            jumps.Where(jump => jump.At == quantity).Select(jump => (LadderJump?)jump).FirstOrDefault()))];
    }
}
