using PressRun.Engine.Ladder;

namespace PressRun.Engine.Costing;

/// <content>Costs over a range of quantities.</content>
public sealed partial class PreparedJob
{
    /// <summary>Landed cost at every whole quantity from <paramref name="from"/> to <paramref name="to"/>.</summary>
    /// <param name="from">At least 1.</param>
    /// <param name="to">Not below from, at most 1,000,000.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <exception cref="OperationCanceledException">The work was ended early.</exception>
    public Outcome<CostCurve> Curve(int from, int to, CancellationToken cancellation = default)
    {
        var problems = new List<Problem>();
        CheckRange(from, to, problems);
        if (problems.Count > 0)
        {
            return Outcome<CostCurve>.Refused(problems);
        }

        var costs = new decimal[to - from + 1];
        var rising = RisingOvers();
        for (var index = 0; index < costs.Length; index++)
        {
            cancellation.ThrowIfCancellationRequested();
            if (Costs(from + index, out costs[index], out _, rising) is { } problem)
            {
                return Outcome<CostCurve>.Refused(problem with { Path = problem.Path == "$.quantity" ? "$.ladder" : problem.Path });
            }
        }

        return Outcome<CostCurve>.Of(new CostCurve(from, costs));
    }

    /// <summary>Landed cost, lowest unit cost and better buys over a range.</summary>
    /// <param name="range">Quantities asked for; better buys are looked for among all whole quantities up to its last.</param>
    /// <param name="cancellation">Ends the work early.</param>
    /// <exception cref="OperationCanceledException">The work was ended early.</exception>
    public Outcome<QuantityLadder> Ladder(LadderRange range, CancellationToken cancellation = default)
    {
        if (range.Step < 1 || range.To < range.From || range.Count > Job.MostQuantities)
        {
            return Outcome<QuantityLadder>.Refused(new Problem(
                "$.ladder", $"{range.From} to {range.To} by {range.Step}", $"A ladder rises by at least 1 and has 1 to {Job.MostQuantities} quantities."));
        }

        var outcome = Curve(range.From, range.Last, cancellation);
        if (!outcome.Succeeded)
        {
            return Outcome<QuantityLadder>.Refused(outcome.Problems);
        }

        var curve = outcome.Value;
        var next = curve.NextNotDearer();
        var rungs = new Rung[range.Count];
        var betterBuys = new List<BetterBuy>();
        var lowest = 0;
        for (var index = 0; index < rungs.Length; index++)
        {
            var quantity = range.From + (index * range.Step);
            var rung = rungs[index] = new Rung(quantity, curve.At(quantity));
            // Compared as fractions: costs of copies are equal or not, whatever their decimals.
            if (rung.LandedCost * rungs[lowest].Quantity < rungs[lowest].LandedCost * rung.Quantity)
            {
                lowest = index;
            }

            if (next[quantity - range.From] is not 0 and var better)
            {
                betterBuys.Add(curve.Buy(quantity, better));
            }
        }

        return Outcome<QuantityLadder>.Of(new QuantityLadder(rungs, rungs[lowest].Quantity, betterBuys));
    }

    private static void CheckRange(int from, int to, List<Problem> problems)
    {
        JobRules.CheckQuantity(from, "$.ladder.from", problems);
        JobRules.CheckQuantity(to, "$.ladder.to", problems);
        if (to < from)
        {
            problems.Add(new Problem("$.ladder.to", Text.Of(to), $"The range ends at or after its start, {from}."));
        }
    }
}
