namespace PressRun.Web.Shared;

/// <summary>Words of the trade, each with what it means to somebody who does not print every week.</summary>
public static class TradeWords
{
    private static readonly Dictionary<string, string> Meanings = new(StringComparer.OrdinalIgnoreCase)
    {
        ["landed cost"] = "Everything the run costs until the copies lie on your table: the shop, delivery, tax that does not come back, what binding uses up, your own hours, and the book's fixed costs.",
        ["creep"] = "Folded sheets lie inside each other, so the inner leaves stand out at the fore-edge before it is trimmed. This is how far the innermost one does.",
        ["impressions"] = "One impression is one printed side of one sheet.",
        ["overs"] = "Copies started beyond those wanted, for what goes wrong in printing and binding.",
        ["fence"] = "The stop at the back of the cutter, against which the pile lies.",
    };

    /// <summary>What a word means; null where it needs no explaining.</summary>
    public static string? Meaning(string word) => Meanings.GetValueOrDefault(word);
}
