using PressRun.Data;
using PressRun.Data.Presses;
using PressRun.Data.Titles;
using PressRun.Web.Shared;

namespace PressRun.Web.Editions;

/// <summary>What became of a change of a title.</summary>
/// <param name="Now">The title as it stands now; null where nothing is known of it any more.</param>
/// <param name="Problem">What stands in the way, as a sentence; null where it is saved.</param>
public sealed record TitleSave(TitleRecord? Now, string? Problem);

/// <summary>Renames titles, takes them off the shelf, and takes out what was a mistake.</summary>
public sealed class TitleService(TitleStore titles, EditionStore editions)
{
    /// <summary>Saves a title.</summary>
    public async Task<TitleSave> SaveAsync(PressId press, TitleRecord title) => await titles.SaveAsync(press, title) switch
    {
        SaveResult<TitleRecord>.Saved saved => new TitleSave(saved.Now, null),
        SaveResult<TitleRecord>.Conflict conflict => new TitleSave(
            conflict.Theirs, Say($"Somebody else changed this title in between; it is shown as it stands now. Change it once more to save yours over it.")),
        SaveResult<TitleRecord>.Refused refused => new TitleSave(null, Words.Standing(refused.Problems)),
        _ => new TitleSave(null, Say($"This title has been taken out in between.")),
    };

    /// <summary>Takes out a title with all its printings. Null where it is gone, otherwise what stands in the way.</summary>
    public async Task<string?> RemoveAsync(PressId press, TitleRecord title) =>
        Told(await titles.DeleteAsync(press, title), where => Say($"Copies of it are written down ({where}), so its figures are kept. Take it off the shelf instead."));

    /// <summary>Takes out a printing. Null where it is gone, otherwise what stands in the way.</summary>
    public async Task<string?> RemoveAsync(PressId press, EditionRecord edition) =>
        Told(await editions.DeleteAsync(press, edition), where => Say($"Copies of it are written down ({where}), so its figures are kept. Take the title off the shelf instead."));

    private static string? Told(DeleteResult result, Func<string, string> inUse) => result switch
    {
        DeleteResult.InUse use => inUse(string.Join("; ", use.Where.Select(SayWhole))),
        DeleteResult.Changed => Say($"Somebody saved this in between, so it stays. Look at it again, and then take it out."),
        _ => null,
    };
}
