using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

namespace PressRun.Engine.Editions;

/// <summary>How the leaves are held together.</summary>
public enum Binding
{
    /// <summary>Folded sheets, nested, stapled through the fold: 4 pages a piece, each part a multiple of 4.</summary>
    Saddle,

    /// <summary>Flat leaves stapled at the side: 2 pages a piece.</summary>
    Side,

    /// <summary>Leaves glued at the spine inside one wrap-round cover of 4 pages, which is the first part.</summary>
    Perfect,

    /// <summary>Prints and cards, not bound: 1 page a leaf where the inside is unprinted, otherwise 2.</summary>
    Loose,
}

/// <summary>How tightly folded sheets lie in one another.</summary>
public enum FoldShape
{
    /// <summary>A flat fold: each sheet pushes the next out by its caliper (factor 1).</summary>
    Flat,

    /// <summary>A rounded fold: by π/2 times its caliper.</summary>
    Rounded,
}

/// <summary>What is printed on one side of a part.</summary>
public enum Ink
{
    /// <summary>Unprinted, free of charge.</summary>
    None,

    /// <summary>Black only.</summary>
    Black,

    /// <summary>Colour.</summary>
    Colour,
}

/// <summary>A width and a height.</summary>
/// <param name="Width">Across.</param>
/// <param name="Height">Along the spine.</param>
public readonly record struct Size(Length Width, Length Height);

/// <summary>What is cut off after (spine: before) binding at each edge of a page; zero is an edge that is not cut.</summary>
/// <param name="Head">At the top.</param>
/// <param name="Foot">At the bottom.</param>
/// <param name="ForeEdge">Opposite the spine.</param>
/// <param name="Spine">At the spine, of leaves only, before binding.</param>
public readonly record struct Trim(Length Head, Length Foot, Length ForeEdge, Length Spine)
{
    /// <summary>How many edges are cut, 0 to 4.</summary>
    public int EdgeCount => Count(Head) + Count(Foot) + Count(ForeEdge) + Count(Spine);

    private static int Count(Length trim) => trim > Length.Zero ? 1 : 0;
}

/// <summary>The leaves that share one stock and one kind of ink: cover, inside, centrefold.</summary>
/// <param name="Name">What the maker calls it.</param>
/// <param name="Pages">Pages, 1 to 10,000 over all parts.</param>
/// <param name="StockId">Id of its paper.</param>
/// <param name="Outside">Ink of the outer face.</param>
/// <param name="Inside">Ink of the inner face.</param>
/// <param name="SheetId">The shop's sheet that must be used; null where the cheapest is taken.</param>
public sealed record Part(string Name, int Pages, string StockId, Ink Outside, Ink Inside, string? SheetId = null);

/// <summary>What a finished copy said on the scale and the gauge, in place of what is reckoned.</summary>
/// <param name="Mass">Mass of one copy; null where not weighed.</param>
/// <param name="Thickness">Thickness of one copy; null where not gauged.</param>
public sealed record Weighed(Mass? Mass, Length? Thickness)
{
    /// <summary>What the scale and the gauge would say of a changed book: as much more or less as the reckoned figures differ, never below 0.</summary>
    /// <param name="was">The book that was weighed, as reckoned.</param>
    /// <param name="now">The changed book, as reckoned.</param>
    internal Weighed Changed(BookBlock was, BookBlock now) => new(
        Mass is { } mass ? Measures.Mass.FromGrams(Math.Max(0m, (mass - was.PaperMass + now.PaperMass).Grams)) : null,
        Thickness is { } thick ? Length.FromMillimetres(Math.Max(0m, (thick - was.Thickness + now.Thickness).Millimetres)) : null);
}

/// <summary>A cost of this edition alone, whatever the quantity: art, proof, ISBN.</summary>
/// <param name="Name">What it is for.</param>
/// <param name="Amount">In the job's currency.</param>
public sealed record FixedCost(string Name, decimal Amount);

/// <summary>One printing of a title: the book as an object.</summary>
/// <param name="Title">The title; may be empty.</param>
/// <param name="Printing">First is 1.</param>
/// <param name="Page">Finished page size.</param>
/// <param name="Binding">How it is bound.</param>
/// <param name="Bleed">True where the art runs over the edge, so that pieces must keep off the sheet's unprintable margin.</param>
/// <param name="Trim">What is cut off at each edge.</param>
/// <param name="Parts">From the outside in; at least one.</param>
/// <param name="Fold">Shape of a nested fold.</param>
/// <param name="Weighed">Scale and gauge; null where neither was used.</param>
/// <param name="FixedCosts">Costs that do not grow with the quantity.</param>
public sealed record Edition(
    string Title,
    int Printing,
    Size Page,
    Binding Binding,
    bool Bleed,
    Trim Trim,
    IReadOnlyList<Part> Parts,
    FoldShape Fold,
    Weighed? Weighed,
    IReadOnlyList<FixedCost> FixedCosts)
{
    /// <summary>The same book with its parts on other stocks. What the scale and the gauge said of it is said of the changed book by as much more or
    /// less as the two are reckoned to differ; where a stock is not known, so that nothing can be reckoned, it is left out.</summary>
    /// <param name="stockIds">Id of each part's stock, in the order of the parts.</param>
    /// <param name="papers">Where the stocks are looked up.</param>
    public Edition OnStocks(IReadOnlyList<string> stockIds, IReadOnlyList<Stock> papers)
    {
        if (Parts.Select(part => part.StockId).SequenceEqual(stockIds, StringComparer.Ordinal))
        {
            return this;
        }

        var changed = this with { Parts = [.. Parts.Select((part, place) => part with { StockId = stockIds[place] })] };
        if (Weighed is null)
        {
            return changed;
        }

        var known = papers.DistinctBy(stock => stock.Id).ToDictionary(stock => stock.Id, StringComparer.Ordinal);
        return changed with
        {
            Weighed = Parts.Concat(changed.Parts).All(part => known.ContainsKey(part.StockId))
                ? Weighed.Changed(BookBlock.Of(this, known), BookBlock.Of(changed, known))
                : null,
        };
    }
}
