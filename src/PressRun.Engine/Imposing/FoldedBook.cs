namespace PressRun.Engine.Imposing;

/// <summary>A side of a leaf as the reader of a finished copy meets it.</summary>
/// <param name="Page">The page that lies there; null where nothing does.</param>
/// <param name="QuarterTurns">Where its head points: clockwise quarter turns from upwards; 2 stands on its head.</param>
/// <param name="PartIndex">The part of the leaf, from the outside in, from 0.</param>
/// <param name="Piece">The piece, from 1.</param>
public sealed record ReadSide(int? Page, int QuarterTurns, int PartIndex, int Piece)
{
    /// <summary>True where nothing lies there or its head is up.</summary>
    public bool IsUpright => Page is null || QuarterTurns == 0;
}

/// <summary>A copy read from its first side to its last.</summary>
/// <param name="Sides">In the order of reading, blank sides too.</param>
/// <param name="Pages">Pages that the book should have.</param>
public sealed record FoldedBook(IReadOnlyList<ReadSide> Sides, int Pages)
{
    /// <summary>True where every page from 1 on stands in its order, once and upright.</summary>
    public bool IsRight => Sides.All(side => side.IsUpright) && Sides.Where(side => side.Page is not null).Select(side => side.Page!.Value).SequenceEqual(Enumerable.Range(1, Pages));

    /// <summary>Pages that do not stand upright, in the order of reading.</summary>
    public IReadOnlyList<int> NotUpright => [.. Sides.Where(side => !side.IsUpright).Select(side => side.Page!.Value)];
}

/// <summary>How the shop must turn the sheets of a part over.</summary>
/// <param name="PartName">The part.</param>
/// <param name="PartIndex">Its place in the book, from 0.</param>
/// <param name="Ask">The edge to turn about; null where only one side is printed and it does not matter.</param>
/// <param name="UpsideDown">Pages that would stand on their heads at the other setting, by number.</param>
public sealed record TurnAdvice(string PartName, int PartIndex, TurnEdge? Ask, IReadOnlyList<int> UpsideDown);
