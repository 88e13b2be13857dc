using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Kept;

/// <summary>What the scripts of kept pages say, told by the page: texts by name, with named gaps that the script fills (<c>js/words.js</c>). Of two texts the first is
/// for one, the second for any other number.</summary>
public static class KeptWords
{
    /// <summary>Gap of the number by which the words turn.</summary>
    public const string Number = "{number}";

    private const string Status = "{status}";
    private const string State = "{state}";

    /// <summary>The language in which days are written out: that of the words, and with the day before the month.</summary>
    public static string DayLanguage => Texts.Language.Equals(Translation.Own) ? "en-GB" : Texts.Language.Name;

    /// <summary>A text for one, and one for any other number.</summary>
    public static string[] Turning(FormattableString one, FormattableString other) => [Say(one), Say(other)];

    /// <summary>What comes back where a message is not taken.</summary>
    public static Dictionary<string, object> OfMessages() => new(StringComparer.Ordinal)
    {
        ["signIn"] = Say($"The server asks you to sign in again: open the shelf, sign in and come back. All is kept here."),
        ["onlyRead"] = Say($"You may read this press and write nothing down. All is kept here."),
        ["noneTaken"] = Say($"The server does not take them ({Status}). All is kept here."),
    };

    /// <summary>What a page says that keeps what is written on it: of its queue, of the list of what was written, and of itself.</summary>
    public static Dictionary<string, object> OfQueue() => new(OfMessages(), StringComparer.Ordinal)
    {
        ["full"] = Say($"This browser keeps nothing more. The last entry was not written down: write it on paper."),
        ["nothingWaits"] = Say($"Nothing waits."),
        ["someNotTaken"] = Turning($"{Number} was not taken: see below what was written here.", $"{Number} were not taken: see below what was written here."),
        ["triedAgain"] = Turning($"{Number} entry is kept here, tried again by itself.", $"{Number} entries are kept here, tried again by themselves."),
        ["keptHere"] = Turning($"{Number} entry is kept here until there is a connection.", $"{Number} entries are kept here until there is a connection."),
        ["waits"] = Say("state of an entry", $"waits"),
        ["refused"] = Say("state of an entry", $"not taken"),
        ["takenBackAnd"] = Say("state of an entry", $"taken back, {State}"),
        ["takeOff"] = Say($"Take off the list"),
        ["takeBack"] = Say($"Take back"),
        ["leaveOpen"] = Say($"Leave it open: this browser opens it again only with a connection."),
        ["opensHere"] = Say($"This page opens on this phone without a connection."),
        ["undo"] = Say($"Undo"),
    };
}
