using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Selling;

namespace PressRun.Engine.Quoting;

/// <summary>Money paid to somebody of what was theirs.</summary>
/// <param name="Name">Who.</param>
/// <param name="Day">When.</param>
/// <param name="Amount">In whole minor units; below 0 was paid back.</param>
public readonly record struct PaidOut(string Name, DateOnly Day, decimal Amount);

/// <summary>How it stands with one person.</summary>
/// <param name="Name">Who.</param>
/// <param name="Claims">What they were promised; empty for one who was paid and is promised nothing any more.</param>
/// <param name="InTime">What came to them within the time.</param>
/// <param name="ToDate">What came to them from the first day to the end of the time.</param>
/// <param name="Paid">What they were paid until then.</param>
public sealed record PersonPayout(string Name, IReadOnlyList<Claim> Claims, decimal InTime, decimal ToDate, decimal Paid)
{
    /// <summary>What is still to be paid; below 0 where more was paid than came, which is held against what comes.</summary>
    public decimal Open => ToDate - Paid;
}

/// <summary>Who gets what of an edition for a time.</summary>
/// <param name="InTime">The time's own sales and amounts.</param>
/// <param name="ToDate">The same from the first day to the end of the time.</param>
/// <param name="People">Each person once, in the order of the claims.</param>
public sealed record PayoutStatement(Payout InTime, Payout ToDate, IReadOnlyList<PersonPayout> People)
{
    /// <summary>Makes the statement.</summary>
    /// <param name="lines">The whole copies ledger of the edition, in any order.</param>
    /// <param name="costs">What each channel takes, by its id.</param>
    /// <param name="price">Price of a copy.</param>
    /// <param name="claims">Who is promised what.</param>
    /// <param name="paid">What was paid, in any order.</param>
    /// <param name="from">First day of the time.</param>
    /// <param name="to">Last day of the time, not before its first.</param>
    /// <param name="currency">The press's.</param>
    /// <returns>The statement, or what is wrong with the claims or the days.</returns>
    public static Outcome<PayoutStatement> Of(
        IReadOnlyCollection<ChannelMovement> lines,
        IReadOnlyDictionary<string, ChannelCost> costs,
        decimal price,
        IReadOnlyList<Claim> claims,
        IReadOnlyCollection<PaidOut> paid,
        DateOnly from,
        DateOnly to,
        Currency currency)
    {
        if (to < from)
        {
            return Outcome<PayoutStatement>.Refused(new Problem("$.to", null, "The last day comes after the first one."));
        }

        var before = from == DateOnly.MinValue ? default : EditionSales.UpTo(lines, from.AddDays(-1), costs, currency);
        var earlier = Payout.Of(before, price, claims, currency);
        var later = Payout.Of(EditionSales.UpTo(lines, to, costs, currency), price, claims, currency);
        if (!earlier.Succeeded)
        {
            return Outcome<PayoutStatement>.Refused(earlier.Problems);
        }

        var inTime = Payout.Between(earlier.Value, later.Value);
        var until = paid.Where(payment => payment.Day <= to).ToList();
        var people = claims.Select(claim => claim.Name.Trim()).Concat(until.Select(payment => payment.Name.Trim())).Distinct(StringComparer.OrdinalIgnoreCase)
            .Select(name => new PersonPayout(
                name,
                [.. claims.Where(claim => Claim.IsSameName(claim.Name, name))],
                SumOf(name, inTime, claims),
                SumOf(name, later.Value, claims),
                until.Where(payment => Claim.IsSameName(payment.Name, name)).Sum(payment => payment.Amount)));
        return Outcome<PayoutStatement>.Of(new PayoutStatement(inTime, later.Value, [.. people]));
    }

    private static decimal SumOf(string name, Payout payout, IReadOnlyList<Claim> claims) =>
        claims.Zip(payout.Amounts).Where(pair => Claim.IsSameName(pair.First.Name, name)).Sum(pair => pair.Second);
}
