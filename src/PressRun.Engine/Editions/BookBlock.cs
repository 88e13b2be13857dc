using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

namespace PressRun.Engine.Editions;

/// <summary>A part as the pieces that one copy takes of it.</summary>
/// <param name="Part">The part.</param>
/// <param name="Stock">Its paper.</param>
/// <param name="Count">Pieces of one copy: folded sheets, leaves or covers.</param>
/// <param name="Leaves">Leaves of one copy (a folded sheet and a perfect cover have two).</param>
/// <param name="Piece">Size of a piece before trimming.</param>
/// <param name="PaperMass">Mass of its paper in one trimmed copy.</param>
public sealed record PartPieces(Part Part, Stock Stock, int Count, int Leaves, Size Piece, Mass PaperMass)
{
    /// <summary>Mass of its untrimmed pieces in one copy.</summary>
    public Mass UntrimmedMass => Count * Grams.Of(Piece, Stock.Weight);
}

/// <summary>The mass of a flat piece of paper.</summary>
public static class Grams
{
    private const decimal SquareMillimetresPerSquareMetre = 1_000_000m;

    /// <summary>Area × grammage (definition of grammage, ISO 536).</summary>
    /// <param name="size">Of the piece, lying flat.</param>
    /// <param name="weight">Of its paper.</param>
    public static Mass Of(Size size, PaperWeight weight) =>
        Mass.FromGrams(size.Width.Millimetres * size.Height.Millimetres * weight.GramsPerSquareMetre / SquareMillimetresPerSquareMetre);
}

/// <summary>An edition as an object: pieces, spine, mass, thickness and creep of one copy.</summary>
public sealed class BookBlock
{
    // π to 28 digits: a rounded fold takes half a circle of the sheet's thickness, π/2 for each side of the fold.
    private const decimal HalfPi = 1.5707963267948966192313216916m;

    private BookBlock(Edition edition, IReadOnlyList<PartPieces> parts, Length spine)
    {
        Edition = edition;
        Parts = parts;
        Spine = spine;
        PiecesPerCopy = parts.Sum(part => part.Count);
        UntrimmedMass = Sum(parts, part => part.UntrimmedMass);
        PaperMass = Sum(parts, part => part.PaperMass);
        Thickness = parts.Aggregate(Length.Zero, (sum, part) => sum + (part.Leaves * part.Stock.Caliper));
        Creep = edition.Binding == Binding.Saddle ? PushOut(PiecesPerCopy - 1) : Length.Zero;
    }

    /// <summary>The edition.</summary>
    public Edition Edition { get; }

    /// <summary>From the outside in.</summary>
    public IReadOnlyList<PartPieces> Parts { get; }

    /// <summary>What a perfect cover wraps: inside leaves × their calipers; zero for other bindings.</summary>
    public Length Spine { get; }

    /// <summary>Pieces of all parts in one copy.</summary>
    public int PiecesPerCopy { get; }

    /// <summary>Mass of the untrimmed pieces of one copy.</summary>
    public Mass UntrimmedMass { get; }

    /// <summary>Mass of the paper of one trimmed copy, without fittings.</summary>
    public Mass PaperMass { get; }

    /// <summary>Leaves × calipers of all parts.</summary>
    public Length Thickness { get; }

    /// <summary>How far the innermost leaf of a nested book stands out before trimming: calipers of all sheets but the innermost × fold factor.</summary>
    public Length Creep { get; }

    /// <summary>Calipers multiply by this at a fold: 1 flat, π/2 rounded.</summary>
    public decimal FoldFactor => Edition.Fold == FoldShape.Rounded ? HalfPi : 1m;

    /// <summary>Works out the pieces of an edition whose page counts suit its binding.</summary>
    /// <param name="edition">The edition.</param>
    /// <param name="papers">Stocks by id.</param>
    public static BookBlock Of(Edition edition, IReadOnlyDictionary<string, Stock> papers)
    {
        var stocks = edition.Parts.Select(part => papers[part.StockId]).ToList();
        var spine = SpineOf(edition, stocks);
        var parts = edition.Parts.Select((part, index) => Pieces(edition, part, stocks[index], index, spine)).ToList();
        return new BookBlock(edition, parts, spine);
    }

    /// <summary>Calipers of the <paramref name="sheetsOutside"/> outermost nested sheets × fold factor.</summary>
    public Length PushOut(int sheetsOutside)
    {
        var calipers = Length.Zero;
        foreach (var part in Parts)
        {
            var taken = Math.Min(part.Count, sheetsOutside);
            calipers += taken * part.Stock.Caliper;
            sheetsOutside -= taken;
        }

        return calipers * FoldFactor;
    }

    private static Length SpineOf(Edition edition, List<Stock> stocks)
    {
        var spine = Length.Zero;
        if (edition.Binding == Binding.Perfect)
        {
            for (var index = 1; index < edition.Parts.Count; index++)
            {
                spine += edition.Parts[index].Pages / 2 * stocks[index].Caliper;
            }
        }

        return spine;
    }

    private static PartPieces Pieces(Edition edition, Part part, Stock stock, int index, Length spine)
    {
        var (page, trim) = (edition.Page, edition.Trim);
        var height = page.Height + trim.Head + trim.Foot;
        var leaf = page.Width + trim.ForeEdge + trim.Spine;
        var (count, leaves, width, finishedWidth) = edition.Binding switch
        {
            Binding.Saddle => (part.Pages / 4, part.Pages / 2, 2m * (page.Width + trim.ForeEdge), 2m * page.Width),
            Binding.Perfect when index == 0 => (1, 2, (2m * (page.Width + trim.ForeEdge)) + spine, (2m * page.Width) + spine),
            Binding.Loose => Leaves(part.Inside == Ink.None ? part.Pages : (part.Pages + 1) / 2),
            _ => Leaves(part.Pages / 2),
        };
        return new PartPieces(part, stock, count, leaves, new Size(width, height), count * Grams.Of(new Size(finishedWidth, page.Height), stock.Weight));

        (int, int, Length, Length) Leaves(int leaves) => (leaves, leaves, leaf, page.Width);
    }

    private static Mass Sum(IEnumerable<PartPieces> parts, Func<PartPieces, Mass> mass) => parts.Aggregate(Mass.Zero, (sum, part) => sum + mass(part));
}
