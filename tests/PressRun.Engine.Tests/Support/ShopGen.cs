using CsCheck;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Support;

/// <summary>Random price lists on sheets that every random edition fits on.</summary>
internal static class ShopGen
{
    private static readonly string[] SheetIds = ["small", "middle", "large"];

    private static Gen<Sheet> Sheet(string id) =>
        from width in Gen.Int[500, 900]
        from height in Gen.Int[500, 1000]
        from margin in Gen.Int[0, 6]
        from gutter in Gen.Int[0, 4]
        from grain in Gen.Frequency((3, Gen.Const(GrainRule.Any)), (1, Gen.Const(GrainRule.ParallelToSpine)))
        select new Sheet(id, Mm(width), Mm(height), Mm(margin), Mm(gutter), false, grain);

    private static Gen<PriceStep[]> Steps =>
        Gen.Select(Gen.Int[0, 3000], JobGen.FinePrice).Array[0, 2].SelectMany(further => JobGen.FinePrice.Select(first =>
            (PriceStep[])[new PriceStep(1, first), .. further.DistinctBy(step => step.Item1).OrderBy(step => step.Item1).Select(step => new PriceStep(step.Item1 + 2, step.Item2))]));

    private static Gen<StepRule> Rule => Gen.Enum<StepRule>();

    private static Gen<Delivery?> Delivery(bool thresholds) =>
        from none in Gen.Bool
        from prices in JobGen.Money.Array[0, 3]
        from further in JobGen.Money
        from free in Gen.Frequency((1, Gen.Const((decimal?)null)), (1, Gen.Int[10, 900].Select(value => (decimal?)value)))
        select none
            ? null
            : new Delivery([.. prices.Order().Select((price, index) => new MassStep(Mass.FromKilograms(5 * (index + 1)), price))], further, thresholds ? free : null);

    private static Gen<OrderRules> Order(bool thresholds) =>
        from minimum in JobGen.Money
        from discounts in Gen.Select(Gen.Int[20, 900], JobGen.Rate, (value, rate) => new DiscountStep(value, rate)).Array[0, 2]
        from delivery in Delivery(thresholds)
        from carton in Gen.Frequency(
            (1, Gen.Const((Carton?)null)), (2, Gen.Select(Gen.Int[2000, 25_000], Gen.Int[0, 900], (capacity, tare) => (Carton?)new Carton(G(capacity), G(tare)))))
        from tax in JobGen.Rate
        from taxOnDelivery in Gen.Bool
        select new OrderRules(
            thresholds ? minimum : 0m, thresholds ? [.. discounts.DistinctBy(step => step.From).OrderBy(step => step.From)] : [], delivery, carton, tax, taxOnDelivery, 5);

    private static Gen<Finishing[]> Finishing(bool wholeBooks) =>
        (from unit in Gen.Enum<FinishingUnit>()
         from each in JobGen.FinePrice
         from minimum in JobGen.Money
         select new Finishing("operation", wholeBooks && unit == FinishingUnit.Sheet ? FinishingUnit.Copy : unit, each, minimum)).Array[0, 3];

    private static Gen<BookPrice> Book(Binding binding) =>
        from prices in Gen.Select(JobGen.Money, JobGen.FinePrice).Array[1, 3]
        select new BookPrice(
            binding, 1, Job.MostPages, null, [.. prices.Select((price, index) => new BookStep(1 + (100 * index), price.Item1 / 10m, price.Item2 / 10m))]);

    public static Gen<Shop> Any => Of(1, 3, true);

    public static Gen<Shop> WithoutThresholds => Of(1, 1, false);

    private static Gen<Shop> Of(int fewestSheets, int mostSheets, bool thresholds) =>
        from wholeBooks in Gen.Frequency((4, Gen.Const(false)), (1, Gen.Const(true)))
        from sheets in Gen.Int[fewestSheets, mostSheets].SelectMany(count => Gen.Select(Sheet(SheetIds[0]), Sheet(SheetIds[1]), Sheet(SheetIds[2]), (a, b, c) => new[] { a, b, c }[..count]))
        from steps in Steps.Array[sheets.Length * 5]
        from rules in Rule.Array[sheets.Length * 5]
        from books in Gen.Select(Book(Binding.Saddle), Book(Binding.Side), Book(Binding.Perfect), Book(Binding.Loose), (a, b, c, d) => new[] { a, b, c, d })
        from sold in Gen.Frequency((4, Gen.Const((int[])[])), (1, Gen.Const((int[])[25, 50, 100, 250, 500, 1000, 2500, 5000])))
        from setUp in Gen.Select(JobGen.Money, JobGen.Money, JobGen.Money, (order, edition, part) => new SetUp(order, edition, part))
        from finishing in Finishing(wholeBooks)
        from collates in Gen.Enum<Collating>()
        from layout in Gen.Enum<Layout>()
        from spoilage in JobGen.Spoilage
        from delivers in wholeBooks
            ? JobGen.Among<Delivered?>(null, Delivered.UntrimmedCopies, Delivered.TrimmedCopies)
            : JobGen.Among<Delivered?>(null, Delivered.FlatSheets, Delivered.CutPieces, Delivered.UntrimmedCopies, Delivered.TrimmedCopies)
        from order in Order(thresholds)
        select new Shop(
            "Shop",
            Date,
            sheets,
            [.. sheets.SelectMany((sheet, index) => new[] { Ink.Black, Ink.Colour }.Select((ink, at) =>
                new PrintPrice(ink, sheet.Id, steps[(5 * index) + at], rules[(5 * index) + at])))],
            [.. sheets.SelectMany((sheet, index) => JobGen.StockIds.Select((stock, at) =>
                new PaperPrice(stock, sheet.Id, steps[(5 * index) + 2 + at], rules[(5 * index) + 2 + at])))],
            wholeBooks ? books : [],
            sold,
            setUp,
            finishing,
            collates,
            layout,
            spoilage,
            delivers,
            order);
}
