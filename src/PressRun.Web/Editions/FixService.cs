using PressRun.Data;
using PressRun.Data.Fixes;
using PressRun.Data.Presses;
using PressRun.Web.Shared;

namespace PressRun.Web.Editions;

/// <summary>Keeps the list of what is to be mended for its page. Answers null where it is done, else what stands in the way.</summary>
public sealed class FixService(FixNoteStore fixes)
{
    /// <summary>The notes of all printings of a title.</summary>
    public Task<IReadOnlyList<FixNote>> OfTitleAsync(PressId press, Guid title) => fixes.OfTitleAsync(press, title);

    /// <summary>Writes a note down, and answers it as it stands.</summary>
    public async Task<(FixNote? Now, string? Problem)> AddAsync(PressId press, FixNote note)
    {
        var saved = await fixes.AddAsync(press, note);
        return ((saved as SaveResult<FixNote>.Saved)?.Now, Told(saved));
    }

    /// <summary>Saves a note over what stands there now: there are too few words in one to weigh two versions.</summary>
    /// <param name="press">Whose note.</param>
    /// <param name="note">The note as it was read.</param>
    /// <param name="change">What becomes of it.</param>
    public async Task<string?> ChangeAsync(PressId press, FixNote note, Func<FixNote, FixNote> change)
    {
        var saved = await fixes.SaveAsync(press, change(note));
        return Told(saved is SaveResult<FixNote>.Conflict { Theirs: var theirs } ? await fixes.SaveAsync(press, change(theirs)) : saved);
    }

    /// <summary>Has a note stand as it stood before a change, unless somebody settled it otherwise since.</summary>
    /// <param name="press">Whose note.</param>
    /// <param name="before">The note as it stood.</param>
    /// <param name="after">What the change made of it.</param>
    public async Task<string?> TakeBackAsync(PressId press, FixNote before, FixNote after)
    {
        var saved = await fixes.SaveAsync(press, before);
        return saved is not SaveResult<FixNote>.Conflict { Theirs: var now } ? Told(saved)
            : (now.MendedIn, now.CarriedPast) == (after.MendedIn, after.CarriedPast) ? Told(await fixes.SaveAsync(press, before with { Version = now.Version }))
            : ChangedSince();
    }

    /// <summary>Takes a note out, unless somebody settled it otherwise since it was read.</summary>
    public async Task<string?> TakeOutAsync(PressId press, FixNote note) => await fixes.DeleteAsync(press, note) is DeleteResult.Changed ? ChangedSince() : null;

    private static string ChangedSince() => Say($"This was changed since, so it stays as it is.");

    private static string? Told(SaveResult<FixNote> result) => result switch
    {
        SaveResult<FixNote>.Saved => null,
        SaveResult<FixNote>.Refused refused => Words.Standing(refused.Problems),
        SaveResult<FixNote>.Conflict => Say($"Somebody else changes this at the same moment. Try once more."),
        _ => Say($"This has been taken out in between."),
    };
}
