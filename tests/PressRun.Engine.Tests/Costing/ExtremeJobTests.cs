using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Sheets;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Costing;

/// <summary>Jobs that no press has but a file may hold: each is answered or refused with a sentence, never with an exception.</summary>
public sealed class ExtremeJobTests
{
    private const decimal Huge = 1_000_000_000_000m;

    [Fact]
    public void Freight_of_millions_of_tonnes_is_refused()
    {
        var job = Plain()
            .With(shop => shop with { Delivers = Delivered.TrimmedCopies })
            .WithOrder(order => order with { Delivery = new Delivery([new MassStep(G(1000), 1m)], 1m, null), Carton = new Carton(G(1), Mass.Zero) })
            .WithEdition(edition => edition with { Weighed = new Weighed(Mass.FromKilograms(1_000_000_000m), null) });
        var refused = (job with { Quantity = 1_000_000 }).Prepared().Estimate(1_000_000);
        Assert.Contains("kg", Assert.Single(refused.Problems).Rule, StringComparison.Ordinal);
    }

    [Fact]
    public void A_run_that_costs_more_than_any_money_there_is_is_refused()
    {
        var job = Plain().With(shop => shop with { Print = [Black(Huge)] }) with { Channels = [Channel() with { CopiesPerOrder = 1_000_000 }] };
        Assert.Equal("$", Assert.Single(job.Prepared().Estimate(1_000_000).Problems).Path);
        Assert.False(job.Ladder(999_000, 1_000_000).Succeeded);
    }

    [Fact]
    public void Goods_that_a_discount_brings_down_to_nothing_are_bounded_too()
    {
        var job = Plain().With(shop => shop with { Print = [Black(Huge)] }).WithOrder(order => order with { Discounts = [new DiscountStep(1m, 1m)] });
        Assert.Equal("$", Assert.Single(job.Prepared().Estimate(1_000_000).Problems).Path);
    }

    [Fact]
    public void Hours_and_rates_whose_product_no_decimal_holds_are_refused()
    {
        var steps = Enumerable.Range(0, 1000).Select(index => Step($"step {index}", perCopy: 1_000_000m)).ToList();
        var job = Plain().WithBench(bench => bench with { HourlyRate = Huge, Steps = steps });
        Assert.Equal("$", Assert.Single(job.Prepared().Estimate(1_000_000).Problems).Path);
    }

    [Fact]
    public void A_net_of_next_to_nothing_breaks_even_at_no_number_of_copies()
    {
        var job = Plain() with { Channels = [Channel(price: 0.0000000000000000000000000001m)] };
        Assert.Null(job.Estimate().BreakEven.Copies);
    }

    [Fact]
    public void A_discount_that_leaves_next_to_nothing_has_no_price_that_breaks_even()
    {
        var job = Plain() with { Channels = [Channel() with { TradeDiscount = 0.9999999999999999999999999999m }] };
        Assert.Null(Assert.Single(job.Estimate().Channels).BreakEvenPrice);
    }

    [Fact]
    public void Many_finely_stated_rates_of_spoilage_still_assure_the_copies()
    {
        var steps = Enumerable.Range(0, 15).Select(index => Step($"step {index}", spoilage: 0.0100000000000000000000000001m)).ToList();
        var job = Plain().WithBench(bench => bench with { Steps = steps, Overs = new Overs(OversMode.Assured, 0.95m) });
        Assert.InRange(job.Estimate().CopiesToStart, (long)(100 / Math.Pow(0.99, 15)), 140);
    }

    [Fact]
    public void Steps_from_a_quantity_that_is_none_are_refused_and_not_looked_for() =>
        Assert.Equal("$.quantity", Assert.Single(Plain().Prepared().StepsBetween(0, 10).Problems).Path);

    [Fact]
    public void A_sheet_divided_into_millions_of_specks_is_refused_within_a_small_stack()
    {
        var job = Plain()
            .With(shop => shop with { Sheets = [Sheet(width: 10_000, height: 9_999) with { MixedLayout = true }] })
            .WithEdition(edition => edition with { Binding = Binding.Side, Page = MmSize(1.01m, 9_000.7m), Parts = [Part(2)] });
        IReadOnlyList<Problem> problems = [];
        var thread = new Thread(() => problems = job.Problems(), 512 * 1024);
        thread.Start();
        thread.Join();
        Assert.Equal("$.shop.sheets['square'].mixedLayout", Assert.Single(problems).Path);
    }

    [Fact]
    public void Mixed_layouts_that_are_too_many_to_search_together_are_refused()
    {
        var sheets = Enumerable.Range(0, 90).Select(index => Sheet($"sheet {index}", 1000 + index, 1400) with { MixedLayout = true }).ToList();
        var job = Plain()
            .With(shop => shop with
            {
                Sheets = sheets,
                Print = [.. sheets.Select(sheet => Black(1m, sheet.Id))],
                Paper = [.. sheets.Select(sheet => PaperAt(1m, sheet: sheet.Id))],
            })
            .WithEdition(edition => edition with { Binding = Binding.Side, Page = MmSize(31.3m, 43.7m) });
        Assert.Contains(job.Problems(), problem => problem.Path.EndsWith("mixedLayout", StringComparison.Ordinal));
    }

    [Fact]
    public void Parts_with_pieces_of_one_size_are_laid_out_once()
    {
        var parts = Enumerable.Range(0, 60).Select(index => Part(2, $"part {index}")).ToArray();
        var job = Plain()
            .With(shop => shop with { Sheets = [Sheet(width: 1000, height: 1400) with { MixedLayout = true }] })
            .WithEdition(edition => edition with { Binding = Binding.Side, Page = MmSize(55, 85), Parts = parts });
        Assert.Empty(job.Problems());
    }

    [Fact]
    public void Thousands_of_parts_on_thousands_of_sheets_are_refused()
    {
        var sheets = Enumerable.Range(0, 101).Select(index => Sheet($"sheet {index}")).ToList();
        var parts = Enumerable.Range(0, 100).Select(index => Part(4, $"part {index}")).ToArray();
        var job = Plain().With(shop => shop with { Sheets = sheets }).WithEdition(edition => edition with { Parts = parts });
        Assert.Equal("$.shop.sheets", Assert.Single(job.Problems()).Path);
    }
}
