using PressRun.Engine.Bench;
using PressRun.Engine.Copies;
using PressRun.Engine.Costing;
using PressRun.Engine.Tests.Support;

namespace PressRun.Engine.Tests.Copies;

public class PrintingActualTests
{
    private static readonly PrintingActual Evening = new(
        144, 250.10m, 12m, 4.30m, 25m, 12.50m, [new("stitch", 95m, 152, 5), new("fold", 61m, 147, 3)]);

    [Fact]
    public void The_hours_at_their_price_and_all_that_was_paid_are_the_landed_cost()
    {
        Assert.Equal(2.6m, Evening.Hours);
        Assert.Equal(32.50m, Evening.Labour(2));
        Assert.Equal(250.10m - 12m + 4.30m + 25m + 32.50m, Evening.LandedCost(2));
    }

    [Fact]
    public void The_amounts_of_plan_and_printing_each_add_up_to_their_landed_cost()
    {
        var plan = PreparedJob.Prepare(ExampleJob.Create()).Value.Estimate(150).Value;

        var variances = ActualAgainstPlan.Compare(plan, Evening, 2);

        VarianceSubject[] amounts = [VarianceSubject.Shop, VarianceSubject.Labour, VarianceSubject.Consumables, VarianceSubject.FixedCosts];
        var landed = variances.Single(variance => variance.Subject == VarianceSubject.LandedCost);
        Assert.Equal(landed.Planned, variances.Where(variance => amounts.Contains(variance.Subject)).Sum(variance => variance.Planned));
        Assert.Equal(landed.Actual, variances.Where(variance => amounts.Contains(variance.Subject)).Sum(variance => variance.Actual));
        Assert.Equal(plan.Totals.LandedCost, landed.Planned);
        Assert.Equal(-6m, variances[0].Difference);
        Assert.Equal(landed.Actual / 144, variances[^1].Actual);
    }

    [Fact]
    public void The_parts_of_the_invoice_and_what_they_leave_add_up_to_what_the_shop_is_paid()
    {
        var plan = PreparedJob.Prepare(ExampleJob.Create()).Value.Estimate(150).Value;
        var billed = Evening with { Invoice = [new(InvoicePart.Delivery, 14m), new(InvoicePart.Printing, 120m)] };

        var parts = ActualAgainstPlan.Invoice(plan, billed);

        Assert.Equal([InvoicePart.Printing, InvoicePart.Delivery, InvoicePart.Rest], parts.Select(part => part.Part));
        Assert.Equal(plan.Totals.Delivery, parts[1].Planned);
        Assert.Equal((plan.Totals.ShopTotal, billed.ShopPaid), (parts.Sum(part => part.Planned), parts.Sum(part => part.Actual)));
        Assert.Equal(250.10m - 134m, parts[2].Actual);
        Assert.Empty(ActualAgainstPlan.Invoice(plan, Evening));
    }

    [Fact]
    public void What_cost_and_what_copies_make_of_a_copys_cost_add_up_to_its_difference()
    {
        var plan = PreparedJob.Prepare(ExampleJob.Create()).Value.Estimate(150).Value;

        var (byCost, byCopies) = ActualAgainstPlan.WhyUnitCost(plan, Evening, 2);

        Assert.Equal(Evening.UnitCost(2) - plan.UnitCost, byCost + byCopies, 12);
        Assert.True(byCopies > 0m);
        Assert.Equal(0m, ActualAgainstPlan.WhyUnitCost(plan, Evening with { GoodCopies = 150 }, 2).ByCopies);
    }
}
