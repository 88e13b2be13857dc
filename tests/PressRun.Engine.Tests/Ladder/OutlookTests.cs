using CsCheck;
using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Ladder;
using PressRun.Engine.Measures;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Ladder;

/// <summary>The plain job's goods are 0.25 a copy.</summary>
public sealed class OutlookTests
{
    [Fact]
    public void One_more_copy_costs_its_own_sheet() => Assert.Equal(0.25m, Look(Plain(), 100, 200).OneMoreCosts);

    [Fact]
    public void Free_delivery_is_told_with_the_copies_and_the_money_still_missing()
    {
        var delivery = new Delivery([new MassStep(Mass.FromKilograms(100m), 8m)], null, 30m);
        var outlook = Look(Plain().WithOrder(order => order with { Delivery = delivery }), 100, 200);
        Assert.Equal(new StepAhead(StepKind.FreeDelivery, "", 120, 0.25m - 8m, 30m, 5m) { Threshold = 30m }, outlook.FreeDelivery);
        Assert.Same(outlook.FreeDelivery, outlook.Next);
        Assert.Null(Look(Plain().WithOrder(order => order with { Delivery = delivery }), 120, 200).FreeDelivery);
    }

    [Fact]
    public void A_price_step_is_told_by_the_ink_or_stock_it_is_of()
    {
        var job = Plain().With(shop => shop with
        {
            Print = [Black(0.10m) with { Steps = Steps((1, 0.10m), (205, 0.05m)) }],
            Paper = [PaperAt(0.05m) with { Steps = Steps((1, 0.05m), (110, 0.04m)) }],
        });
        Assert.Equal(
            [(StepKind.Print, "black", 103, 205m), (StepKind.Paper, "plain", 110, 110m)],
            Look(job, 100, 200).Steps.Select(step => (step.Kind, step.Subject, step.Quantity, step.Threshold!.Value)));
    }

    [Fact]
    public void Discount_minimum_delivery_steps_books_and_sold_quantities_are_told_each_as_what_it_is()
    {
        Assert.Equal((StepKind.Discount, 120, 30m), First(Plain().WithOrder(order => order with { Discounts = [new DiscountStep(30m, 0.1m)] })));
        Assert.Equal((StepKind.MinimumReached, 120, 30m), First(Plain().WithOrder(order => order with { Minimum = 30m })));
        var delivery = new Delivery([new MassStep(G(440), 1m), new MassStep(G(4400), 2m)], null, null);
        Assert.Equal((StepKind.Delivery, 111, null), First(Plain().WithOrder(order => order with { Delivery = delivery })));
        var books = Plain().With(shop => shop with
        {
            Delivers = null,
            BookPrices = [new BookPrice(Binding.Saddle, 4, 4, null, [new BookStep(1, 1m, 0m), new BookStep(150, 0.9m, 0m)])],
        });
        Assert.Equal((StepKind.Book, 150, 150m), First(books));
        Assert.Equal((StepKind.SoldQuantity, 101, 250m), First(Plain().With(shop => shop with { Quantities = [100, 250] })));
    }

    [Fact]
    public void Further_kilograms_past_the_last_step_are_steps_too()
    {
        var job = Plain().WithOrder(order => order with { Delivery = new Delivery([new MassStep(G(200), 1m)], 3m, null) });
        Assert.Equal((StepKind.Delivery, 301), (Look(job, 100, 400).Next!.Kind, Look(job, 100, 400).Next!.Quantity)); // 4 g a sheet: 1200 g at 300.
    }

    [Fact]
    public void At_the_end_of_the_range_nothing_lies_ahead()
    {
        Assert.Null(Look(Plain(), 200, 200).OneMoreCosts);
        Assert.Empty(Look(Plain(), 200, 200).Steps);
        Assert.Null(Look(Plain(), 1_000_000, 1_000_000).Next);
    }

    [Fact]
    public void Where_the_shop_sells_no_more_the_outlook_ends() =>
        Assert.Equal(0m, Look(Plain().With(shop => shop with { Quantities = [102] }), 100, 200).OneMoreCosts);

