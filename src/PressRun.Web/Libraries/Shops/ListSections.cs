using System.Globalization;
using System.Text.RegularExpressions;
using PressRun.Data.Import.Shapes;
using PressRun.Data.Import.Tables;
using PressRun.Engine.Costing;
using PressRun.Engine.Paper;
using PressRun.Engine.Sheets;
using PressRun.Web.Libraries.Grid;

namespace PressRun.Web.Libraries.Shops;

/// <summary>The tables of a price list.</summary>
public static partial class ListSections
{
    private const string DeliverySteps = "$.order.delivery.steps";
    private const int SheetName = 0;
    private const int SheetWidth = 1;
    private const int SheetHeight = 2;

    /// <summary>Sheet sizes. A standard size needs no more than its name.</summary>
    public static ListSection<Sheet> Sheets(CellManners manners) => new(
        "sheets", Say($"Sheets"), Say($"Add a sheet"),
        Say($"What the shop prints on. A standard size (SRA3, A3, Letter, Tabloid) needs only its name. The grain runs along the height; the margin cannot be printed and counts where a page bleeds."),
        manners, tables => tables.Sheets, list => list.Sheets, (list, sheets) => list with { Sheets = sheets })
    {
        Complete = row => WithStandardSize(row, manners),
    };

    /// <summary>Print prices.</summary>
    public static ListSection<PrintPrice> Print(CellManners manners) => new(
        "print", Say($"Printing"), Say($"Add a step"),
        Say($"What a printed side of a sheet costs, by all sides of that ink in the order. Steps count for all units, or each for its own."),
        manners, tables => tables.Print, list => list.Print, (list, prices) => list with { Print = prices });

    /// <summary>Paper prices.</summary>
    public static ListSection<PaperPrice> Paper(CellManners manners) => new(
        "paper", Say($"Paper"), Say($"Add a step"),
        Say($"What a sheet of each paper costs. Papers are those of the press's own library."),
        manners, tables => tables.Paper, list => list.Paper, (list, prices) => list with { Paper = prices });

    /// <summary>Whole-book prices.</summary>
    public static ListSection<BookPrice> Books(CellManners manners) => new(
        "books", Say($"Whole books"), Say($"Add a step"),
        Say($"Where the shop sells bound books by the copy. The first that fits a printing prices it, in place of printing and paper."),
        manners, tables => tables.Books, list => list.BookPrices, (list, prices) => list with { BookPrices = prices });

    /// <summary>Finishing.</summary>
    public static ListSection<Finishing> Finishing(CellManners manners) => new(
        "finishing", Say($"Finishing"), Say($"Add an operation"),
        Say($"Cutting, folding, stapling at the shop. Each run says which of them it takes."),
        manners, tables => tables.Finishing, list => list.Finishing, (list, operations) => list with { Finishing = operations });

    /// <summary>Discounts.</summary>
    public static ListSection<Discount> Discounts(CellManners manners) => new(
        "discounts", Say($"Discounts"), Say($"Add a discount"),
        Say($"Off all goods, from a goods value on."),
        manners, tables => tables.Discounts, list => list.Order.Discounts.Select(step => new Discount(step)),
        (list, discounts) => list with { Order = list.Order with { Discounts = [.. discounts.Select(discount => discount.Step)] } });

    /// <summary>Delivery.</summary>
    public static ListSection<DeliveryPrice> Delivery(CellManners manners) => new(
        "delivery", Say($"Delivery"), Say($"Add a step"),
        Say($"By what the order weighs, cartons with it."),
        manners, tables => tables.Delivery, list => (list.Order.Delivery?.Steps ?? []).Select(step => new DeliveryPrice(step)),
        (list, prices) => Terms.WithDeliverySteps(list, [.. prices.Select(price => price.Step)]));

    /// <summary>A problem of the contract in words of the page: <c>$.print[2].sheet</c> stands in Printing.</summary>
    public static string Told(Problem problem)
    {
        var place = Place().Match(problem.Path);
        var title = place.Groups["part"].Value switch
        {
            "print" => Say($"Printing"),
            "paper" => Say($"Paper"),
            "bookPrices" => Say($"Whole books"),
            "sheets" => Say($"Sheets"),
            "finishing" => Say($"Finishing"),
            "order" => Say("all of an order to a shop", $"Order"),
            "validFrom" => Say("first day of a price list", $"From"),
            _ => null,
        };
        return problem.Path == DeliverySteps ? Say($"Delivery needs a price as long as it is free from a goods value on: keep a step, write a price for each further kg, or empty Delivery free from goods of first.")
            : title is null ? SayWhole(problem.Rule)
            : place.Groups["index"].Success ? Say($"{title}, price {(int.Parse(place.Groups["index"].Value, CultureInfo.InvariantCulture) + 1).ToString(CultureInfo.InvariantCulture)}: {SayWhole(problem.Rule)}")
            : $"{title}: {SayWhole(problem.Rule)}";
    }

    private static GridRow WithStandardSize(GridRow row, CellManners manners)
    {
        if (row.Cells[SheetWidth].Length > 0 || row.Cells[SheetHeight].Length > 0 || StandardSizes.Find(row.Cells[SheetName].Trim()) is not { } size)
        {
            return row;
        }

        var texts = new SheetShape().Texts(PriceListTable.SheetOf(size), manners).Single();
        return row.With(SheetWidth, texts[SheetWidth]).With(SheetHeight, texts[SheetHeight]);
    }

    [GeneratedRegex(@"^\$\.(?<part>[A-Za-z]+)(\[(?<index>\d+)\])?", RegexOptions.ExplicitCapture)]
    private static partial Regex Place();
}
