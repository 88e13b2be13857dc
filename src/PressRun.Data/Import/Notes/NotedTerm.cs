using PressRun.Data.Import.Shapes;
using PressRun.Engine.Costing;

namespace PressRun.Data.Import.Notes;

/// <summary>A line of a file that holds no row of its table.</summary>
/// <param name="Row">Its row as a spreadsheet counts it.</param>
/// <param name="Text">What it says.</param>
public sealed record NoteLine(int Row, string Text);

/// <summary>A term of a shop that a note states. It is only read: whoever keeps the list says whether it is taken.</summary>
/// <param name="Line">Where it stands.</param>
public abstract record NotedTerm(NoteLine Line)
{
    /// <summary>Key of the single term of a list that it would replace; null where it is none of <see cref="Terms"/>.</summary>
    public virtual string? Key => null;

    /// <summary>True where a list with it can be stored.</summary>
    public virtual bool Fits(Shop list) => true;

    /// <summary>The list with it.</summary>
    public abstract Shop Into(Shop list);

    /// <summary>A list with all of some terms.</summary>
    public static Shop Into(Shop list, IEnumerable<NotedTerm> terms) => terms.Aggregate(list, (with, term) => term.Into(with));
}

/// <summary>Tax that comes on top of the prices.</summary>
/// <param name="Line">Where it stands.</param>
/// <param name="Rate">A fraction.</param>
public sealed record NotedTax(NoteLine Line, decimal Rate) : NotedTerm(Line)
{
    /// <inheritdoc/>
    public override string Key => "order.taxRate";

    /// <inheritdoc/>
    public override Shop Into(Shop list) => list with { Order = list.Order with { TaxRate = Rate } };
}

/// <summary>The same tax on what delivery costs: it stands in no note, and is asked where notes tell of both.</summary>
/// <param name="Line">Where the tax stands.</param>
public sealed record NotedTaxOnDelivery(NoteLine Line) : NotedTerm(Line)
{
    /// <inheritdoc/>
    public override string Key => "order.taxOnDelivery";

    /// <inheritdoc/>
    public override Shop Into(Shop list) => list with { Order = list.Order with { TaxOnDelivery = true } };
}

/// <summary>Tax that is in the prices already. A list has nothing to take from it: its prices hold as they stand, without tax on top.</summary>
/// <param name="Line">Where it stands.</param>
/// <param name="Rate">A fraction.</param>
public sealed record NotedTaxInside(NoteLine Line, decimal Rate) : NotedTerm(Line)
{
    /// <inheritdoc/>
    public override bool Fits(Shop list) => false;

    /// <inheritdoc/>
    public override Shop Into(Shop list) => list;
}

/// <summary>What delivery costs.</summary>
/// <param name="Line">Where it stands.</param>
/// <param name="Steps">By what the order weighs, rising; empty where no mass is named.</param>
/// <param name="Flat">Whatever the order weighs; null where it hangs on the mass, or is not said.</param>
/// <param name="FreeFrom">Goods value from which it is free; null where none is named.</param>
public sealed record NotedDelivery(NoteLine Line, IReadOnlyList<MassStep> Steps, decimal? Flat, decimal? FreeFrom) : NotedTerm(Line)
{
    /// <inheritdoc/>
    public override bool Fits(Shop list) => Steps.Count > 0 || Flat is not null || Terms.HasDeliveryPrice(list);

    /// <inheritdoc/>
    public override Shop Into(Shop list)
    {
        var before = list.Order.Delivery ?? new Delivery([], null, null);
        var priced = Steps.Count > 0 ? before with { Steps = Steps }
            : Flat is { } flat ? before with { Steps = [new MassStep(DeliveryShape.Whatever, flat)], PerFurtherKilogram = 0m }
            : before;
        return list with { Order = list.Order with { Delivery = priced with { FreeFrom = FreeFrom ?? before.FreeFrom } } };
    }

    /// <summary>The same with what another line says of delivery.</summary>
    internal NotedDelivery With(NotedDelivery more) => new(
        new NoteLine(Line.Row, more.Line == Line ? Line.Text : $"{Line.Text} \u2026 {more.Line.Text}"),
        [.. Steps.Concat(more.Steps).DistinctBy(step => step.Most).OrderBy(step => step.Most)], Flat ?? more.Flat, FreeFrom ?? more.FreeFrom);
}

/// <summary>The least goods value of an order.</summary>
/// <param name="Line">Where it stands.</param>
/// <param name="Amount">Without tax.</param>
public sealed record NotedMinimum(NoteLine Line, decimal Amount) : NotedTerm(Line)
{
    /// <inheritdoc/>
    public override string Key => "order.minimum";

    /// <inheritdoc/>
    public override Shop Into(Shop list) => list with { Order = list.Order with { Minimum = Amount } };
}

/// <summary>What taking on an order costs.</summary>
/// <param name="Line">Where it stands.</param>
/// <param name="Amount">Without tax.</param>
public sealed record NotedSetUp(NoteLine Line, decimal Amount) : NotedTerm(Line)
{
    /// <inheritdoc/>
    public override string Key => "setup.order";

    /// <inheritdoc/>
    public override Shop Into(Shop list) => list with { SetUp = list.SetUp with { Order = Amount } };
}

/// <summary>A discount from a goods value on.</summary>
/// <param name="Line">Where it stands.</param>
/// <param name="Step">The discount.</param>
public sealed record NotedDiscount(NoteLine Line, DiscountStep Step) : NotedTerm(Line)
{
    /// <inheritdoc/>
    public override Shop Into(Shop list) => list with
    {
        Order = list.Order with { Discounts = [.. list.Order.Discounts.Where(old => old.From != Step.From).Append(Step).OrderBy(step => step.From)] },
    };
}

/// <summary>The day from which the prices hold.</summary>
/// <param name="Line">Where it stands.</param>
/// <param name="Day">First day.</param>
public sealed record NotedDay(NoteLine Line, DateOnly Day) : NotedTerm(Line)
{
    /// <inheritdoc/>
    public override Shop Into(Shop list) => list with { ValidFrom = Day };
}
