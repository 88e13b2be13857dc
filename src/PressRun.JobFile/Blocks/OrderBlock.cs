using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.JobFile.Reading;

namespace PressRun.JobFile.Blocks;

/// <summary>Reads the rules of a whole order.</summary>
internal static class OrderBlock
{
    private const string Rule = "Write order rules as an object with minimum, discounts, delivery, carton, taxRate, taxOnDelivery and leadDays.";
    private const string DeliveryRule = "Write delivery as { \"steps\", \"perFurtherKg\", \"freeFrom\" }.";
    private const string CartonRule = "Write a carton as { \"capacity\", \"tare\" }.";

    /// <summary>Reads the member <c>order</c>; a shop without one charges nothing beyond its goods.</summary>
    public static OrderRules ReadMember(JsonBlock shop)
    {
        if (shop.Block("order", Need.May, Rule) is not { } block)
        {
            return OrderRules.None;
        }

        var rules = new OrderRules(
            block.Number("minimum", JobRules.Amount) ?? 0m,
            Steps.ReadDiscounts(block),
            ReadDelivery(block),
            ReadCarton(block),
            block.Number("taxRate", JobRules.Rate) ?? 0m,
            block.Flag("taxOnDelivery") ?? false,
            block.Count("leadDays", JobRules.Days) ?? 0);
        block.Close();
        return rules;
    }

    private static Delivery? ReadDelivery(JsonBlock order)
    {
        if (order.Block("delivery", Need.May, DeliveryRule) is not { } block)
        {
            return null;
        }

        var perFurtherKilogram = block.Number("perFurtherKg", JobRules.Amount);
        var delivery = new Delivery(
            Steps.ReadMasses(block, atLeastOne: !block.Has("perFurtherKg")),
            perFurtherKilogram,
            block.Number("freeFrom", JobRules.Amount));
        block.Close();
        return delivery;
    }

    private static Carton? ReadCarton(JsonBlock order)
    {
        if (order.Block("carton", Need.May, CartonRule) is not { } block)
        {
            return null;
        }

        var carton = new Carton(
            block.Mass("capacity", JobRules.CartonCapacity, Need.Must) ?? default,
            block.Mass("tare", JobRules.MassOrNone) ?? Mass.Zero);
        block.Close();
        return carton;
    }
}
