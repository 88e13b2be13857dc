using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Costing;

/// <summary>The plain job's hundred copies are goods of 25.00: each rule of the order is seen by itself.</summary>
public sealed class OrderOfWorkTests
{
    [Fact]
    public void Print_counts_both_printed_sides_and_paper_the_sheet()
    {
        var estimate = Plain().Estimate();
        Assert.Equal((200m, 0.10m, 20m), Figures(estimate.Line(CostCode.Print)));
        Assert.Equal((100m, 0.05m, 5m), Figures(estimate.Line(CostCode.Paper)));
        Assert.Equal(25m, estimate.Totals.LandedCost);
    }

    [Fact]
    public void An_unprinted_side_is_free_and_two_inks_are_two_lines()
    {
        var job = Plain()
            .With(shop => shop with { Print = [Black(0.10m), Black(0.40m) with { Ink = Ink.Colour }] })
            .WithEdition(edition => edition with { Parts = [Part(4, "cover", outside: Ink.Colour, inside: Ink.None), Part(4, outside: Ink.Black, inside: Ink.Colour)] });
        Assert.Equal(
            [("colour", 200m), ("black", 100m)], job.Estimate().Lines.Where(line => line.Code == CostCode.Print).Select(line => (line.Subject, line.Quantity)));
    }

    [Fact]
    public void An_odd_last_page_of_prints_leaves_one_blank_side_that_is_still_charged()
    {
        var job = Plain().WithEdition(edition => edition with { Binding = Binding.Loose, Parts = [Part(3)] });
        Assert.Equal(200m, job.Estimate().Line(CostCode.Print).Quantity); // Two leaves on one sheet, both sides.
    }

    [Fact]
    public void Impressions_of_one_ink_count_together_over_all_parts()
    {
        var job = Plain()
            .With(shop => shop with { Print = [Black(0.10m) with { Steps = Steps((1, 0.10m), (301, 0.08m)) }] })
            .WithEdition(edition => edition with { Parts = [Part(4, "cover"), Part(4)] });
        Assert.Equal((400m, 0.08m, 32m), Figures(job.Estimate().Line(CostCode.Print)));
    }

    [Fact]
    public void All_units_cost_the_step_that_is_reached_and_a_quantity_equal_to_it_reaches_it()
    {
        var job = Plain().With(shop => shop with { Print = [Black(0.10m) with { Steps = Steps((1, 0.10m), (200, 0.07m)) }] });
        Assert.Equal((200m, 0.07m, 14m), Figures(job.Estimate().Line(CostCode.Print)));
        Assert.Equal((198m, 0.10m, 19.80m), Figures((job with { Quantity = 99 }).Estimate().Line(CostCode.Print)));
    }

    [Fact]
    public void Incremental_units_cost_each_their_own_step_a_line_for_every_step()
    {
        var job = Plain().With(shop => shop with
        {
            Print = [new PrintPrice(Ink.Black, "square", Steps((1, 0.10m), (101, 0.08m), (151, 0.05m)), StepRule.Incremental)],
        });
        Assert.Equal(
            [(100m, 0.10m, 10m), (50m, 0.08m, 4m), (50m, 0.05m, 2.50m)], job.Estimate().Lines.Where(line => line.Code == CostCode.Print).Select(Figures));
    }

    [Fact]
    public void Set_up_is_charged_once_an_order_once_an_edition_and_once_a_part()
    {
        var job = Plain()
            .With(shop => shop with { SetUp = new SetUp(5m, 3m, 1.50m) })
            .WithEdition(edition => edition with { Parts = [Part(4, "cover"), Part(4)] });
        var estimate = job.Estimate();
        Assert.Equal((1m, 5m, 5m), Figures(estimate.Line(CostCode.SetUpOrder)));
        Assert.Equal((1m, 3m, 3m), Figures(estimate.Line(CostCode.SetUpEdition)));
        Assert.Equal((2m, 1.50m, 3m), Figures(estimate.Line(CostCode.SetUpPart)));
    }

    [Theory]
    [InlineData(FinishingUnit.Copy, 125)]
    [InlineData(FinishingUnit.Sheet, 250)]
    [InlineData(FinishingUnit.Piece, 250)]
    [InlineData(FinishingUnit.Cut, 375)]
    [InlineData(FinishingUnit.Edition, 1)]
    public void Finishing_is_counted_on_the_copies_started(FinishingUnit unit, int count)
    {
        var job = Plain()
            .With(shop => shop with { Spoilage = 0.2m, Finishing = [new Finishing("operation", unit, 0.03m, 0m)], Sheets = [Sheet(width: 210, height: 210)] })
            .WithEdition(edition => edition with { Parts = [Part(8)], Trim = new Trim(Mm(1), Mm(1), Mm(1), Length.Zero) });
        Assert.Equal((count, 0.03m, count * 0.03m), Figures(job.Estimate().Line(CostCode.Finishing)));
    }

    [Fact]
    public void Where_the_minimum_of_an_operation_wins_the_line_still_tells_count_and_price()
    {
        var job = Plain().With(shop => shop with { Finishing = [new Finishing("operation", FinishingUnit.Copy, 0.01m, 6m)] });
        Assert.Equal((100m, 0.01m, 6m), Figures(job.Estimate().Line(CostCode.Finishing)));
    }

