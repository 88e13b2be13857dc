namespace PressRun.Web.Shared;

/// <summary>Words of the trade, each with what it means to somebody who does not print every week.</summary>
public static class TradeWords
{
    /// <summary>What a word means; null where it needs no explaining.</summary>
    /// <param name="word">As it stands on the page, in the language of the page.</param>
    public static string? Meaning(string word) => Terms().FirstOrDefault(term => string.Equals(term.Word, word, StringComparison.OrdinalIgnoreCase)).Meaning;

    private static IEnumerable<(string Word, string? Meaning)> Terms() =>
    [
        (Say($"landed cost"), Say($"Everything the run costs until the copies lie on your table: the shop, delivery, tax that does not come back, what binding uses up, your own hours, and the book's fixed costs.")),
        (Say($"creep"), Say($"Folded sheets lie inside each other, so the inner leaves stand out at the fore-edge before it is trimmed. This is how far the innermost one does.")),
        (Say($"impressions"), Say($"One impression is one printed side of one sheet.")),
        (Say($"overs"), Say($"Copies started beyond those wanted, for what goes wrong in printing and binding.")),
        (Say($"fence"), Say($"The stop at the back of the cutter, against which the pile lies.")),
    ];
}
