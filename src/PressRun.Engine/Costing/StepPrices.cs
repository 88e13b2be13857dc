namespace PressRun.Engine.Costing;

/// <summary>A price with steps, ready to be asked. The first step begins at 1 and steps rise.</summary>
internal readonly struct StepPrices(IReadOnlyList<PriceStep> steps, StepRule rule)
{
    private readonly PriceStep[] steps = [.. steps];

    public StepRule Rule { get; } = rule;

    public int StepCount => steps.Length;

    /// <summary>Index of the last step reached by <paramref name="units"/>, at least 1.</summary>
    public int Reached(long units)
    {
        var index = steps.Length - 1;
        while (index > 0 && steps[index].From > units)
        {
            index--;
        }

        return index;
    }

    public decimal Each(int step) => steps[step].Each;

    /// <summary>Units of the total that are priced at a step of an incremental price.</summary>
    public long UnitsIn(int step, long units)
    {
        var last = step + 1 < steps.Length ? Math.Min(units, steps[step + 1].From - 1) : units;
        return last - steps[step].From + 1;
    }

    /// <summary>The unrounded charge of so many units.</summary>
    public decimal Charge(long units)
    {
        if (units == 0)
        {
            return 0m;
        }

        var reached = Reached(units);
        if (Rule == StepRule.AllUnits)
        {
            return units * steps[reached].Each;
        }

        var charge = 0m;
        for (var step = 0; step <= reached; step++)
        {
            charge += UnitsIn(step, units) * steps[step].Each;
        }

        return charge;
    }
}
