using CsCheck;
using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Support;

/// <summary>Random jobs that the engine takes: every binding, whole books or sheets, thresholds, bench work, post and channels.</summary>
internal static class JobGen
{
    public static readonly string[] StockIds = ["first", "second", "third"];

    /// <summary>Any job.</summary>
    public static Gen<Job> Any { get; } = Of(ShopGen.Any);

    /// <summary>Jobs whose parts are folded and nested.</summary>
    public static Gen<Job> Saddle { get; } = Any.Where(job => job.Edition.Binding == Binding.Saddle);

    /// <summary>Jobs on one sheet size, without discount, minimum or free delivery: dearer rates cannot make them cheaper.</summary>
    public static Gen<Job> WithoutThresholds { get; } = Of(ShopGen.WithoutThresholds);

    internal static Gen<decimal> Money => Gen.Int[0, 3000].Select(cents => cents / 100m);

    internal static Gen<decimal> FinePrice => Gen.Int[0, 9999].Select(parts => parts / 10_000m);

    internal static Gen<decimal> Rate => Gen.Int[0, 25].Select(percent => percent / 100m);

    internal static Gen<decimal> Spoilage => Gen.Frequency((2, Gen.Const(0m)), (1, Gen.Int[1, 80].Select(tenths => tenths / 1000m)));

    internal static Gen<T> Among<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(index => values[index]);

    private static Gen<Length> Trimmed => Among(0m, 0m, 1.5m, 3m, 3.175m, 6m).Select(Mm);

    private static Gen<Ink> Ink => Gen.Enum<Ink>();

    private static Gen<Edition> Edition =>
        from binding in Gen.Enum<Binding>()
        from page in Gen.Select(Gen.Int[100, 880], Gen.Int[100, 880], (width, height) => MmSize(width / 4m, height / 4m))
        from trim in Gen.Select(Trimmed, Trimmed, Trimmed, Trimmed, (head, foot, foreEdge, spine) =>
            new Trim(head, foot, foreEdge, binding == Binding.Saddle ? Length.Zero : spine))
        from parts in Parts(binding)
        from bleed in Gen.Bool
        from fold in Gen.Enum<FoldShape>()
        from weighed in Gen.Frequency((4, Gen.Const((Weighed?)null)), (1, Gen.Select(Gen.Int[1, 900], Gen.Int[1, 300], (grams, tenths) =>
            (Weighed?)new Weighed(G(grams), Mm(tenths / 10m)))))
        from costs in Gen.Select(Gen.Int[0, 9], FinePrice, (name, amount) => new FixedCost($"cost {name}", 100m * amount)).List[0, 2]
        select new Edition("Example", 1, page, binding, bleed, trim, parts, fold, weighed, costs);

    private static Gen<BenchStep> Step(string name) =>
        from setUp in Gen.Int[0, 20]
        from perCopy in Gen.Int[0, 30]
        from perPiece in Gen.Int[0, 40]
        from perCut in Gen.Int[0, 40]
        from pile in Gen.Int[1, 12]
        from spoilage in Spoilage
        select new BenchStep(name, setUp, perCopy, perPiece / 10m, perCut, pile, spoilage);

    private static Gen<BenchRates> Bench =>
        from rate in Money
        from paid in Gen.Bool
        from collate in Step("collate").List[0, 1]
        from rest in Step("stitch").List[0, 2]
        from consumables in FinePrice.List[0, 2]
        from fittings in Gen.Int[0, 20]
        from assured in Gen.Frequency((4, Gen.Const(OversMode.Plain)), (1, Gen.Const(OversMode.Assured)))
        from confidence in Gen.Int[50, 99]
        select new BenchRates(
            rate, paid, [.. collate, .. rest], [.. consumables.Select(cost => new Consumable("staples", cost))], G(fittings / 10m),
            new Overs(assured, confidence / 100m), BenchRates.UsualStapleFromSpine);

    private static Gen<Job> Of(Gen<Shop> shops) =>
        from edition in Edition
        from shop in shops
        from bench in Bench
        from weights in Gen.Select(Gen.Int[60, 350], Gen.Int[60, 500], (grammage, micrometres) => (grammage, micrometres)).Array[StockIds.Length]
        from mail in MailGen.Any
        from free in Gen.Int[0, 20]
        from reclaims in Gen.Bool
        from quantity in Gen.Frequency((1, Gen.Int[1, 10]), (4, Gen.Int[11, 1500]))
        select new Job(
            Date, Usd, edition, [.. weights.Select((weight, index) => PlainStock(StockIds[index], weight.grammage, weight.micrometres))], shop, bench,
            mail.Mailers, mail.Services, mail.Channels, free, reclaims, quantity, null);

    private static Gen<List<Part>> Parts(Binding binding)
    {
        var part =
            from pieces in Gen.Int[1, 12]
            from stock in Among(StockIds)
            from outside in Ink
            from inside in Ink
            select new Part("part", pieces, stock, outside, inside);
        return part.List[binding == Binding.Perfect ? 2 : 1, 4].Select(parts => parts
            .Select((value, index) => value with { Name = $"part {index}", Pages = PagesOf(binding, index, value.Pages) })
            .ToList());
    }

    private static int PagesOf(Binding binding, int index, int pieces) =>
        binding == Binding.Perfect && index == 0 ? BindingRules.PerfectCoverPages : pieces * BindingRules.PagesPerPiece(binding, index);
}
