using System.Text.Json;
using CsCheck;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.Engine.Tests.Support;

namespace PressRun.Engine.Tests.Costing;

/// <summary>What holds for every job.</summary>
public sealed class CostPropertyTests
{
    private static readonly JsonSerializerOptions WithTuples = new() { IncludeFields = true };

    [Fact]
    public void Lines_are_in_minor_units_none_is_zero_and_they_add_up_to_every_total() => Estimates((job, estimate) =>
    {
        var totals = estimate.Totals;
        Assert.All(estimate.Lines, line => Assert.True(line.Amount != 0m && line.Amount == job.Currency.Round(line.Amount)));
        var reclaimed = job.ReclaimTax ? totals.Tax : 0m;
        Assert.Equal(totals.LandedCost + reclaimed, estimate.Lines.Sum(line => line.Amount));
        Assert.Equal(totals.Goods, Sum(CostCode.Book, CostCode.Print, CostCode.Paper, CostCode.SetUpOrder, CostCode.SetUpEdition, CostCode.SetUpPart, CostCode.Finishing));
        Assert.Equal(-totals.Discount, Sum(CostCode.Discount));
        Assert.Equal(totals.MinimumTopUp, Sum(CostCode.Minimum));
        Assert.Equal(totals.Delivery, Sum(CostCode.Delivery));
        Assert.Equal(totals.Tax, Sum(CostCode.Tax));
        Assert.Equal(totals.ShopTotal, totals.Goods - totals.Discount + totals.MinimumTopUp + totals.Delivery + totals.Tax);
        Assert.Equal((totals.BenchLabour, totals.Consumables, totals.FixedCosts), (Sum(CostCode.BenchLabour), Sum(CostCode.BenchConsumable), Sum(CostCode.Fixed)));
        Assert.Equal(totals.CashOut, totals.ShopTotal + totals.Consumables + totals.FixedCosts + (job.Bench.Paid ? totals.BenchLabour : 0m));

        decimal Sum(params CostCode[] codes) => estimate.Lines.Where(line => codes.Contains(line.Code)).Sum(line => line.Amount);
    });

    [Fact]
    public void Quantity_times_price_rounded_is_the_amount_of_a_line_that_counts() => Estimates((job, estimate) =>
        Assert.All(
            estimate.Lines.Where(line => line.Code is not (CostCode.Finishing or CostCode.BenchLabour)),
            line => Assert.Equal(line.Amount, job.Currency.Round(line.Quantity * line.Each))));

    [Fact]
    public void Lines_stand_in_the_order_of_their_codes() => Estimates((_, estimate) =>
        Assert.Equal(estimate.Lines.Select(line => line.Code).Order(), estimate.Lines.Select(line => line.Code)));

    [Fact]
    public void Sheets_hold_every_piece_of_every_copy_started() => Estimates((_, estimate) =>
        Assert.All(estimate.Parts.Where(part => part.OnSheets is not null), part =>
        {
            Assert.True(part.OnSheets!.Sheets * part.OnSheets.PiecesPerSheet >= part.PiecesPerCopy * estimate.CopiesToStart);
            Assert.Equal((decimal)part.OnSheets.Sheets / estimate.CopiesToStart, part.OnSheets.SheetsPerCopy);
        }));

    [Fact]
    public void Landed_cost_alone_equals_that_of_the_full_costing() => JobGen.Any.Sample(job =>
    {
        var prepared = job.Prepared();
        var estimate = prepared.Estimate(job.Quantity);
        var problem = prepared.LandedCost(job.Quantity, out var cost);
        Assert.Equal(estimate.Succeeded, problem is null);
        Assert.Equal(estimate.Succeeded ? estimate.Value.Totals.LandedCost : 0m, cost);
    });

    [Fact]
    public void Landed_cost_never_falls_when_a_rate_rises() =>
        Gen.Select(JobGen.WithoutThresholds, Gen.Int[0, Dearer.Length - 1], Gen.Int[1, 500]).Sample((job, which, cents) =>
        {
            var before = job.Prepared().LandedCost(job.Quantity, out var cost);
            var after = Dearer[which](job, cents / 100m).Prepared().LandedCost(job.Quantity, out var dearerCost);
            Assert.Equal(before is null, after is null);
            Assert.True(dearerCost >= cost);
        });

    [Fact]
    public void The_same_job_prepared_twice_gives_the_same_answer_to_the_last_digit() => JobGen.Any.Sample(job =>
        Assert.Equal(Written(job.Prepared().Estimate(job.Quantity)), Written(job.Prepared().Estimate(job.Quantity))));

    [Fact]
    public void One_prepared_job_asked_from_many_threads_answers_as_it_does_alone() => JobGen.Any.Sample(
        job =>
        {
            var prepared = job.Prepared();
            var quantities = Enumerable.Range(1, 64).Select(step => step * 13).ToList();
            var alone = quantities.Select(quantity => Written(prepared.Estimate(quantity))).ToList();
            var together = new string[quantities.Count];
            Parallel.For(0, quantities.Count, index => together[index] = Written(prepared.Estimate(quantities[index])));
            Assert.Equal(alone, together);
        },
        iter: 20);

    private static Func<Job, decimal, Job>[] Dearer { get; } =
    [
        (job, more) => job.With(shop => shop with { Print = [.. shop.Print.Select(price => price with { Steps = [.. price.Steps.Select(step => step with { Each = step.Each + more })] })] }),
        (job, more) => job.With(shop => shop with { Paper = [.. shop.Paper.Select(price => price with { Steps = [.. price.Steps.Take(1).Select(step => step with { Each = step.Each + more }), .. price.Steps.Skip(1)] })] }),
        (job, more) => job.With(shop => shop with { BookPrices = [.. shop.BookPrices.Select(price => price with { Steps = [.. price.Steps.Select(step => step with { PerPage = step.PerPage + more })] })] }),
        (job, more) => job.With(shop => shop with { SetUp = new SetUp(shop.SetUp.Order + more, shop.SetUp.Edition, shop.SetUp.Part + more) }),
        (job, more) => job.With(shop => shop with { Finishing = [.. shop.Finishing.Select(operation => operation with { Each = operation.Each + more })] }),
        (job, more) => job.With(shop => shop with { Finishing = [.. shop.Finishing.Select(operation => operation with { Minimum = operation.Minimum + more })] }),
        (job, more) => job.WithOrder(order => order with { Minimum = order.Minimum + more }),
        (job, more) => job.WithOrder(order => order with { TaxRate = order.TaxRate + (more / 100m) }),
        (job, more) => job.WithOrder(order => order with { Delivery = order.Delivery is { } delivery ? delivery with { PerFurtherKilogram = delivery.PerFurtherKilogram + more } : null }),
        (job, more) => job.WithBench(bench => bench with { HourlyRate = bench.HourlyRate + more }),
        (job, more) => job.WithBench(bench => bench with { Consumables = [.. bench.Consumables.Select(consumable => consumable with { PerCopy = consumable.PerCopy + more })] }),
        (job, more) => job.WithEdition(edition => edition with { FixedCosts = [.. edition.FixedCosts.Select(cost => cost with { Amount = cost.Amount + more })] }),
    ];

    private static void Estimates(Action<Job, Estimate> holds) => JobGen.Any.Sample(job =>
    {
        if (job.Prepared().Estimate(job.Quantity) is { Succeeded: true } outcome)
        {
            holds(job, outcome.Value);
        }
    });

    private static string Written(Outcome<Estimate> outcome) =>
        outcome.Succeeded ? JsonSerializer.Serialize(outcome.Value, WithTuples) : string.Join("; ", outcome.Problems);
}
