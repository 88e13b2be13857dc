using System.Globalization;
using PressRun.Engine.Quoting;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Payouts;

/// <summary>What somebody may be promised.</summary>
public enum ClaimKind
{
    /// <summary>An amount for each copy.</summary>
    PerCopy,

    /// <summary>A percentage of what comes in.</summary>
    OfReceipts,

    /// <summary>A percentage of the price.</summary>
    OfPrice,

    /// <summary>Shares of the profit.</summary>
    OfProfit,
}

/// <summary>Who gets what, one line of it, while it is typed.</summary>
public sealed class ClaimRow
{
    /// <summary>Fields of a row, as many as a draft of it has.</summary>
    public const int Fields = 3;

    /// <summary>Tells the rows apart.</summary>
    public Guid Id { get; } = Guid.NewGuid();

    /// <summary>Who.</summary>
    public string Name { get; set; } = "";

    /// <summary>How much, as typed.</summary>
    public string Value { get; set; } = "";

    /// <summary>How much, as it was refused; null where it was not.</summary>
    public string? Refused { get; set; }

    /// <summary>Of what.</summary>
    public ClaimKind Kind { get; set; }

    /// <summary>The fields in the order in which they stand.</summary>
    public IReadOnlyList<string> Texts => [Name, Value, Kind.ToString()];

    /// <summary>A row from the fields of a draft.</summary>
    public static ClaimRow Of(IReadOnlyList<string> texts) => new() { Name = texts[0], Value = texts[1], Kind = Enum.TryParse<ClaimKind>(texts[2], out var kind) ? kind : default };

    /// <summary>A row that says a claim.</summary>
    public static ClaimRow Of(Claim claim, PressFormat format)
    {
        var (kind, value) = claim switch
        {
            Claim.PerCopy each => (ClaimKind.PerCopy, format.Price(each.Amount)),
            Claim.OfReceipts part => (ClaimKind.OfReceipts, format.PerHundred(part.Rate)),
            Claim.OfPrice part => (ClaimKind.OfPrice, format.PerHundred(part.Rate)),
            Claim.OfProfit share => (ClaimKind.OfProfit, format.Number(share.Weight, 6)),
            _ => throw new ArgumentOutOfRangeException(nameof(claim), claim, "There is no such claim."),
        };
        return new ClaimRow { Name = claim.Name, Kind = kind, Value = value };
    }

    /// <summary>The claim; null where the value is no number.</summary>
    public Claim? Read(CultureInfo culture) => Kind switch
    {
        ClaimKind.PerCopy => Typed.Number(Value, culture) is { } amount ? new Claim.PerCopy(Name.Trim(), amount) : null,
        ClaimKind.OfReceipts => Typed.Percent(Value, culture) is { } rate ? new Claim.OfReceipts(Name.Trim(), rate) : null,
        ClaimKind.OfPrice => Typed.Percent(Value, culture) is { } rate ? new Claim.OfPrice(Name.Trim(), rate) : null,
        _ => Typed.Number(Value, culture) is { } weight ? new Claim.OfProfit(Name.Trim(), weight) : null,
    };
}
