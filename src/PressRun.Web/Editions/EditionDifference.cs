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
    /// <summary>Every field of the book and its sale in which two printings differ; how many copies there are of each is no change of the book.</summary>
    /// <param name="first">One printing.</param>
    /// <param name="second">The other.</param>
    /// <param name="stockName">Name of a stock's id.</param>
    /// <param name="format">How figures are written.</param>
    public static IReadOnlyList<EditionDifference> OfBook(EditionRecord first, EditionRecord second, Func<string, string> stockName, PressFormat format) =>
        Of(first, second, stockName, format, ofStock: false);

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
    public static IReadOnlyList<EditionDifference> Of(EditionRecord first, EditionRecord second, Func<string, string> stockName, PressFormat format) =>
        Of(first, second, stockName, format, ofStock: true);

    private static List<EditionDifference> Of(EditionRecord first, EditionRecord second, Func<string, string> stockName, PressFormat format, bool ofStock)
    {
        var differences = new List<EditionDifference>();
        void Compare(string what, Func<EditionRecord, string> words)
        {
            if (words(first) is var one && words(second) is var two && one != two)
            {
                differences.Add(new EditionDifference(what, one, two));
            }
        }

        Compare(Say($"Page"), edition => format.Size(edition.Page));
        Compare(Say($"Binding"), edition => Words.Of(edition.Binding));
        Compare(Say($"Bleed"), edition => edition.Bleed ? Say($"runs over the edge") : Say($"stops short of the edge"));
        Compare(Say($"Trim at head"), edition => format.Length(edition.Trim.Head).ToString());
        Compare(Say($"Trim at foot"), edition => format.Length(edition.Trim.Foot).ToString());
        Compare(Say($"Trim at fore-edge"), edition => format.Length(edition.Trim.ForeEdge).ToString());
        Compare(Say($"Trim at spine"), edition => format.Length(edition.Trim.Spine).ToString());
        Compare(Say($"Fold"), edition => edition.Fold == FoldShape.Flat ? Say($"flat") : Say($"rounded"));
        Compare(Say($"Weighed"), edition => edition.Weighed?.Mass is { } mass ? format.Mass(mass).ToString() : Say($"not weighed"));
        Compare(Say($"Gauged"), edition => edition.Weighed?.Thickness is { } thickness ? format.Thickness(thickness).ToString() : Say($"not gauged"));
        Compare(Say($"Price"), edition => format.Money(edition.Price));
        Compare(Say($"Given away"), edition => format.Count(edition.FreeCopies));
        if (ofStock)
        {
            Compare(Say($"Copies on hand"), edition => format.Count(edition.CopiesOnHand));
            Compare(Say($"Copies printed"), edition => edition.CopiesPrinted is { } copies ? format.Count(copies) : Say($"not printed"));
            Compare(Say($"Printed on"), edition => edition.PrintedOn is { } day ? format.Day(day) : Say($"not printed"));
        }

        for (var i = 0; i < Math.Max(first.Parts.Count, second.Parts.Count); i++)
        {
            var place = i;
            Compare(Say($"Part {place + 1}"), edition => place < edition.Parts.Count ? PartWords(edition.Parts[place].Part, stockName, format) : Say("a part that there is not", $"none"));
        }

        Compare(Say($"Fixed costs"), edition => string.Join(", ", edition.FixedCosts.Select(cost => $"{cost.Name} {format.Money(cost.Amount)}")));
        return differences;
    }

    private static string PartWords(Part part, Func<string, string> stockName, PressFormat format) =>
        Say($"{part.Name}: {Words.Pages(part.Pages, format.Count)} of {stockName(part.StockId)}, {Words.Inks(part.Outside, part.Inside)}");
}
