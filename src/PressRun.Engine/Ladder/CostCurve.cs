namespace PressRun.Engine.Ladder;

/// <summary>Landed cost at every whole quantity of a range.</summary>
/// <param name="From">First quantity.</param>
/// <param name="Costs">Landed cost of <paramref name="From"/>, From + 1, ...; at least one.</param>
public sealed record CostCurve(int From, IReadOnlyList<decimal> Costs)
{
    /// <summary>Last quantity.</summary>
    public int To => From + Costs.Count - 1;

    /// <summary>Landed cost of a quantity.</summary>
    /// <param name="quantity">From <see cref="From"/> to <see cref="To"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The quantity is not in the range.</exception>
    public decimal At(int quantity)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(quantity, From);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(quantity, To);
        return Costs[quantity - From];
    }

    /// <summary>Printing more copies for no more money.</summary>
    /// <param name="quantity">A quantity of the range.</param>
    /// <param name="better">A larger one that costs no more.</param>
    public BetterBuy Buy(int quantity, int better) => new(quantity, better, At(quantity) - At(better));

    /// <summary>
    /// For each quantity the smallest larger one that costs no more, or 0 where none does. One pass from the right over quantities whose cost
    /// is lower than that of all nearer ones (a monotonic stack).
    /// </summary>
    public int[] NextNotDearer()
    {
        var next = new int[Costs.Count];
        var stack = new Stack<int>();
        for (var index = Costs.Count - 1; index >= 0; index--)
        {
            while (stack.Count > 0 && Costs[stack.Peek()] > Costs[index])
            {
                stack.Pop();
            }

            next[index] = stack.Count > 0 ? From + stack.Peek() : 0;
            stack.Push(index);
        }

        return next;
    }

    /// <summary>The quantity of a band, or right after it, at which the cost falls last: what comes after costs no less, so that what makes it fall stands there.</summary>
    /// <param name="band">A band of this curve.</param>
    /// <returns>The quantity right after the band where the cost falls at none of them.</returns>
    public int LastFall(DearBand band)
    {
        for (var quantity = band.Better; quantity > band.From; quantity--)
        {
            if (At(quantity) < At(quantity - 1))
            {
                return quantity;
            }
        }

        return band.Better;
    }

    /// <summary>
    /// Runs of quantities that each cost at least as much as the quantity after the run: no one should print so many. Of a run's quantities
    /// all larger ones that cost no more, the one right after the run is among the cheapest.
    /// </summary>
    public IReadOnlyList<DearBand> DearBands()
    {
        var bands = new List<DearBand>();
        var next = NextNotDearer();
        for (var index = 0; index < next.Length; index++)
        {
            if (next[index] == 0)
            {
                continue;
            }

            var first = index;
            while (next[index + 1] != 0)
            {
                index++;
            }

            bands.Add(new DearBand(From + first, From + index, From + index + 1));
        }

        return bands;
    }
}
