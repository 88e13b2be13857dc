namespace PressRun.Engine.Editions;

/// <summary>How many pages a book has, and how many of them are its cover.</summary>
/// <param name="All">Pages of all parts.</param>
/// <param name="OfCover">Of them, pages of the cover; 0 where the book has none.</param>
public readonly record struct PageCount(int All, int OfCover)
{
    /// <summary>Counts the pages of a book.</summary>
    /// <param name="binding">The edition's binding.</param>
    /// <param name="parts">From the outside in.</param>
    public static PageCount Of(Binding binding, IReadOnlyList<Part> parts) =>
        new(parts.Sum(part => part.Pages), CoverOf(binding, parts) is { } cover ? parts[cover].Pages : 0);

    /// <summary>Place of the part that is the cover: the first of several that are bound, where it has the four pages of one folded piece
    /// (common practice). Null where there is none.</summary>
    /// <param name="binding">The edition's binding.</param>
    /// <param name="parts">From the outside in.</param>
    public static int? CoverOf(Binding binding, IReadOnlyList<Part> parts) =>
        binding != Binding.Loose && parts.Count > 1 && parts[0].Pages == BindingRules.PerfectCoverPages ? 0 : null;
}
