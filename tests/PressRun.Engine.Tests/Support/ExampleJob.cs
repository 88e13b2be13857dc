using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Ladder;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Tests.Support;

/// <summary>A run as a small press orders it: three stocks, two inks, price steps, a discount, freight, bench work, post and three channels.</summary>
public static class ExampleJob
{
    private const string Sheet = "tabloid-plus";

    public static Job Create() => new(
        new DateOnly(2026, 3, 2), Currency.Find("USD")!, Edition(), Stocks(), Shop(), Bench(), Mailers(), Postage(), Channels(), 6, false, 150,
        new LadderRange(25, 500, 25));

    private static Edition Edition()
    {
        var edge = Length.FromInches(0.125m);
        return new Edition(
            "Example",
            2,
            new Size(Length.FromInches(5.5m), Length.FromInches(8.5m)),
            Binding.Saddle,
            true,
            new Trim(edge, edge, edge, Length.Zero),
            [
                new Part("cover", 4, "silk-cover", Ink.Colour, Ink.None),
                new Part("inside", 28, "cream-text", Ink.Black, Ink.Black),
                new Part("centre", 4, "blue-text", Ink.Black, Ink.Black),
            ],
            FoldShape.Flat,
            null,
            [new FixedCost("proof copy", 18m)]);
    }

    private static List<Stock> Stocks() =>
    [
        new("silk-cover", "Silk cover", PaperWeight.FromBasisWeight(80m, PaperCategory.Cover), Length.FromMicrometres(230m), null, Finish.Coated),
        new("cream-text", "Cream text", PaperWeight.FromBasisWeight(60m, PaperCategory.Text), null, 1.35m, Finish.Uncoated),
        new("blue-text", "Blue text", PaperWeight.FromGrammage(90m), null, 1.3m, Finish.Uncoated),
    ];

    private static Shop Shop() => new(
        "Shop",
        new DateOnly(2026, 1, 1),
        [new Sheet(Sheet, Length.FromInches(12m), Length.FromInches(18m), Length.FromInches(0.125m), Length.Zero, false, GrainRule.Any)],
        [
            new PrintPrice(Ink.Colour, Sheet, [new PriceStep(1, 0.40m), new PriceStep(500, 0.32m)], StepRule.AllUnits),
            new PrintPrice(Ink.Black, Sheet, [new PriceStep(1, 0.09m), new PriceStep(1000, 0.06m)], StepRule.Incremental),
        ],
        [
            new PaperPrice("silk-cover", Sheet, [new PriceStep(1, 0.22m)], StepRule.AllUnits),
            new PaperPrice("cream-text", Sheet, [new PriceStep(1, 0.07m)], StepRule.AllUnits),
            new PaperPrice("blue-text", Sheet, [new PriceStep(1, 0.08m)], StepRule.AllUnits),
        ],
        [],
        [],
        new SetUp(5m, 0m, 1.50m),
        [new Finishing("cutting to size", FinishingUnit.Sheet, 0.01m, 6m)],
        Collating.SameStock,
        Layout.Best,
        0m,
        Delivered.CutPieces,
        new OrderRules(
            40m,
            [new DiscountStep(400m, 0.05m)],
            new Delivery(
                [
                    new MassStep(Mass.FromKilograms(2m), 8.50m),
                    new MassStep(Mass.FromKilograms(10m), 14m),
                    new MassStep(Mass.FromKilograms(25m), 27m),
                ],
                1.10m,
                300m),
            new Carton(Mass.FromKilograms(12m), Mass.FromGrams(400m)),
            0.06m,
            false,
            6));

    private static BenchRates Bench() => new(
        15m,
        false,
        [
            new BenchStep("collate", 10m, 0m, 2m, 0m, 1, 0m),
            new BenchStep("stitch", 5m, 12m, 0m, 0m, 1, 0.03m),
            new BenchStep("fold", 0m, 10m, 0m, 0m, 1, 0m),
            new BenchStep("trim", 5m, 0m, 0m, 20m, 3, 0.01m),
        ],
        [new Consumable("staples", 0.004m)],
        Mass.FromGrams(0.2m),
        new Overs(OversMode.Plain, Overs.UsualConfidence),
        BenchRates.UsualStapleFromSpine);

    private static List<Mailer> Mailers() =>
    [
        new("board", "Board-backed envelope", Length.FromInches(10m), Length.FromInches(7m), Length.FromMillimetres(1m), Mass.FromGrams(28m), 0.35m),
    ];

    private static List<PostageService> Postage() =>
    [
        Service("letter", "Letter", 240m, 165m, 5m, new MassStep(Mass.FromGrams(100m), 0.95m)),
        Service(
            "large-letter", "Large letter", 353m, 250m, 25m,
            new MassStep(Mass.FromGrams(100m), 1.60m), new MassStep(Mass.FromGrams(250m), 2.35m), new MassStep(Mass.FromGrams(500m), 3.10m)),
    ];

    private static PostageService Service(string id, string name, decimal length, decimal width, decimal thickness, params MassStep[] steps) => new(
        id, name, "home", new DateOnly(2026, 1, 1),
        Length.FromMillimetres(length), Length.FromMillimetres(width), Length.FromMillimetres(thickness), null, null, null, steps);

    private static List<Channel> Channels() =>
    [
        new("table", "Fair table", 9m, true, 0.06m, 0m, 0.0275m, 0.10m, 1, null, null, 0m, 0.6m),
        new("post", "Own web shop", 9m, true, 0.06m, 0m, 0.03m, 0.30m, 1, "board", "home", 3m, 0.25m),
        new("shops", "Comic shops", 9m, true, 0.06m, 0.4m, 0m, 0m, 5, null, null, 0m, 0.15m),
    ];
}
