using PressRun.Data.Presses;
using PressRun.Data.RunPlans;
using PressRun.Data.Shops;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Ladder;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;
using PressRun.Engine.Postage;
using PressRun.Engine.Selling;
using PressRun.Engine.Sheets;

namespace PressRun.Data.Tests.Fixtures;

/// <summary>A press with one thing of each kind: two stocks, a shop with a price list, a mailer, a service, a channel, bench rates, a title with an
/// edition of two parts, and a plan. All invented.</summary>
internal sealed record SmallPress(PressRecord Press, TitleRecord Title, EditionRecord Edition, PriceListRecord List, PlanRecord Plan)
{
    public static readonly DateOnly ListDate = new(2026, 1, 1);

    public static Stock Cover { get; } =
        new("cover-card", "Cover card", PaperWeight.FromBasisWeight(80m, PaperCategory.Cover), Length.FromMicrometres(230m), null, Finish.Coated);

    public static Stock Text { get; } = new("text", "Cream text", PaperWeight.FromGrammage(90m), null, 1.3m, Finish.Uncoated);

    public PressId Id => Press.Id;

    public static async Task<SmallPress> CreateAsync(Stores stores, string name = "Low Tide Press")
    {
        var press = Saved(await stores.Presses.CreateAsync(new NewPress(name, "USD", UnitSystem.Imperial, PaperRegion.Us)));
        foreach (var stock in new[] { Cover, Text })
        {
            Saved(await stores.Stocks.SaveAsync(press.Id, new LibraryItem<Stock>(stock, false, 0)));
        }

        Saved(await stores.Mailers.SaveAsync(press.Id, new LibraryItem<Mailer>(BoardMailer, false, 0)));
        Saved(await stores.Services.SaveAsync(press.Id, new LibraryItem<PostageService>(Letter, false, 0)));
        Saved(await stores.Channels.SaveAsync(press.Id, new LibraryItem<Channel>(Post, false, 0)));
        var bench = await stores.Bench.LoadAsync(press.Id);
        Saved(await stores.Bench.SaveAsync(press.Id, bench! with { Item = Bench }));
        var shop = Saved(await stores.Shops.SaveAsync(press.Id, new ShopRecord("", "Millrace", false, [], 0)));
        var list = Saved(await stores.PriceLists.SaveAsync(press.Id, new PriceListRecord(Guid.Empty, shop.Id, Prices, 0)));
        var title = Saved(await stores.Titles.AddAsync(press.Id, new NewTitle("Tidepool Almanac", "A. Maker", "#8a3b2e", "Twelve pools.")));
        var edition = Saved(await stores.Editions.AddAsync(press.Id, NewEdition(title.Id)));
        var plan = Saved(await stores.Plans.AddAsync(press.Id, NewPlan(edition, list)));
        return new SmallPress(press, title, edition, list, plan);
    }

    public static T Saved<T>(SaveResult<T> result)
        where T : class => Assert.IsType<SaveResult<T>.Saved>(result).Now;

    public static EditionRecord NewEdition(Guid titleId, int printing = 1) => new(
        Guid.Empty,
        titleId,
        "",
        printing,
        null,
        null,
        0,
        9.00m,
        6,
        new Size(Length.FromInches(5.5m), Length.FromInches(8.5m)),
        Binding.Saddle,
        true,
        new Trim(Length.FromInches(0.125m), Length.FromInches(0.125m), Length.FromInches(0.125m), Length.Zero),
        FoldShape.Flat,
        new Weighed(Mass.FromGrams(81.5m), null),
        [
            new EditionPart(Guid.Empty, new Part("cover", 4, Cover.Id, Ink.Colour, Ink.None)),
            new EditionPart(Guid.Empty, new Part("inside", 28, Text.Id, Ink.Black, Ink.Black, "tabloid")),
        ],
        [new FixedCost("proof copy", 18.00m), new FixedCost("cover art", 120.50m)],
        false,
        false,
        0);

    public static PlanRecord NewPlan(EditionRecord edition, PriceListRecord list) => new(
        Guid.Empty,
        edition.Id,
        "Millrace, bind at home",
        list.Id,
        "",
        new DateOnly(2026, 3, 2),
        150,
        new LadderRange(25, 500, 25),
        new Dictionary<Guid, string> { [edition.Parts[0].Id] = Text.Id },
        ["cutting to size"],
        ["stitch", "fold"],
        false,
        0);

    public static Mailer BoardMailer { get; } = new(
        "board", "Board-backed envelope", Length.FromInches(10m), Length.FromInches(7m), Length.FromMillimetres(1m), Mass.FromGrams(28m), 0.35m);

    public static PostageService Letter { get; } = new(
        "letter", "Letter", "home", ListDate, Length.FromMillimetres(240m), Length.FromMillimetres(165m), Length.FromMillimetres(5m), null, null, null,
        [new MassStep(Mass.FromGrams(100m), 0.95m), new MassStep(Mass.FromGrams(250m), 1.60m)]);

    public static Channel Post { get; } = new("post", "Own web shop", 0m, true, 0.06m, 0m, 0.03m, 0.30m, 1, "board", "home", 3.00m, 1m);

    public static BenchRates Bench { get; } = new(
        15m,
        false,
        [
            new BenchStep("collate", 10m, 0m, 2m, 0m, 1, 0m), new BenchStep("stitch", 5m, 12m, 0m, 0m, 1, 0.03m),
            new BenchStep("fold", 0m, 10m, 0m, 0m, 1, 0m), new BenchStep("trim", 5m, 0m, 0m, 20m, 3, 0.01m),
        ],
        [new Consumable("staples", 0.004m)],
        Mass.FromGrams(0.2m),
        new Overs(OversMode.Assured, 0.9m),
        BenchRates.UsualStapleFromSpine);

    public static Shop Prices { get; } = new(
        "Millrace",
        ListDate,
        [new Sheet("tabloid", Length.FromInches(12m), Length.FromInches(18m), Length.FromInches(0.125m), Length.Zero, false, GrainRule.Any)],
        [
            new PrintPrice(Ink.Colour, "tabloid", [new PriceStep(1, 0.40m), new PriceStep(500, 0.32m)], StepRule.AllUnits),
            new PrintPrice(Ink.Black, "tabloid", [new PriceStep(1, 0.09m)], StepRule.Incremental),
        ],
        [
            new PaperPrice(Cover.Id, "tabloid", [new PriceStep(1, 0.22m)], StepRule.AllUnits),
            new PaperPrice(Text.Id, "tabloid", [new PriceStep(1, 0.07m)], StepRule.AllUnits),
        ],
        [],
        [],
        new SetUp(5m, 0m, 1.5m),
        [new Finishing("cutting to size", FinishingUnit.Sheet, 0.01m, 6m), new Finishing("folding", FinishingUnit.Piece, 0.03m, 0m)],
        Collating.SameStock,
        Layout.Best,
        0m,
        Delivered.CutPieces,
        new OrderRules(
            40m,
            [new DiscountStep(400m, 0.05m)],
            new Delivery([new MassStep(Mass.FromKilograms(2m), 8.50m)], 1.10m, 300m),
            new Carton(Mass.FromKilograms(12m), Mass.FromGrams(400m)),
            0.06m,
            false,
            6));
}
