using PressRun.Data.Access;
using PressRun.Data.People;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.People;

/// <summary>Words that several pages about accounts use.</summary>
internal static class AccountWords
{
    /// <summary>What a password is to be.</summary>
    public static string PasswordHint =>
        Say($"At least {PasswordRules.Fewest} characters, of whatever kind; spaces count. Four or five words that do not belong together are easy to remember.");

    /// <summary>Said to somebody whose account is gone.</summary>
    public const string Deleted = "Deleted";

    /// <summary>The roles that somebody can be given, the least first.</summary>
    public static IReadOnlyList<PressRole> Roles { get; } = [PressRole.Reader, PressRole.Editor, PressRole.Owner];

    /// <summary>Said where something was asked on the page of another press; null where it was this one's. The press of a page is the one that was chosen last, in whatever
    /// tab: what was asked on the page of another is not done for this one.</summary>
    public static string? Elsewhere(PressView press, Guid asked) => asked == press.Record.Id.Value
        ? null
        : Say($"This was asked on the page of another press, and in another tab {press.Name} was chosen meanwhile: nothing was made. What stands here is of {press.Name}.");

    /// <summary>A role as people say it.</summary>
    public static string Of(PressRole role) => role switch
    {
        PressRole.Reader => Say($"reader"),
        PressRole.Editor => Say($"editor"),
        _ => Say($"owner"),
    };

    /// <summary>What a role may do.</summary>
    public static string May(PressRole role) => role switch
    {
        PressRole.Reader => Say($"sees everything and changes nothing"),
        PressRole.Editor => Say($"changes books, runs, libraries and the ledger"),
        _ => Say($"also looks after people and keys, and takes titles out"),
    };

    /// <summary>What became of a change to a press's people, as it stands in an address; null for nothing to say.</summary>
    public static string? Said(string? code) => code switch
    {
        nameof(PeopleResult.LastOwner) => Say($"This is the press's last owner: without one nobody could look after it. Make somebody else an owner first."),
        Deleted => Say($"Your account is deleted."),
        nameof(PeopleResult.Gone) => Say($"They are not among the press's people any more."),
        nameof(PeopleResult.NotYours) =>
            Say($"No code was made. Whoever gives one opens everything that this person has, so that an owner does not make them for everybody; whoever runs the server can make one for anybody."),
        _ => null,
    };
}
