using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;
using PressRun.Engine.Tests.Support;
using static PressRun.Engine.Tests.Support.Jobs;

namespace PressRun.Engine.Tests.Costing;

public sealed class FreightTests
{
    // 125 copies of one folded piece of 206 × 204 mm, 200 × 200 mm when trimmed, on a sheet of 300 × 400 mm, at 100 g/m², with 1 g of fittings.
    private static readonly Job Hundred = Plain()
        .With(shop => shop with { Sheets = [Sheet(width: 300, height: 400)], Spoilage = 0.2m })
        .WithBench(bench => bench with { FittingsMass = G(1) })
        .WithEdition(edition => edition with { Trim = new Trim(Mm(2), Mm(2), Mm(3), Length.Zero) });

    [Theory]
    [InlineData(null, 125 * 12.0)]
    [InlineData(Delivered.FlatSheets, 125 * 12.0)]
    [InlineData(Delivered.CutPieces, 125 * 4.2024)]
    [InlineData(Delivered.UntrimmedCopies, 125 * 5.2024)]
    [InlineData(Delivered.TrimmedCopies, 125 * 5.0)]
    public void Freight_is_what_the_shop_sends_of_all_copies_started(Delivered? delivers, double grams) =>
        Assert.Equal((decimal)grams, Hundred.With(shop => shop with { Delivers = delivers, Layout = Engine.Sheets.Layout.CutAndStack }).Estimate().Freight.Mass.Grams);

    [Fact]
    public void A_copy_that_was_weighed_is_sent_as_it_weighs()
    {
        var job = Hundred.With(shop => shop with { Delivers = Delivered.TrimmedCopies }).WithEdition(edition => edition with { Weighed = new Weighed(G(7), null) });
        Assert.Equal(125m * 7m, job.Estimate().Freight.Mass.Grams);
        Assert.Equal(G(7), job.Estimate().Copy.Mass);
    }

    [Fact]
    public void Cartons_hold_their_capacity_of_contents_and_add_their_tare()
    {
        var job = Hundred.With(shop => shop with { Delivers = Delivered.TrimmedCopies }).WithOrder(order => order with { Carton = new Carton(G(300), G(50)) });
        Assert.Equal((3L, 625m + 150m), (job.Estimate().Freight.Cartons, job.Estimate().Freight.Mass.Grams));
        var full = job.WithOrder(order => order with { Carton = new Carton(G(625), G(50)) });
        Assert.Equal((1L, 675m), (full.Estimate().Freight.Cartons, full.Estimate().Freight.Mass.Grams));
    }

    [Fact]
    public void A_carton_of_forty_pounds_holds_36_copies_of_1_09_pounds()
    {
        // SAF-04. Thomson-Shore, guide page on weight: a full carton is about 40 lb; rounded down; computed.
        Assert.Equal(1, Cartons(36));
        Assert.Equal(2, Cartons(37));

        static long Cartons(int copies) => (Bound(1.09m) with { Quantity = copies })
            .WithOrder(order => order with { Carton = new Carton(Mass.FromPounds(40m), Mass.Zero) }).Estimate().Freight.Cartons;
    }

    [Fact]
    public void Five_hundred_copies_with_the_printers_allowance_for_packing_weigh_600_pounds()
    {
        // WGT-07. Thomson-Shore, guide page on weight: add a tenth to 1.09 lb, round up to 1.20 lb, times 500 copies; computed.
        Assert.Equal(600m, (Bound(1.20m) with { Quantity = 500 }).Estimate().Freight.Mass.Pounds);
    }

    [Theory]
    [InlineData(23.0, false)]
    [InlineData(23.001, true)]
    public void A_carton_over_23_kilograms_with_its_tare_asks_for_care_in_lifting(double kilograms, bool cautioned)
    {
        // Load constant of the revised NIOSH lifting equation (Waters and others 1993).
        var job = Bound(1m).WithOrder(order => order with { Carton = new Carton(Mass.FromKilograms((decimal)kilograms - 0.5m), G(500)) });
        var warnings = job.Estimate().Warnings;
        Assert.Equal(cautioned, warnings.Any(warning => warning.Code == WarningCode.HeavyCarton));
    }

    [Theory]
    [InlineData(4, 1000, 8)] // Equal to a step's mass takes that step.
    [InlineData(4, 1001, 9)]
    [InlineData(4, 2000, 9)]
    [InlineData(4, 2001, 13)] // A started kilogram past the last.
    [InlineData(4, 3001, 17)]
    public void Delivery_takes_the_step_that_the_freight_reaches_and_then_every_started_kilogram(int perKilogram, int grams, int price)
    {
        var delivery = new Delivery([new MassStep(G(1000), 8m), new MassStep(G(2000), 9m)], perKilogram, null);
        Assert.Equal(price, Weighing(grams).WithOrder(order => order with { Delivery = delivery }).Estimate().Totals.Delivery);
    }

    [Fact]
    public void Freight_past_the_last_step_is_refused_where_further_kilograms_have_no_price()
    {
        var delivery = new Delivery([new MassStep(G(1000), 8m)], null, 100m);
        var job = Weighing(1001).WithOrder(order => order with { Delivery = delivery });
        Assert.Equal("$.shop.order.delivery.perFurtherKg", Assert.Single(job.Prepared().Estimate(1).Problems).Path);
        Assert.Equal("$.shop.order.delivery.perFurtherKg", job.Prepared().LandedCost(1, out _)!.Path);
        var dear = job.With(shop => shop with { SetUp = new SetUp(100m, 0m, 0m) });
        Assert.Equal(0m, dear.Estimate().Totals.Delivery);
    }

    [Fact]
    public void Delivery_without_steps_charges_every_started_kilogram_or_nothing()
    {
        Assert.Equal(6m, Weighing(1001).WithOrder(order => order with { Delivery = new Delivery([], 3m, null) }).Estimate().Totals.Delivery);
        Assert.Equal(0m, Weighing(1001).WithOrder(order => order with { Delivery = new Delivery([], null, null) }).Estimate().Totals.Delivery);
    }

    private static Job Bound(decimal pounds) => Plain()
        .With(shop => shop with { Delivers = Delivered.TrimmedCopies })
        .WithEdition(edition => edition with { Weighed = new Weighed(Mass.FromPounds(pounds), null) });

    private static Job Weighing(int grams) => Plain()
        .With(shop => shop with { Delivers = Delivered.TrimmedCopies })
        .WithEdition(edition => edition with { Weighed = new Weighed(G(grams), null) }) with
    { Quantity = 1 };
}
