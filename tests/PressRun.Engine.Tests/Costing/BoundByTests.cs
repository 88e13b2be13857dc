using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Costing;

public sealed class BoundByTests
{
    private static readonly Finishing Folding = new("folding", FinishingUnit.Copy, 0.10m, 0m);

    [Theory]
    [InlineData(Binding.Saddle)]
    [InlineData(Binding.Side)]
    public void A_book_that_neither_the_bench_nor_the_shop_works_on_is_bound_by_nobody_yet(Binding binding) =>
        Assert.Equal(BoundBy.NobodyYet, Of(Plain().WithEdition(edition => edition with { Binding = binding })));

    [Fact]
    public void Packing_at_the_bench_binds_nothing() =>
        Assert.Equal(BoundBy.NobodyYet, Of(Plain().WithBench(bench => bench with { Steps = [Step(BenchStep.Pack)] })));

    [Fact]
    public void A_step_of_the_bench_binds_whatever_the_shop_finishes_before() =>
        Assert.Equal(BoundBy.Bench, Of(Plain().With(shop => shop with { Finishing = [Folding] }).WithBench(bench => bench with { Steps = [Step("stitch")] })));

    [Fact]
    public void An_operation_of_the_shop_binds_where_the_bench_does_not() =>
        Assert.Equal(BoundBy.Shop, Of(Plain().With(shop => shop with { Finishing = [Folding] })));

    [Fact]
    public void Whole_books_come_bound() =>
        Assert.Equal(BoundBy.Shop, Of(Plain()
            .With(shop => shop with { BookPrices = [new BookPrice(Binding.Saddle, 4, 64, null, [new BookStep(1, 1.20m, 0.03m)])], Delivers = null })
            .WithBench(bench => bench with { Steps = [Step("stitch")] })));

    [Fact]
    public void Loose_prints_wait_for_nobody() =>
        Assert.Equal(BoundBy.Shop, Of(Plain().WithEdition(edition => Edition(Binding.Loose, Part(2)))));

    private static BoundBy Of(Job job) => job.Prepared().BoundBy;
}
