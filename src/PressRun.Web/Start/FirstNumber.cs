using PressRun.Data.Import.Shapes;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Ladder;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Sheets;

namespace PressRun.Web.Start;

/// <summary>The few figures from which a first cost can be worked out: a folded and stapled book with a cover, at a shop that charges by the
/// printed side and the sheet.</summary>
/// <param name="Page">Finished page.</param>
/// <param name="InsidePages">Pages inside the cover, a multiple of 4.</param>
/// <param name="Quantity">Copies.</param>
/// <param name="InsideInk">Ink of the inside.</param>
/// <param name="CoverInk">Ink of the cover's outside.</param>
/// <param name="InsideWeight">Paper of the inside.</param>
/// <param name="CoverWeight">Paper of the cover.</param>
/// <param name="Sheet">Size of the sheet that the shop prints on.</param>
/// <param name="BlackSide">Price of a side printed in black.</param>
/// <param name="ColourSide">Price of a side printed in colour.</param>
/// <param name="InsideSheet">Price of a sheet of the inside's paper.</param>
/// <param name="CoverSheet">Price of a sheet of the cover's paper.</param>
public sealed record FirstNumber(
    NamedSize Page,
    int InsidePages,
    int Quantity,
    Ink InsideInk,
    Ink CoverInk,
    PaperWeight InsideWeight,
    PaperWeight CoverWeight,
    NamedSize Sheet,
    decimal BlackSide,
    decimal ColourSide,
    decimal InsideSheet,
    decimal CoverSheet)
{
    /// <summary>Id of the inside's paper.</summary>
    public const string InsideStockId = "inside-paper";

    /// <summary>Id of the cover's paper.</summary>
    public const string CoverStockId = "cover-paper";


    /// <summary>What the fields hold at first: plausible figures to be replaced by one's own.</summary>
    public static FirstNumber For(PaperRegion region) => new(
        region == PaperRegion.Us ? StandardSizes.Find("Half letter")! : StandardSizes.Find("A5")!,
        28,
        100,
        Ink.Black,
        Ink.Colour,
        region == PaperRegion.Us ? PaperWeight.FromBasisWeight(60m, PaperCategory.Text) : PaperWeight.FromGrammage(90m),
        region == PaperRegion.Us ? PaperWeight.FromBasisWeight(80m, PaperCategory.Cover) : PaperWeight.FromGrammage(240m),
        StandardSizes.Sheets(region)[0],
        0.06m,
        0.30m,
        0.05m,
        0.20m);

    /// <summary>The two papers; their caliper rests on the usual bulk of an uncoated finish until it is measured.</summary>
    public IReadOnlyList<Stock> Stocks =>
    [
        new(CoverStockId, Say($"Cover paper"), CoverWeight, null, null, Finish.Uncoated),
        new(InsideStockId, Say($"Inside paper"), InsideWeight, null, null, Finish.Uncoated),
    ];

    /// <summary>Whether a paper of a press is one of the two that came with the first book and still bears their name; renamed, it is one's own.</summary>
    public static bool IsExample(Stock stock) => stock.Id switch
    {
        CoverStockId => InEveryLanguage($"Cover paper").Contains(stock.Name),
        InsideStockId => InEveryLanguage($"Inside paper").Contains(stock.Name),
        _ => false,
    };

    /// <summary>Its pages with those of the cover.</summary>
    public PageCount Pages => PageCount.Of(Binding.Saddle, Edition("").Parts);

    /// <summary>The edition: a first printing of cover and inside.</summary>
    public Edition Edition(string title) => new(
        title,
        1,
        Page.Size,
        Binding.Saddle,
        false,
        default,
        [new Part("cover", 4, CoverStockId, CoverInk, Ink.None), new Part("inside", InsidePages, InsideStockId, InsideInk, InsideInk)],
        FoldShape.Flat,
        null,
        []);

    /// <summary>The shop's prices.</summary>
    public Shop Shop(string name, DateOnly from)
    {
        static IReadOnlyList<PriceStep> Each(decimal price) => [new PriceStep(1, price)];

        // Under the size's own name, so that a price list which names that size means this sheet.
        var sheet = PriceListTable.SheetOf(Sheet);
        return new Shop(
            name,
            from,
            [sheet],
            [new PrintPrice(Ink.Black, sheet.Id, Each(BlackSide), StepRule.AllUnits), new PrintPrice(Ink.Colour, sheet.Id, Each(ColourSide), StepRule.AllUnits)],
            [new PaperPrice(CoverStockId, sheet.Id, Each(CoverSheet), StepRule.AllUnits), new PaperPrice(InsideStockId, sheet.Id, Each(InsideSheet), StepRule.AllUnits)],
            [],
            [],
            default,
            [],
            Collating.Never,
            Engine.Sheets.Layout.Best,
            0m,
            null,
            OrderRules.None);
    }

    /// <summary>The job that is worked out while one types.</summary>
    public Job Job(Currency currency, DateOnly today) => new(
        today, currency, Edition(""), Stocks, Shop("", today), BenchRates.None, [], [], [], 0, false, Quantity, new LadderRange(1, Quantity, 1));
}
