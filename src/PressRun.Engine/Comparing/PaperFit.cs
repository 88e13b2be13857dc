using PressRun.Engine.Editions;
using PressRun.Engine.Paper;

namespace PressRun.Engine.Comparing;

/// <summary>Which papers suit a part, so that they are tried on it unasked. Any paper can be tried on any part when it is asked for.</summary>
public static class PaperFit
{
    // In g/m² (common practice): what is folded inside a book weighs up to the one, what covers it from the other on; some papers serve for both.
    private const decimal MostInside = 170m;
    private const decimal LeastOfCover = 150m;

    /// <summary>True where a paper is as heavy as such a part usually is. A book without a cover, or of loose leaves, may be of anything.</summary>
    /// <param name="binding">How the book is bound.</param>
    /// <param name="parts">Its parts.</param>
    /// <param name="place">Place of the part, from 0.</param>
    /// <param name="stock">The paper.</param>
    public static bool Suits(Binding binding, IReadOnlyList<Part> parts, int place, Stock stock)
    {
        var grammage = stock.Weight.GramsPerSquareMetre;
        return PageCount.CoverOf(binding, parts) is not { } cover || (place == cover ? grammage >= LeastOfCover : grammage <= MostInside);
    }
}
