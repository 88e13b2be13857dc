using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Imposing;

/// <summary>A page as it lies on one face of a sheet.</summary>
/// <param name="Page">Its number, from 1.</param>
/// <param name="Letter">Place that it lies in.</param>
/// <param name="Area">What is left of it in the finished book, on the picture of its face.</param>
/// <param name="Bleed">As far as its art runs where the edition bleeds: the trims around it, and not beyond the fold.</param>
/// <param name="Shift">How far its art moves towards the spine because of creep.</param>
/// <param name="QuarterTurns">Where its head points: clockwise quarter turns from upwards, 0 to 3.</param>
/// <param name="SpineLeft">True where the spine is at its left when its head is up.</param>
public sealed record PlacedPage(int Page, string Letter, Box Area, Box Bleed, Length Shift, int QuarterTurns, bool SpineLeft);

/// <summary>One face of a sheet.</summary>
/// <param name="Ink">What it is printed with.</param>
/// <param name="Pages">Its pages, also where they are unprinted.</param>
/// <param name="Folds">Where the pieces will be folded.</param>
/// <param name="Trims">Where the finished book will be cut, on each piece.</param>
/// <param name="Places">The pieces, as they lie on this face.</param>
public sealed record SheetFace(
    Ink Ink, IReadOnlyList<PlacedPage> Pages, IReadOnlyList<Line> Folds, IReadOnlyList<Line> Trims, IReadOnlyList<(string Letter, Box Box)> Places);

/// <summary>A stack that a cut sheet falls into.</summary>
/// <param name="Place">Where it lay.</param>
/// <param name="Pile">Number of the pile it goes to, which is the piece's number in the book from 1; null where the place stays blank and falls away.</param>
public sealed record Stack(Place Place, int? Pile);

/// <summary>A sheet as it is printed, as often as the run needs it.</summary>
/// <param name="Number">Over all parts, from 1.</param>
/// <param name="PartName">The part.</param>
/// <param name="PartIndex">Its place in the book from the outside in, from 0.</param>
/// <param name="Sheet">The sheet's size.</param>
/// <param name="Layout">Step and repeat where all places carry the same piece, else cut and stack.</param>
/// <param name="Prints">How many are printed.</param>
/// <param name="Front">The side with the outer faces.</param>
/// <param name="Back">The side with the inner faces, for a sheet turned over about <paramref name="Turn"/>.</param>
/// <param name="Turn">The edge that runs along the spines: turned about it, front and back stand head to head.</param>
/// <param name="Stacks">Where each place goes.</param>
public sealed record ImposedSheet(
    int Number,
    string PartName,
    int PartIndex,
    Sheet Sheet,
    Layout Layout,
    long Prints,
    SheetFace Front,
    SheetFace Back,
    TurnEdge Turn,
    IReadOnlyList<Stack> Stacks)
{
    /// <summary>Which half of the run it is printed for, 1 or 2, where each has the part on a stock of its own; null where it is for all copies.</summary>
    public int? Half { get; init; }

    /// <summary>What it is printed on, where the halves of the run are on stocks of their own; null where the part has one.</summary>
    public string? HalfOn { get; init; }

    /// <summary>True where both sides carry printed pages, so that it matters how the sheet is turned over.</summary>
    public bool IsTwoSided => Front.Ink != Ink.None && Back.Ink != Ink.None && Back.Pages.Count > 0;
}
