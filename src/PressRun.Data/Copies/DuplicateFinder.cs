namespace PressRun.Data.Copies;

/// <summary>Why a line may be one that is written already.</summary>
public enum DuplicateReason
{
    /// <summary>A line of the same printing and kind has the same reference.</summary>
    Reference,

    /// <summary>A line of the same printing and kind has the same day, way of selling and copies.</summary>
    SameSale,
}

/// <summary>Finds lines that may be written down already. Each line that stands is taken for one such at most: of three equal sales, two of them
/// written, one is new.</summary>
public sealed class DuplicateFinder
{
    private readonly Dictionary<(Guid Edition, int Kind, DateOnly Day, string Channel, int Copies), int> sales = [];
    private readonly HashSet<(Guid Edition, int Kind, string Reference)> references = [];

    /// <summary>Learns of a line that stands.</summary>
    public void Add(NewMovement line)
    {
        var key = KeyOf(line);
        sales[key] = sales.GetValueOrDefault(key) + 1;
        AddReference(line);
    }

    /// <summary>Looks at the next line of a file; null where it is new. A reference that stands further up in the file counts too.</summary>
    public DuplicateReason? Look(NewMovement line)
    {
        var same = Take(line);
        var named = !AddReference(line);
        return named ? DuplicateReason.Reference : same ? DuplicateReason.SameSale : null;
    }

    /// <summary>Looks whether the next line of a file may be one of those that stand, whatever stands further up in the file.</summary>
    public bool Meets(NewMovement line) => Take(line) || (HasReference(line) && references.Contains(ReferenceOf(line)));

    private bool Take(NewMovement line)
    {
        var key = KeyOf(line);
        var same = sales.GetValueOrDefault(key);
        if (same > 0)
        {
            sales[key] = same - 1;
        }

        return same > 0;
    }

    private bool AddReference(NewMovement line) => !HasReference(line) || references.Add(ReferenceOf(line));

    // A note without a digit is a word, such as that of a market, and not the number of an order.
    private static bool HasReference(NewMovement line) => line.Note.Any(char.IsDigit);

    private static (Guid Edition, int Kind, string Reference) ReferenceOf(NewMovement line) => (line.EditionId, (int)line.Kind, line.Note.Trim());

    private static (Guid Edition, int Kind, DateOnly Day, string Channel, int Copies) KeyOf(NewMovement line) =>
        (line.EditionId, (int)line.Kind, line.Day, line.ChannelId ?? "", line.Copies);
}
