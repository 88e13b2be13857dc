namespace PressRun.Engine.Measures;

/// <summary>
/// Splits a whole between people so that the shares add up to it: the largest-remainder method (Hamilton's). Each share is rounded down
/// first; what is left goes, a unit each, to the largest remainders, and of equal ones to the earliest listed.
/// </summary>
public static class Shares
{
    /// <summary>Splits whole units by weight.</summary>
    /// <param name="units">What is split; 0 or more.</param>
    /// <param name="weights">Weight of each share, none negative and not all zero.</param>
    /// <returns>Whole units in the order of the weights; they add up to <paramref name="units"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The units or a weight are negative.</exception>
    /// <exception cref="ArgumentException">The weights add up to nothing.</exception>
    public static IReadOnlyList<long> Of(long units, IReadOnlyList<decimal> weights)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(units);
        foreach (var weight in weights)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(weight, nameof(weights));
        }

        var sum = weights.Sum();
        if (sum == 0m)
        {
            throw new ArgumentException("The weights must add up to more than 0.", nameof(weights));
        }

        var shares = new long[weights.Count];
        var remainders = new decimal[weights.Count];
        var left = units;
        for (var index = 0; index < shares.Length; index++)
        {
            // By remainder and not by quotient: what divides evenly is then never a unit short.
            remainders[index] = units * weights[index] % sum;
            shares[index] = (long)decimal.Round(((units * weights[index]) - remainders[index]) / sum);
            left -= shares[index];
        }

        foreach (var index in Enumerable.Range(0, shares.Length).OrderByDescending(index => remainders[index]).Take((int)left))
        {
            shares[index]++;
        }

        return shares;
    }

    /// <summary>Splits an amount of money by weight, in whole minor units.</summary>
    /// <param name="amount">What is split, already rounded to the minor unit; a negative amount is split as its opposite is.</param>
    /// <param name="weights">Weight of each share, none negative and not all zero.</param>
    /// <param name="currency">The amount's.</param>
    /// <returns>Amounts in the order of the weights; they add up to <paramref name="amount"/>.</returns>
    /// <exception cref="ArgumentException">The amount has more digits than the currency's minor unit, or the weights add up to nothing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A weight is negative.</exception>
    public static IReadOnlyList<decimal> Of(decimal amount, IReadOnlyList<decimal> weights, Currency currency)
    {
        if (currency.Round(amount) != amount)
        {
            throw new ArgumentException("The amount must be rounded to the minor unit before it is split.", nameof(amount));
        }

        var sign = amount < 0m ? -1m : 1m;
        return [.. Of((long)(Math.Abs(amount) / currency.MinorUnit), weights).Select(units => sign * units * currency.MinorUnit)];
    }
}
