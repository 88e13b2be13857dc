using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.Data.Titles;

/// <summary>A part of a stored edition.</summary>
/// <param name="Id">Stays the same when the part is renamed or moved; empty for a part that was just added.</param>
/// <param name="Part">The part as the engine knows it; its stock is one of the press's stocks.</param>
public sealed record EditionPart(Guid Id, Part Part);

/// <summary>A printing of a title as it is stored, whole: saving it saves all of it.</summary>
/// <param name="Id">Its id; empty for a new one.</param>
/// <param name="TitleId">Its title.</param>
/// <param name="Title">The title's words; a save does not change them.</param>
/// <param name="Printing">First is 1; unique in its title.</param>
/// <param name="PrintedOn">Day of printing; null while it is being planned. This and the copies are the ledger's: a save does not change them.</param>
/// <param name="CopiesPrinted">Copies that were printed; null while it is being planned.</param>
/// <param name="CopiesOnHand">Copies left.</param>
/// <param name="Price">Price of a copy, in the press's currency, on every channel.</param>
/// <param name="FreeCopies">Copies given away.</param>
/// <param name="Page">Finished page size.</param>
/// <param name="Binding">How it is bound.</param>
/// <param name="Bleed">True where the art runs over the edge.</param>
/// <param name="Trim">What is cut off at each edge.</param>
/// <param name="Fold">Shape of a nested fold.</param>
/// <param name="Weighed">Scale and gauge; null where neither was used.</param>
/// <param name="Parts">From the outside in.</param>
/// <param name="FixedCosts">Costs that do not grow with the quantity.</param>
/// <param name="Archived">True where it no longer stands on the shelf.</param>
/// <param name="CountNeeded">True where more copies went than were known of; a save does not change it.</param>
/// <param name="Version">Row version that a save must carry; it moves with any change to any part.</param>
public sealed record EditionRecord(
    Guid Id,
    Guid TitleId,
    string Title,
    int Printing,
    DateOnly? PrintedOn,
    int? CopiesPrinted,
    long CopiesOnHand,
    decimal Price,
    int FreeCopies,
    Size Page,
    Binding Binding,
    bool Bleed,
    Trim Trim,
    FoldShape Fold,
    Weighed? Weighed,
    IReadOnlyList<EditionPart> Parts,
    IReadOnlyList<FixedCost> FixedCosts,
    bool Archived,
    bool CountNeeded,
    uint Version)
{
    /// <summary>The edition as the engine knows it.</summary>
    public Edition ToEdition() =>
        new(Title, Printing, Page, Binding, Bleed, Trim, [.. Parts.Select(part => part.Part)], Fold, Weighed, FixedCosts);
}
