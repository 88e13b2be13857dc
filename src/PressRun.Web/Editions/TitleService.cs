using PressRun.Data;
using PressRun.Data.Presses;
using PressRun.Data.Titles;

namespace PressRun.Web.Editions;

/// <summary>What became of a change of a title.</summary>
/// <param name="Now">The title as it stands now; null where nothing is known of it any more.</param>
/// <param name="Problem">What stands in the way, as a sentence; null where it is saved.</param>
public sealed record TitleSave(TitleRecord? Now, string? Problem);

/// <summary>Renames titles, takes them off the shelf, and takes out what was a mistake.</summary>
public sealed class TitleService(TitleStore titles, EditionStore editions)
{
    private const string SavedInBetween = "Somebody saved this in between, so it stays. Look at it again, and then take it out.";

    /// <summary>Saves a title.</summary>
    public async Task<TitleSave> SaveAsync(PressId press, TitleRecord title) => await titles.SaveAsync(press, title) switch
    {
        SaveResult<TitleRecord>.Saved saved => new TitleSave(saved.Now, null),
        SaveResult<TitleRecord>.Conflict conflict => new TitleSave(
            conflict.Theirs, "Somebody else changed this title in between; it is shown as it stands now. Change it once more to save yours over it."),
        SaveResult<TitleRecord>.Refused refused => new TitleSave(null, string.Join(" ", refused.Problems.Select(problem => problem.Rule))),
        _ => new TitleSave(null, "This title has been taken out in between."),
    };

    /// <summary>Takes out a title with all its printings. Null where it is gone, otherwise what stands in the way.</summary>
    public async Task<string?> RemoveAsync(PressId press, TitleRecord title) => Told(await titles.DeleteAsync(press, title), "the title");

    /// <summary>Takes out a printing. Null where it is gone, otherwise what stands in the way.</summary>
    public async Task<string?> RemoveAsync(PressId press, EditionRecord edition) => Told(await editions.DeleteAsync(press, edition), "the printing");

    private static string? Told(DeleteResult result, string what) => result switch
    {
        DeleteResult.InUse use => $"Copies of it are written down ({string.Join("; ", use.Where)}), so its figures are kept. Take {(what == "the title" ? "it" : "the title")} off the shelf instead.",
        DeleteResult.Changed => SavedInBetween,
        _ => null,
    };
}
