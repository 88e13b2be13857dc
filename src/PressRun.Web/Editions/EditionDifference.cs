using PressRun.Data.Titles;
using PressRun.Engine.Editions;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Editions;

/// <summary>A field in which two versions of an edition differ.</summary>
/// <param name="What">The field.</param>
/// <param name="First">What the first says.</param>
/// <param name="Second">What the second says.</param>
public sealed record EditionDifference(string What, string First, string Second)
{
    private static readonly string[] OfStock = ["Copies on hand", "Copies printed", "Printed on"];

    /// <summary>Every field of the book and its sale in which two printings differ; how many copies there are of each is no change of the book.</summary>
    /// <param name="first">One printing.</param>
    /// <param name="second">The other.</param>
    /// <param name="stockName">Name of a stock's id.</param>
    /// <param name="format">How figures are written.</param>
    public static IReadOnlyList<EditionDifference> OfBook(EditionRecord first, EditionRecord second, Func<string, string> stockName, PressFormat format) =>
        [.. Of(first, second, stockName, format).Where(difference => !OfStock.Contains(difference.What))];

    /// <summary>True where both say the same, whatever their row versions.</summary>
    public static bool None(EditionRecord first, EditionRecord second) =>
        first with { Parts = second.Parts, FixedCosts = second.FixedCosts, Version = second.Version } == second
        && first.Parts.SequenceEqual(second.Parts)
        && first.FixedCosts.SequenceEqual(second.FixedCosts);

    /// <summary>Every field in which two versions differ.</summary>
    /// <param name="first">One version.</param>
    /// <param name="second">The other.</param>
    /// <param name="stockName">Name of a stock's id.</param>
    /// <param name="format">How figures are written.</param>
    public static IReadOnlyList<EditionDifference> Of(EditionRecord first, EditionRecord second, Func<string, string> stockName, PressFormat format)
    {
        var differences = new List<EditionDifference>();
        void Compare(string what, Func<EditionRecord, string> words)
        {
            if (words(first) is var one && words(second) is var two && one != two)
            {
                differences.Add(new EditionDifference(what, one, two));
            }
        }

        Compare("Page", edition => format.Size(edition.Page));
        Compare("Binding", edition => Words.Of(edition.Binding));
        Compare("Bleed", edition => edition.Bleed ? "runs over the edge" : "stops short of the edge");
        Compare("Trim at head", edition => format.Length(edition.Trim.Head).ToString());
        Compare("Trim at foot", edition => format.Length(edition.Trim.Foot).ToString());
        Compare("Trim at fore-edge", edition => format.Length(edition.Trim.ForeEdge).ToString());
        Compare("Trim at spine", edition => format.Length(edition.Trim.Spine).ToString());
        Compare("Fold", edition => edition.Fold == FoldShape.Flat ? "flat" : "rounded");
        Compare("Weighed", edition => edition.Weighed?.Mass is { } mass ? format.Mass(mass).ToString() : "not weighed");
        Compare("Gauged", edition => edition.Weighed?.Thickness is { } thickness ? format.Thickness(thickness).ToString() : "not gauged");
        Compare("Price", edition => format.Money(edition.Price));
        Compare("Given away", edition => format.Count(edition.FreeCopies));
        Compare("Copies on hand", edition => format.Count(edition.CopiesOnHand));
        Compare("Copies printed", edition => edition.CopiesPrinted is { } copies ? format.Count(copies) : "not printed");
        Compare("Printed on", edition => edition.PrintedOn is { } day ? format.Day(day) : "not printed");
        for (var i = 0; i < Math.Max(first.Parts.Count, second.Parts.Count); i++)
        {
            var place = i;
            Compare($"Part {place + 1}", edition => place < edition.Parts.Count ? PartWords(edition.Parts[place].Part, stockName, format) : "none");
        }

        Compare("Fixed costs", edition => string.Join(", ", edition.FixedCosts.Select(cost => $"{cost.Name} {format.Money(cost.Amount)}")));
        return differences;
    }

    private static string PartWords(Part part, Func<string, string> stockName, PressFormat format) =>
        $"{part.Name}: {Words.Many(format.Count(part.Pages), part.Pages, "page", "pages")} of {stockName(part.StockId)}, {Words.Inks(part.Outside, part.Inside)}";
}
