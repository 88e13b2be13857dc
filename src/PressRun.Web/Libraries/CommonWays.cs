namespace PressRun.Web.Libraries;

/// <summary>Ways of selling that most makers have, to start a list with (common practice, from memory: shops ask for different parts of the price, so write your own). None has tax, fees or
/// postage until they are written.</summary>
public static class CommonWays
{
    /// <summary>Keys of the columns that are filled.</summary>
    public static IReadOnlyList<string> Columns { get; } = ["name", "mix", "tradeDiscount", "copiesPerOrder"];

    /// <summary>Name, share, discount and copies an order of each.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> All =>
    [
        [Say($"Table at a fair"), "2", "0", "1"], [Say($"Own web shop"), "1", "0", "1"], [Say($"Comic and book shops"), "1", "40", "5"],
    ];
}
