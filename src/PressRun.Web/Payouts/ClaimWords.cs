using PressRun.Engine.Quoting;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Payouts;

/// <summary>Who gets what, in words.</summary>
public static class ClaimWords
{
    /// <summary>Kinds as they are chosen, after the number.</summary>
    public static (ClaimKind Kind, string Words)[] Kinds =>
    [
        (ClaimKind.PerCopy, Say($"for each copy sold")), (ClaimKind.OfReceipts, Say($"% of what comes in")), (ClaimKind.OfPrice, Say($"% of the price")), (ClaimKind.OfProfit, Say($"shares of the profit")),
    ];

    /// <summary>One claim.</summary>
    public static string Of(Claim claim, PressFormat format) => claim switch
    {
        Claim.PerCopy each => Say($"{format.Price(each.Amount)} for each copy sold"),
        Claim.OfReceipts part => Say($"{format.Percent(part.Rate)} of what comes in"),
        Claim.OfPrice part => Say($"{format.Percent(part.Rate)} of the price"),
        Claim.OfProfit share => Say(share.Weight, $"{format.Number(share.Weight, 4)} share of the profit", $"{format.Number(share.Weight, 4)} shares of the profit"),
        _ => throw new ArgumentOutOfRangeException(nameof(claim), claim, "There is no such claim."),
    };

    /// <summary>Where two agreements differ, person by person, in the order in which they stand in mine and then in theirs.</summary>
    public static IReadOnlyList<(string Who, string Mine, string Theirs)> Differences(IReadOnlyList<Claim> mine, IReadOnlyList<Claim> theirs, PressFormat format)
    {
        return [.. mine.Concat(theirs).Select(claim => claim.Name.Trim()).Distinct(StringComparer.Ordinal)
            .Select(name => (Apart.Of(name), OfOne(mine, name), OfOne(theirs, name))).Where(row => row.Item2 != row.Item3)];

        string OfOne(IReadOnlyList<Claim> claims, string name)
        {
            var own = claims.Where(claim => claim.Name.Trim() == name).ToList();
            return own.Count == 0 ? Say("what somebody gets", $"nothing") : Of(own, format);
        }
    }

    /// <summary>All claims of one person.</summary>
    public static string Of(IReadOnlyList<Claim> claims, PressFormat format) =>
        claims.Count == 0 ? Say($"promised nothing any more") : string.Join(", ", claims.Select(claim => Of(claim, format)));
}
