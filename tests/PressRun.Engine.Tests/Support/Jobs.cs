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

/// <summary>Small jobs whose figures can be checked by hand, to be changed with <c>with</c>.</summary>
internal static class Jobs
{
    public static readonly DateOnly Date = new(2026, 3, 2);

    public static readonly Currency Usd = Currency.Find("USD")!;

    public static Length Mm(decimal millimetres) => Length.FromMillimetres(millimetres);

    public static Length In(decimal inches) => Length.FromInches(inches);

    public static Mass G(decimal grams) => Mass.FromGrams(grams);

    public static Size MmSize(decimal width, decimal height) => new(Mm(width), Mm(height));

    public static Size InSize(decimal width, decimal height) => new(In(width), In(height));

    /// <summary>100 g/m², 100 µm.</summary>
    public static Stock PlainStock(string id = "plain", decimal grammage = 100m, decimal micrometres = 100m) =>
        new(id, id, PaperWeight.FromGrammage(grammage), Length.FromMicrometres(micrometres), null, null);

    public static Part Part(int pages, string name = "inside", string stock = "plain", Ink outside = Ink.Black, Ink inside = Ink.Black) =>
        new(name, pages, stock, outside, inside);

    /// <summary>100 × 200 mm, untrimmed, without bleed.</summary>
    public static Edition Edition(Binding binding, params Part[] parts) =>
        new("Example", 1, MmSize(100, 200), binding, false, default, parts, FoldShape.Flat, null, []);

    /// <summary>200 × 200 mm, any grain, no margin, no gutter: one folded piece or two leaves of the plain edition.</summary>
    public static Sheet Sheet(string id = "square", decimal width = 200m, decimal height = 200m) =>
        new(id, Mm(width), Mm(height), Length.Zero, Length.Zero, false, GrainRule.Any);

    public static PriceStep[] Steps(params (long From, decimal Each)[] steps) => [.. steps.Select(step => new PriceStep(step.From, step.Each))];

    public static PrintPrice Black(decimal each, string sheet = "square") => new(Ink.Black, sheet, Steps((1, each)), StepRule.AllUnits);

    public static PaperPrice PaperAt(decimal each, string stock = "plain", string sheet = "square") =>
        new(stock, sheet, Steps((1, each)), StepRule.AllUnits);

    /// <summary>Black at 0.10, paper at 0.05, nothing else; sends flat sheets.</summary>
    public static Shop Shop() => new(
        "Shop", Date, [Sheet()], [Black(0.10m)], [PaperAt(0.05m)], [], [], default, [], Collating.Never, Layout.Best, 0m, Delivered.FlatSheets, OrderRules.None);

    /// <summary>A saddle edition of four pages: one sheet a copy, so that a copy costs 0.25.</summary>
    public static Job Plain() => new(
        Date, Usd, Edition(Binding.Saddle, Part(4)), [PlainStock()], Shop(), BenchRates.None, [], [], [], 0, false, 100, null);

    public static Job With(this Job job, Func<Shop, Shop> change) => job with { Shop = change(job.Shop) };

    public static Job WithOrder(this Job job, Func<OrderRules, OrderRules> change) =>
        job with { Shop = job.Shop with { Order = change(job.Shop.Order) } };

    public static Job WithBench(this Job job, Func<BenchRates, BenchRates> change) => job with { Bench = change(job.Bench) };

    public static Job WithEdition(this Job job, Func<Edition, Edition> change) => job with { Edition = change(job.Edition) };

    public static BenchStep Step(
        string name, decimal setUpMinutes = 0m, decimal perCopy = 0m, decimal perPiece = 0m, decimal perCut = 0m, int pile = 1, decimal spoilage = 0m) =>
        new(name, setUpMinutes, perCopy, perPiece, perCut, pile, spoilage);

    public static Channel Channel(string id = "table", decimal price = 10m) => new(id, id, price, false, 0m, 0m, 0m, 0m, 1, null, null, 0m, 1m);

    public static BookBlock Block(Edition edition, params Stock[] stocks) =>
        BookBlock.Of(edition, stocks.ToDictionary(stock => stock.Id));

    public static PreparedJob Prepared(this Job job) => PreparedJob.Prepare(job).Value;

    public static Estimate Estimate(this Job job) => job.Prepared().Estimate(job.Quantity).Value;

    public static Outcome<QuantityLadder> Ladder(this Job job, int from, int to, int step = 1) =>
        job.Prepared().Ladder(new LadderRange(from, to, step), TestContext.Current.CancellationToken);

    public static CostCurve Curve(this Job job, int from, int to) => job.Prepared().Curve(from, to, TestContext.Current.CancellationToken).Value;

    public static decimal LandedCost(this PreparedJob job, int quantity) =>
        job.LandedCost(quantity, out var cost) is { } problem ? throw new InvalidOperationException(problem.ToString()) : cost;

    public static IReadOnlyList<Problem> Problems(this Job job) => PreparedJob.Prepare(job).Problems;

    public static CostLine Line(this Estimate estimate, CostCode code) => Assert.Single(estimate.Lines, line => line.Code == code);
}
