using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.Engine.Costing;

/// <content>What follows from an order's goods: freight, discount, minimum, delivery, tax and the press's own costs.</content>
public sealed partial class PreparedJob
{
    private const decimal SecondsPerHour = 3600m;
    private const decimal SecondsPerMinute = 60m;

    private static readonly Mass HeaviestFreight = Mass.FromKilograms(1_000_000_000m);

    private void Freight(long started, decimal flatGrams, ref OrderFigures figures)
    {
        var second = OtherHalf is null ? 0L : started / 2;
        var goods = Delivers == Delivered.FlatSheets ? Mass.FromGrams(flatGrams) : ((started - second) * sentCopy) + (second * sentOtherHalf);
        figures.FreightMass = goods.Settled();
        if (figures.FreightMass > HeaviestFreight)
        {
            figures.Problem = new Problem("$", null, $"The freight would weigh more than {Text.Kg(HeaviestFreight)}; look for a mass or a size that is too large.");
            return;
        }

        if (job.Shop.Order.Carton is not { } carton)
        {
            return;
        }

        figures.Cartons = carton.For(figures.FreightMass);
        figures.HeaviestCarton = Mass.FromGrams(Math.Min(figures.FreightMass.Grams, carton.Capacity.Grams)) + carton.Tare;
        figures.FreightMass += figures.Cartons * carton.Tare;
    }

    // What is sent of one copy where the shop does not send flat sheets.
    private Mass Sent(BookBlock block) => Delivers switch
    {
        Delivered.CutPieces => block.UntrimmedMass,
        Delivered.UntrimmedCopies => block.UntrimmedMass + job.Bench.FittingsMass,
        _ => CopyOf(block).Mass,
    };

    // Each step works on what the one before leaves.
    private void Close<TSink>(long started, ref OrderFigures figures, ref TSink sink)
        where TSink : struct, ILineSink
    {
        var (rules, currency, goods) = (job.Shop.Order, job.Currency, figures.Totals.Goods);
        figures.DiscountStep = DiscountReached(goods);
        var discount = figures.DiscountStep < 0 ? 0m : currency.Round(goods * rules.Discounts[figures.DiscountStep].Rate);
        sink.Add(new CostLine(CostCode.Discount, string.Empty, 1m, -discount, -discount));
        var value = goods - discount;
        var topUp = value < rules.Minimum ? currency.Round(rules.Minimum - value) : 0m;
        sink.Add(new CostLine(CostCode.Minimum, string.Empty, 1m, topUp, topUp));
        value += topUp;
        var delivery = currency.Round(Deliver(value, ref figures));
        sink.Add(new CostLine(CostCode.Delivery, string.Empty, 1m, delivery, delivery));
        var tax = currency.Round((value + (rules.TaxOnDelivery ? delivery : 0m)) * rules.TaxRate);
        sink.Add(new CostLine(CostCode.Tax, string.Empty, 1m, tax, tax));
        var shopTotal = value + delivery + tax;

        var seconds = benchTime.Seconds(started);
        // Multiplied before it is divided: an amount that ends on half a minor unit is then held exactly.
        var labour = currency.Round(seconds * job.Bench.HourlyRate / SecondsPerHour);
        var hours = seconds / SecondsPerHour;
        sink.Add(new CostLine(CostCode.BenchLabour, string.Empty, decimal.Round(hours, 4, MidpointRounding.AwayFromZero), job.Bench.HourlyRate, labour));
        var usedUp = 0m;
        foreach (var consumable in consumables)
        {
            usedUp += Line(CostCode.BenchConsumable, consumable.Name, started, consumable.PerCopy, ref sink);
        }

        foreach (var cost in fixedCosts)
        {
            Once(CostCode.Fixed, cost.Name, cost.Amount, ref sink);
        }

        figures.Totals = new CostTotals(
            goods,
            discount,
            topUp,
            delivery,
            tax,
            shopTotal,
            hours,
            labour,
            usedUp,
            fixedCostsSum,
            shopTotal + labour + usedUp + fixedCostsSum - (job.ReclaimTax ? tax : 0m),
            shopTotal + usedUp + fixedCostsSum + (job.Bench.Paid ? labour : 0m));
    }

    private int DiscountReached(decimal goods)
    {
        var index = job.Shop.Order.Discounts.Count - 1;
        while (index >= 0 && job.Shop.Order.Discounts[index].From > goods)
        {
            index--;
        }

        return index;
    }

    private decimal Deliver(decimal value, ref OrderFigures figures)
    {
        if (job.Shop.Order.Delivery is not { } delivery)
        {
            return 0m;
        }

        if (value >= delivery.FreeFrom)
        {
            figures.DeliveryIsFree = true;
            return 0m;
        }

        var steps = delivery.Steps;
        for (var index = 0; index < steps.Count; index++)
        {
            if (figures.FreightMass <= steps[index].Most)
            {
                figures.DeliveryStep = index;
                return steps[index].Price;
            }
        }

        var last = steps.Count > 0 ? steps[^1] : default;
        var furtherKilograms = decimal.Ceiling((figures.FreightMass - last.Most).Kilograms);
        figures.DeliveryStep = steps.Count + furtherKilograms;
        if (delivery.PerFurtherKilogram is { } perKilogram)
        {
            return last.Price + (furtherKilograms * perKilogram);
        }

        if (steps.Count > 0)
        {
            figures.Problem = new Problem(
                "$.shop.order.delivery.perFurtherKg", null, $"The freight weighs {Text.Kg(figures.FreightMass)}, more than the last step's {Text.Kg(last.Most)}, and there is no price for further kilograms.");
        }

        return 0m;
    }
}
