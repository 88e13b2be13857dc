using PressRun.Engine.Costing;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Quoting;

/// <summary>A bill cut into what each one carries.</summary>
/// <param name="Total">The bill.</param>
/// <param name="Amounts">In the order of the parts; they add up to <paramref name="Total"/> to the minor unit.</param>
public sealed record BillSplit(decimal Total, IReadOnlyList<decimal> Amounts)
{
    /// <summary>Most parts of one bill.</summary>
    public const int MostParts = 20;

    /// <summary>Most that one share weighs.</summary>
    public const decimal MostShares = 1_000_000m;

    /// <summary>
    /// Cuts a bill: fixed parts first, then the rest by weight in whole minor units by the largest remainder, ties to the first
    /// (the method of Hamilton and Hare; M. L. Balinski and H. P. Young, <i>Fair Representation</i>, 1982, chapter 2).
    /// </summary>
    /// <param name="total">The bill, 0 or more, in whole minor units.</param>
    /// <param name="parts">At most <see cref="MostParts"/>; without any the bill is nobody's but the press's, and there is nothing to cut.</param>
    /// <param name="currency">The bill's.</param>
    /// <returns>The cut, or what stands in its way by path into <paramref name="parts"/>.</returns>
    public static Outcome<BillSplit> Of(decimal total, IReadOnlyList<BillPart> parts, Currency currency)
    {
        if (Check(parts, currency) is { Count: > 0 } problems)
        {
            return Outcome<BillSplit>.Refused(problems);
        }

        var left = total - parts.OfType<BillPart.Fixed>().Sum(part => part.Amount);
        var shares = parts.OfType<BillPart.Share>().Select(part => part.Weight).ToList();
        if (left < 0m)
        {
            return Outcome<BillSplit>.Refused(new Problem("$", Text.Exact(-left), $"The fixed parts come to {Text.Exact(-left)} more than the bill. Lower one of them."));
        }

        if (left > 0m && shares.Count == 0 && parts.Count > 0)
        {
            return Outcome<BillSplit>.Refused(new Problem("$", Text.Exact(left), $"{Text.Exact(left)} of the bill is nobody's. Let someone carry a share of the rest."));
        }

        var rest = shares.Count == 0 ? [] : new Queue<decimal>(Shares.Of(left, shares, currency));
        return Outcome<BillSplit>.Of(new BillSplit(total, [.. parts.Select(part => part is BillPart.Fixed given ? given.Amount : rest.Dequeue())]));
    }

    private static List<Problem> Check(IReadOnlyList<BillPart> parts, Currency currency)
    {
        var problems = new List<Problem>();
        if (parts.Count > MostParts)
        {
            problems.Add(new Problem("$", Text.Of(parts.Count), $"A bill is shared by at most {MostParts}."));
        }

        foreach (var (index, part) in parts.Index())
        {
            var path = FormattableString.Invariant($"$[{index}]");
            if (string.IsNullOrWhiteSpace(part.Name))
            {
                problems.Add(new Problem(path + ".name", part.Name, "Say who carries this part."));
            }
            else if (parts.Take(index).Any(other => string.Equals(other.Name.Trim(), part.Name.Trim(), StringComparison.OrdinalIgnoreCase)))
            {
                problems.Add(new Problem(path + ".name", part.Name, "This name stands here already. Tell the two apart."));
            }

            if (part is BillPart.Share { Weight: <= 0m or > MostShares } share)
            {
                problems.Add(new Problem(path + ".weight", Text.Exact(share.Weight), $"A share is more than 0 and at most a million; leave out who carries nothing."));
            }

            if (part is BillPart.Fixed given && (given.Amount < 0m || currency.Round(given.Amount) != given.Amount))
            {
                problems.Add(new Problem(path + ".amount", Text.Exact(given.Amount), "Write an amount of 0 or more, with no finer coin than the currency has."));
            }
        }

        return problems;
    }
}
