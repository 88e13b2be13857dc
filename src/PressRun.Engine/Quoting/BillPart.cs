namespace PressRun.Engine.Quoting;

/// <summary>One who carries a part of a bill.</summary>
/// <param name="Name">Who; not empty.</param>
public abstract record BillPart(string Name)
{
    /// <summary>Carries a share of what the fixed parts leave.</summary>
    /// <param name="Name">Who.</param>
    /// <param name="Weight">Of all shares; more than 0 and at most <see cref="BillSplit.MostShares"/>. Two of weight 1 and 2 carry a third and two thirds.</param>
    public sealed record Share(string Name, decimal Weight) : BillPart(Name);

    /// <summary>Carries one amount, whatever the bill.</summary>
    /// <param name="Name">Who.</param>
    /// <param name="Amount">0 or more, in whole minor units.</param>
    public sealed record Fixed(string Name, decimal Amount) : BillPart(Name);
}
