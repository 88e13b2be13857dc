using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Selling;
using PressRun.Engine.Sheets;

namespace PressRun.Web.Tests.Support;

/// <summary>A run to test pages on: an invented book at an invented shop whose delivery becomes free at 120.00 of goods.</summary>
public static class ARun
{
    public static readonly Currency Dollars = Currency.Find("USD")!;

    public static readonly DateOnly Day = new(2026, 3, 2);

    public static Edition Edition(Binding binding = Binding.Saddle) => new(
        "Marsh Letters",
        2,
        new Size(Length.FromMillimetres(140m), Length.FromMillimetres(200m)),
        binding,
        false,
        default,
        [
            new Part("cover", 4, "thick", Ink.Colour, Ink.None),
            new Part("inside", 24, "thin", Ink.Black, Ink.Black),
            new Part("centre", 4, "green", Ink.Black, Ink.Black),
        ],
        FoldShape.Flat,
        null,
        [new FixedCost("proof", 12m)]);

    public static IReadOnlyList<Stock> Stocks { get; } =
    [
        new("thick", "Thick card", PaperWeight.FromGrammage(250m), Length.FromMicrometres(300m), null, null),
        new("thin", "Thin cream", PaperWeight.FromGrammage(80m), Length.FromMicrometres(100m), null, null),
        new("green", "Green sheet", PaperWeight.FromGrammage(90m), Length.FromMicrometres(120m), null, null),
    ];

    public static Shop Shop { get; } = new(
        "Willow Prints",
        new DateOnly(2026, 1, 1),
        [new Sheet("a3", Length.FromMillimetres(297m), Length.FromMillimetres(420m), Length.Zero, Length.Zero, false, GrainRule.Any)],
        [new PrintPrice(Ink.Black, "a3", [new PriceStep(1, 0.08m)], StepRule.AllUnits), new PrintPrice(Ink.Colour, "a3", [new PriceStep(1, 0.40m)], StepRule.AllUnits)],
        [.. Stocks.Select(stock => new PaperPrice(stock.Id, "a3", [new PriceStep(1, 0.05m)], StepRule.AllUnits))],
        [],
        [],
        new SetUp(5m, 0m, 0m),
        [],
        Collating.Never,
        PressRun.Engine.Sheets.Layout.Best,
        0m,
        null,
        OrderRules.None with { Delivery = new Delivery([new MassStep(Mass.FromKilograms(100m), 15m)], null, 120m) });

    public static Job Job { get; } = new(
        Day,
        Dollars,
        Edition(),
        Stocks,
        Shop,
        BenchRates.None with { HourlyRate = 10m, Steps = [new BenchStep("fold", 0m, 36m, 0m, 0m, 1, 0m)] },
        [],
        [],
        [new Channel("fair", "Fair table", 6m, false, 0m, 0m, 0m, 0m, 1, null, null, 0m, 1m)],
        0,
        false,
        100,
        null);

    public static PreparedJob Prepared { get; } = PreparedJob.Prepare(Job).Value;
}
