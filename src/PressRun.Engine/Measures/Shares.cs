using System.Numerics;

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
        return [.. Split(units, weights).Select(share => (long)share)];
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
        return [.. Split((BigInteger)(Math.Abs(amount) / currency.MinorUnit), weights).Select(units => sign * (decimal)units * currency.MinorUnit)];
    }

    // In whole numbers: what divides evenly is never a unit short, and no product is too large.
    private static BigInteger[] Split(BigInteger units, IReadOnlyList<decimal> weights)
    {
        foreach (var weight in weights)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(weight, nameof(weights));
        }

        var scale = weights.Count == 0 ? 0 : weights.Max(weight => weight.Scale);
        var whole = weights.Select(weight => Digits.Of(weight) * BigInteger.Pow(10, scale - weight.Scale)).ToList();
        var sum = whole.Aggregate(BigInteger.Zero, (total, weight) => total + weight);
        if (sum.IsZero)
        {
            throw new ArgumentException("The weights must add up to more than 0.", nameof(weights));
        }

        var shares = new BigInteger[whole.Count];
        var remainders = new BigInteger[whole.Count];
        for (var index = 0; index < shares.Length; index++)
        {
            shares[index] = BigInteger.DivRem(units * whole[index], sum, out remainders[index]);
        }

        var left = (int)(units - shares.Aggregate(BigInteger.Zero, (total, share) => total + share));
        foreach (var index in Enumerable.Range(0, shares.Length).OrderByDescending(index => remainders[index]).Take(left))
        {
            shares[index]++;
        }

        return shares;
    }
}
