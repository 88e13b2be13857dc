using PressRun.Data.Import.Tables;
using PressRun.Engine.Costing;
using PressRun.Engine.Measures;
using PressRun.JobFile;

namespace PressRun.Data.Import.Shapes;

/// <summary>Finishing operations, one a row.</summary>
public sealed class FinishingShape : TableShape<Finishing>
{
    /// <inheritdoc/>
    public override string Name => "finishing";

    /// <inheritdoc/>
    public override IReadOnlyList<Column> Columns { get; } =
    [
        Cells.NameColumn("Finishing", "name|finishing|operation|service|description|verarbeitung|finition"),
        new("per", "Counted by", PrintWords.Unit)
        {
            Required = true, Words = Cells.Words("per|counted by|unit|basis|je|par"),
        },
        StepColumns.Each("Each") with { Step = StepPart.None, Required = true },
        new("minimum", "At least", Cells.Money) { Words = Cells.Words("minimum|at least|min charge|minimum charge|mindestens") },
    ];

    /// <inheritdoc/>
    public override IEnumerable<object?[]> Rows(Finishing thing)
    {
        yield return [thing.Name, thing.Per, thing.Each, thing.Minimum == 0m ? null : thing.Minimum];
    }

    /// <inheritdoc/>
    public override Finishing Thing(IReadOnlyList<object?[]> rows, Refuse refuse) =>
        new(rows[0].Text(0), rows[0].Value<FinishingUnit>(1), rows[0].Value<decimal>(2), rows[0].Value<decimal>(3));

    /// <inheritdoc/>
    public override (string Key, int Column)? KeyOf(Finishing thing) => (thing.Name, 0);
}

/// <summary>A discount of an order, as a row.</summary>
/// <param name="Step">The step.</param>
public sealed record Discount(DiscountStep Step);

/// <summary>Discounts by goods value, one a row; they rise.</summary>
public sealed class DiscountShape : TableShape<Discount>
{
    /// <inheritdoc/>
    public override string Name => "discounts";

    /// <inheritdoc/>
    public override IReadOnlyList<Column> Columns { get; } =
    [
        new("goodsFrom", "Goods from", Cells.Money) { Required = true, Words = Cells.Words("goods from|from|value|order value|ab") },
        new("rate", "Off", Cells.Percent) { Required = true, Words = Cells.Words("rate|off|discount|rabatt|remise") },
    ];

    /// <inheritdoc/>
    public override IEnumerable<object?[]> Rows(Discount thing)
    {
        yield return [thing.Step.From, thing.Step.Rate];
    }

    /// <inheritdoc/>
    public override Discount Thing(IReadOnlyList<object?[]> rows, Refuse refuse) => new(new DiscountStep(rows[0].Value<decimal>(0), rows[0].Value<decimal>(1)));

    /// <inheritdoc/>
    public override (string Key, int Column)? KeyOf(Discount thing) => ($"{thing.Step.From / 1.0000000000000000000000000000m}", 0);
}

/// <summary>A price of delivery, as a row.</summary>
/// <param name="Step">The step.</param>
public sealed record DeliveryPrice(MassStep Step);

/// <summary>Delivery by freight mass, one a row.</summary>
public sealed class DeliveryShape : TableShape<DeliveryPrice>
{
    /// <summary>The heaviest mass that a step may name. A price up to it holds whatever an order weighs, and stands without a mass.</summary>
    public static Mass Whatever { get; } = JobRules.MassAboveNone.Most;

    /// <inheritdoc/>
    public override string Name => "delivery";

    /// <inheritdoc/>
    public override IReadOnlyList<Column> Columns { get; } =
    [
        new("most", "Up to", new MassCell(JobRules.MassAboveNone)) { Words = Cells.Words("up to|most|weight|max weight|bis|gewicht|poids") },
        new("price", "Delivery", Cells.Money) { Required = true, Words = Cells.Words("price|delivery|shipping|cost|preis|prix") },
    ];

    /// <inheritdoc/>
    public override IEnumerable<object?[]> Rows(DeliveryPrice thing)
    {
        yield return [thing.Step.Most == Whatever ? null : thing.Step.Most, thing.Step.Price];
    }

    /// <inheritdoc/>
    public override DeliveryPrice Thing(IReadOnlyList<object?[]> rows, Refuse refuse) =>
        new(new MassStep(rows[0][0] is Mass most ? most : Whatever, rows[0].Value<decimal>(1)));

    /// <inheritdoc/>
    public override (string Key, int Column)? KeyOf(DeliveryPrice thing) => ($"{thing.Step.Most.Grams / 1.0000000000000000000000000000m}", 0);
}
