namespace PressRun.Data.Titles;

/// <summary>A title: what stays the same from printing to printing.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Slug">Its name in addresses, unique in the press; the store gives it and never changes it.</param>
/// <param name="Title">The title.</param>
/// <param name="By">Who made it.</param>
/// <param name="Colour">Cover colour as <c>#rrggbb</c>.</param>
/// <param name="About">One sentence.</param>
/// <param name="Archived">True where it no longer stands on the shelf.</param>
/// <param name="Version">Row version that a save must carry.</param>
public sealed record TitleRecord(Guid Id, string Slug, string Title, string By, string Colour, string About, bool Archived, uint Version);

/// <summary>What a new title needs.</summary>
/// <param name="Title">The title.</param>
/// <param name="By">Who made it.</param>
/// <param name="Colour">Cover colour as <c>#rrggbb</c>.</param>
/// <param name="About">One sentence.</param>
public sealed record NewTitle(string Title, string By, string Colour, string About);
