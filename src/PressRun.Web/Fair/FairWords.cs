using PressRun.Web.Kept;

namespace PressRun.Web.Fair;

/// <summary>Words of the fair's page that its script fills.</summary>
public static class FairWords
{
    private const string Title = "{title}";
    private const string Money = "{money}";
    private const string What = "{what}";

    /// <summary>All that the script says.</summary>
    public static Dictionary<string, object> OfScript() => new(KeptWords.OfQueue(), StringComparer.Ordinal)
    {
        ["allIn"] = Say($"All of it is in the ledger."),
        ["underWay"] = KeptWords.Turning($"{KeptWords.Number} entry is under way to the ledger.", $"{KeptWords.Number} entries are under way to the ledger."),
        ["arrived"] = Say("state of an entry", $"in the ledger"),
        ["copies"] = new[] { Say("after a number", $"copy"), Say("after a number", $"copies") },
        ["sold"] = Say($"{KeptWords.Number} sold"),
        ["writtenDown"] = Say($"{Title}, {Money}: written down."),
        ["takenBack"] = Say($"{Title}, {Money}: taken back."),
        ["clockOff"] = Say($"The clock of this phone is wrong, so the day is the server's."),
        ["undoThat"] = Say($"Undo {What}"),
    };
}
