namespace PressRun.Data.Fixes;

/// <summary>Something to mend at the next printing, noticed while one printing was bound or sold.</summary>
/// <param name="Id">Given by whoever writes it down, once: sent again it is not written again.</param>
/// <param name="EditionId">The printing in which it was noticed.</param>
/// <param name="Printing">Its number; a save does not change it.</param>
/// <param name="NoticedOn">When it was written down; given by the store.</param>
/// <param name="Text">What is to be mended, 1 to <see cref="FixNoteStore.MostText"/> characters on one line.</param>
/// <param name="Page">On which page, 1 or more; null where it is on none.</param>
/// <param name="MendedIn">The later printing in which it is mended; null where it waits.</param>
/// <param name="CarriedPast">The latest printing that goes without it, on purpose; 0 for none.</param>
/// <param name="Version">Row version that a save must carry; 0 for a new one.</param>
public sealed record FixNote(
    Guid Id, Guid EditionId, int Printing, DateOnly NoticedOn, string Text, int? Page, int? MendedIn, int CarriedPast, uint Version)
{
    /// <summary>A note of a printing that nobody has written down yet.</summary>
    public static FixNote Noticed(Guid editionId, string text, int? page) => new(Guid.CreateVersion7(), editionId, 0, default, text, page, null, 0, 0);

    /// <summary>True where somebody still has to say at this printing whether it is mended.</summary>
    public bool WaitsAt(int printing) => Printing < printing && MendedIn is null && CarriedPast < printing;
}
