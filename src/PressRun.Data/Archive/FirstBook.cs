using PressRun.Data.Presses;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Paper;

namespace PressRun.Data.Archive;

/// <summary>The book that a press is set up with: what its first number was reckoned from.</summary>
/// <param name="Edition">The printing that is planned; its title is the book's.</param>
/// <param name="Colour">Cover colour as <c>#rrggbb</c>.</param>
/// <param name="Stocks">The papers of its parts and of the shop's prices.</param>
/// <param name="Shop">The shop with its price list.</param>
/// <param name="Quantity">Copies planned.</param>
public sealed record FirstBook(Edition Edition, string Colour, IReadOnlyList<Stock> Stocks, Shop Shop, int Quantity)
{
    internal TitleRecord Title => new(Guid.Empty, SearchText.Slug(Edition.Title), Edition.Title, "", Colour, "", false, 0);

    /// <summary>A press that holds nothing but this book, planned at its shop from the day on which the shop's prices begin.</summary>
    internal PressArchive Of(NewPress press)
    {
        var shopId = SearchText.Slug(Shop.Name);
        var plan = new ArchivedPlan(
            Shop.Name, shopId, Shop.ValidFrom, Shop.ValidFrom, Quantity, null, true, new Dictionary<string, string>(),
            [.. Shop.Finishing.Select(operation => operation.Name)], []);
        var edition = new ArchivedEdition(Edition, null, null, [], 0m, 0, false, [plan], [], [], []);
        return new PressArchive(
            new ArchivedPress(press.Name.Trim(), press.Currency, press.Units, press.PaperRegion, false),
            [.. Stocks.Select(stock => new Kept<Stock>(stock, false))],
            [new ArchivedShop(shopId, Shop.Name, false, [Shop])],
            [],
            [],
            [],
            BenchRates.None,
            [new ArchivedTitle(Title.Slug, Title.Title, Title.By, Colour, Title.About, false, [edition])],
            []);
    }
}
