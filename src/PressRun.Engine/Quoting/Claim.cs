using PressRun.Engine.Costing;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Quoting;

/// <summary>What somebody is to have of an edition's sales.</summary>
/// <param name="Name">Who; not empty.</param>
public abstract record Claim(string Name)
{
    /// <summary>Most claims on one edition.</summary>
    public const int Most = 40;

    /// <summary>A royalty of one amount for each copy sold.</summary>
    /// <param name="Name">Who.</param>
    /// <param name="Amount">0 or more; may be finer than the minor unit.</param>
    public sealed record PerCopy(string Name, decimal Amount) : Claim(Name);

    /// <summary>A royalty of a part of what came in.</summary>
    /// <param name="Name">Who.</param>
    /// <param name="Rate">Fraction, 0 to 1.</param>
    public sealed record OfReceipts(string Name, decimal Rate) : Claim(Name);

    /// <summary>A royalty of a part of the edition's price for each copy sold, whatever came in for it.</summary>
    /// <param name="Name">Who.</param>
    /// <param name="Rate">Fraction, 0 to 1.</param>
    public sealed record OfPrice(string Name, decimal Rate) : Claim(Name);

    /// <summary>A share of the profit that is left after all royalties.</summary>
    /// <param name="Name">Who.</param>
    /// <param name="Weight">Of all shares; more than 0 and at most <see cref="BillSplit.MostShares"/>.</param>
    public sealed record OfProfit(string Name, decimal Weight) : Claim(Name);

    /// <summary>What is wrong with claims, by path; empty where nothing is. One person may have several, but one of a kind.</summary>
    /// <param name="claims">All claims on one edition.</param>
    public static IReadOnlyList<Problem> Check(IReadOnlyList<Claim> claims)
    {
        var problems = new List<Problem>();
        if (claims.Count > Most)
        {
            problems.Add(new Problem("$", Text.Of(claims.Count), $"At most {Most} lines say who gets what."));
        }

        foreach (var (index, claim) in claims.Index())
        {
            var path = FormattableString.Invariant($"$[{index}]");
            if (string.IsNullOrWhiteSpace(claim.Name))
            {
                problems.Add(new Problem(path + ".name", claim.Name, "Say who gets this."));
            }
            else if (claims.Take(index).Any(other => other.GetType() == claim.GetType() && IsSameName(other.Name, claim.Name)))
            {
                problems.Add(new Problem(path + ".name", claim.Name, "This stands here already. Put the two together."));
            }

            if (RuleBroken(claim) is var (value, rule))
            {
                problems.Add(new Problem(path + ".value", Text.Exact(value), rule));
            }
        }

        return problems;
    }

    /// <summary>True where two names are one person's.</summary>
    /// <param name="one">A name; spaces around it do not count, nor whether letters are upper or lower case.</param>
    /// <param name="other">Another, read likewise.</param>
    public static bool IsSameName(string one, string other) => string.Equals(one.Trim(), other.Trim(), StringComparison.OrdinalIgnoreCase);

    private static (decimal Value, string Rule)? RuleBroken(Claim claim) => claim switch
    {
        PerCopy { Amount: < 0m or > 1_000_000m } each => (each.Amount, "Write an amount for each copy, 0 or more."),
        OfReceipts { Rate: < 0m or > 1m } part => (part.Rate * 100m, "Write a percentage from 0 to 100."),
        OfPrice { Rate: < 0m or > 1m } part => (part.Rate * 100m, "Write a percentage from 0 to 100."),
        OfProfit { Weight: <= 0m or > BillSplit.MostShares } share => (share.Weight, "A share is more than 0 and at most a million; leave out who gets nothing."),
        _ => null,
    };
}