    [Fact]
    public void A_line_is_rounded_half_away_from_zero_and_the_total_adds_rounded_lines()
    {
        var job = Plain().With(shop => shop with { Print = [Black(0.001m)], Paper = [PaperAt(0.001m)] }) with { Quantity = 5 };
        Assert.Equal((0.01m, 0.01m, 0.02m), (job.Estimate().Line(CostCode.Print).Amount, job.Estimate().Line(CostCode.Paper).Amount, job.Estimate().Totals.Goods));
    }

    [Fact]
    public void A_price_that_rounds_to_nothing_has_no_line() =>
        Assert.DoesNotContain(
            (Plain().With(shop => shop with { Paper = [PaperAt(0.0009m)] }) with { Quantity = 5 }).Estimate().Lines, line => line.Code == CostCode.Paper);

    [Fact]
    public void The_highest_discount_that_the_goods_reach_is_taken_off_all_of_them()
    {
        var job = Plain().WithOrder(order => order with { Discounts = [new DiscountStep(10m, 0.02m), new DiscountStep(25m, 0.05m), new DiscountStep(26m, 0.5m)] });
        Assert.Equal(-1.25m, job.Estimate().Line(CostCode.Discount).Amount);
        Assert.Equal((1.25m, 23.75m), (job.Estimate().Totals.Discount, job.Estimate().Totals.ShopTotal));
    }

    [Fact]
    public void The_minimum_looks_at_goods_less_discount()
    {
        var job = Plain().WithOrder(order => order with { Discounts = [new DiscountStep(25m, 0.10m)], Minimum = 25m });
        Assert.Equal((2.50m, 25m), (job.Estimate().Line(CostCode.Minimum).Amount, job.Estimate().Totals.ShopTotal));
        Assert.Equal(0m, Plain().WithOrder(order => order with { Minimum = 25m }).Estimate().Totals.MinimumTopUp);
    }

    [Fact]
    public void Free_delivery_looks_at_goods_less_discount_with_the_top_up()
    {
        var delivery = new Delivery([new MassStep(Mass.FromKilograms(100m), 8m)], null, 25m);
        var job = Plain().WithOrder(order => order with { Discounts = [new DiscountStep(25m, 0.10m)], Delivery = delivery });
        Assert.Equal(8m, job.Estimate().Totals.Delivery);
        Assert.Equal(0m, job.WithOrder(order => order with { Minimum = 25m }).Estimate().Totals.Delivery);
    }

    [Theory]
    [InlineData(false, 1.50, 39.50)] // 6 % of 25.00.
    [InlineData(true, 2.28, 40.28)] // 6 % of 38.00.
    public void Tax_is_rounded_once_on_the_goods_and_where_it_is_taxed_on_delivery(bool taxed, double tax, double total)
    {
        var delivery = new Delivery([new MassStep(Mass.FromKilograms(100m), 13m)], null, null);
        var job = Plain().WithOrder(order => order with { Delivery = delivery, TaxRate = 0.06m, TaxOnDelivery = taxed });
        Assert.Equal(((decimal)tax, (decimal)total), (job.Estimate().Totals.Tax, job.Estimate().Totals.ShopTotal));
    }

    [Fact]
    public void Tax_is_reckoned_on_the_sum_and_not_line_by_line()
    {
        // MON-08. Rounding tax by line or by total (HMRC, VATREC12010): 20 % of 3 × 0.99 is 0.60 by line and 0.59 by total; ours is by total.
        var job = Plain().With(shop => shop with { Print = [Black(0m)], Paper = [PaperAt(0m)], SetUp = new SetUp(0.99m, 0.99m, 0.99m) }).WithOrder(order => order with { TaxRate = 0.20m });
        Assert.Equal((2.97m, 0.59m), (job.Estimate().Totals.Goods, job.Estimate().Totals.Tax));
    }

    [Fact]
    public void Tax_that_is_reclaimed_is_paid_and_shown_but_is_no_cost()
    {
        var job = Plain().WithOrder(order => order with { TaxRate = 0.06m }) with { ReclaimTax = true };
        var totals = job.Estimate().Totals;
        Assert.Equal((1.50m, 26.50m, 26.50m, 25m), (totals.Tax, totals.ShopTotal, totals.CashOut, totals.LandedCost));
    }

    [Fact]
    public void Fixed_costs_are_added_as_they_are()
    {
        var job = Plain().WithEdition(edition => edition with { FixedCosts = [new FixedCost("art", 100m), new FixedCost("proof", 8.005m)] });
        Assert.Equal([("art", 100m), ("proof", 8.01m)], job.Estimate().Lines.Where(line => line.Code == CostCode.Fixed).Select(line => (line.Subject, line.Amount)));
        Assert.Equal((108.01m, 133.01m, 133.01m), (job.Estimate().Totals.FixedCosts, job.Estimate().Totals.LandedCost, job.Estimate().Totals.CashOut));
    }

    [Fact]
    public void A_currency_without_a_minor_unit_rounds_lines_to_whole_units()
    {
        var job = Plain().WithOrder(order => order with { TaxRate = 0.10m }) with { Currency = Currency.Find("JPY")! };
        Assert.Equal((25m, 3m), (job.Estimate().Totals.Goods, job.Estimate().Totals.Tax));
    }

    private static (decimal, decimal, decimal) Figures(CostLine line) => (line.Quantity, line.Each, line.Amount);
}