    [Fact]
    public void Every_step_ahead_equals_the_difference_of_two_costings() =>
        Gen.Select(JobGen.Any, Gen.Int[1, 150]).Sample((job, quantity) =>
        {
            var prepared = job.Prepared();
            if (prepared.LookAhead(quantity, quantity + 200) is not { Succeeded: true } outcome)
            {
                return;
            }

            var outlook = outcome.Value;
            var here = prepared.Estimate(quantity).Value.Totals;
            if (outlook.OneMoreCosts is { } oneMore)
            {
                Assert.Equal(prepared.LandedCost(quantity + 1) - here.LandedCost, oneMore);
            }

            Assert.Equal(outlook.Steps.OrderBy(step => step.Quantity), outlook.Steps);
            Assert.All(outlook.Steps, step =>
            {
                var (there, before) = (prepared.Estimate(step.Quantity).Value.Totals, prepared.Estimate(step.Quantity - 1).Value.Totals);
                Assert.Equal(there.LandedCost - before.LandedCost, step.CostChange);
                Assert.Equal((there.Goods, there.Goods - here.Goods), (step.Goods, step.GoodsMore));
            });
        });

    [Fact]
    public void Free_delivery_ahead_is_the_first_quantity_at_which_delivery_is_free() =>
        Gen.Select(JobGen.Any.Where(job => job.Shop.Order.Delivery?.FreeFrom is not null && job.Shop.Quantities.Count == 0), Gen.Int[1, 150]).Sample((job, quantity) =>
        {
            var prepared = job.Prepared();
            var free = Enumerable.Range(quantity, 201).Select(copies => Value(prepared.Estimate(copies).Value.Totals) >= job.Shop.Order.Delivery!.FreeFrom).ToList();
            var first = free.Skip(1).Zip(free, (now, before) => now && !before).ToList().IndexOf(true);
            Assert.Equal(first < 0 ? null : quantity + first + 1, prepared.LookAhead(quantity, quantity + 200).Value.FreeDelivery?.Quantity);
        });

    [Fact]
    public void Steps_between_two_quantities_begin_with_those_ahead_of_the_first() =>
        Gen.Select(JobGen.Any, Gen.Int[1, 100]).Sample((job, quantity) =>
        {
            var between = job.Prepared().StepsBetween(quantity, quantity + 120);
            if (between.Succeeded)
            {
                var ahead = job.Prepared().LookAhead(quantity, quantity + 120).Value.Steps;
                Assert.Equal(ahead, between.Value.DistinctBy(step => (step.Kind, step.Subject)));
            }
        });

    [Fact]
    public void Another_sheet_that_is_cheaper_from_a_quantity_on_is_told_with_its_part()
    {
        // By hand: a small sheet holds one piece and costs 0.25, a large one holds two and costs 0.26, which is less for two copies and more for one.
        var job = Plain();
        var small = job.Shop.Sheets[0];
        var large = small with { Id = "large", Width = 2 * small.Width };
        job = job.With(shop => shop with
        {
            Sheets = [small, large],
            Print = [.. shop.Print, .. shop.Print.Select(price => price with { SheetId = "large" })],
            Paper = [.. shop.Paper, .. shop.Paper.Select(price => price with { SheetId = "large", Steps = [.. price.Steps.Select(step => step with { Each = step.Each + 0.01m })] })],
        });

        var step = Assert.Single(Look(job, 1, 2).Steps, step => step.Kind == StepKind.Sheet);
        Assert.Equal((job.Edition.Parts[0].Name, 2, "large"), (step.Subject, step.Quantity, step.Sheet!.Id));
    }

    [Fact]
    public void Where_the_cost_falls_something_is_told_that_changed() =>
        Gen.Select(JobGen.Any, Gen.Int[1, 150]).Sample((job, quantity) =>
        {
            var prepared = job.Prepared();
            if (prepared.StepsBetween(quantity, quantity + 200) is not { Succeeded: true } steps)
            {
                return;
            }

            var falls = LadderJump.Of(prepared.Curve(quantity, quantity + 200).Value).Where(jump => jump.Change < 0m).Select(jump => jump.At);
            Assert.Empty(falls.Except(steps.Value.Select(step => step.Quantity)));
        });

    private static decimal Value(CostTotals totals) => totals.Goods - totals.Discount + totals.MinimumTopUp;

    private static Outlook Look(Job job, int quantity, int to) => job.Prepared().LookAhead(quantity, to).Value;

    private static (StepKind, int, decimal?) First(Job job)
    {
        var step = Look(job, 100, 200).Next!;
        return (step.Kind, step.Quantity, step.Threshold);
    }
}
