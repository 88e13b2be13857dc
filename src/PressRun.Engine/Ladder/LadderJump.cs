namespace PressRun.Engine.Ladder;

/// <summary>A place where the cost of a curve does not merely climb: it falls, or it climbs by far more than it usually does.</summary>
/// <param name="At">The first quantity that costs the new amount.</param>
/// <param name="Before">Landed cost of one copy fewer.</param>
/// <param name="After">Landed cost at it.</param>
public readonly record struct LadderJump(int At, decimal Before, decimal After)
{
    /// <summary>A climb of more than this many usual climbs is a jump (common practice: what the eye takes for a step).</summary>
    public const decimal UsualClimbs = 5m;

    /// <summary>By how much the cost changes; negative where it falls.</summary>
    public decimal Change => After - Before;

    /// <summary>
    /// The jumps of a curve, by quantity. The usual climb is the median of all climbs from one copy to the next. Where fewer than one copy
    /// in eight climbs at all, as where a shop sells only certain quantities, every change is a jump.
    /// </summary>
    /// <param name="curve">Landed cost at every whole quantity of a range.</param>
    public static IReadOnlyList<LadderJump> Of(CostCurve curve)
    {
        var costs = curve.Costs;
        var climbs = new List<decimal>(costs.Count);
        for (var i = 1; i < costs.Count; i++)
        {
            if (costs[i] > costs[i - 1])
            {
                climbs.Add(costs[i] - costs[i - 1]);
            }
        }

        climbs.Sort();
        var everyClimb = climbs.Count * 8 < costs.Count - 1;
        var most = everyClimb || climbs.Count == 0 ? 0m : UsualClimbs * climbs[climbs.Count / 2];
        var jumps = new List<LadderJump>();
        for (var i = 1; i < costs.Count; i++)
        {
            if (costs[i] < costs[i - 1] || costs[i] - costs[i - 1] > most)
            {
                jumps.Add(new LadderJump(curve.From + i, costs[i - 1], costs[i]));
            }
        }

        return jumps;
    }
}
