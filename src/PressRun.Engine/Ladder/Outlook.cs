using PressRun.Engine.Costing;
using PressRun.Engine.Sheets;

namespace PressRun.Engine.Ladder;

/// <summary>What changes at a quantity besides one more copy.</summary>
public enum StepKind
{
    /// <summary>A step of a print price.</summary>
    Print,

    /// <summary>A step of a paper price.</summary>
    Paper,

    /// <summary>A step of a whole-book price.</summary>
    Book,

    /// <summary>The next quantity that the shop sells.</summary>
    SoldQuantity,

    /// <summary>A discount by goods value.</summary>
    Discount,

    /// <summary>The minimum order is reached: from here nothing is topped up.</summary>
    MinimumReached,

    /// <summary>A delivery step by mass.</summary>
    Delivery,

    /// <summary>Delivery becomes free.</summary>
    FreeDelivery,

    /// <summary>A part goes onto another of the shop's sheets, which costs it less from there on.</summary>
    Sheet,
}

/// <summary>A step on the staircase.</summary>
/// <param name="Kind">What changes.</param>
/// <param name="Subject">Ink or stock whose price changes, or part that goes onto another sheet; empty otherwise.</param>
/// <param name="Quantity">First quantity on the new step.</param>
/// <param name="CostChange">Landed cost there less that of one copy fewer.</param>
/// <param name="Goods">Goods value there, before tax and delivery.</param>
/// <param name="GoodsMore">What is added to the goods value from the quantity looked from.</param>
public sealed record StepAhead(StepKind Kind, string Subject, int Quantity, decimal CostChange, decimal Goods, decimal GoodsMore)
{
    /// <summary>The threshold that is passed: goods value, units or grams; null where the kind has none.</summary>
    public decimal? Threshold { get; init; }

    /// <summary>The sheet that the part goes onto; null for all other kinds.</summary>
    public Sheet? Sheet { get; init; }
}

/// <summary>What lies just ahead of a quantity.</summary>
/// <param name="Quantity">The quantity looked from.</param>
/// <param name="OneMoreCosts">Landed cost of one more copy; negative where it saves; null at the end of the range.</param>
/// <param name="Steps">The first step of each kind and subject above the quantity, nearest first.</param>
public sealed record Outlook(int Quantity, decimal? OneMoreCosts, IReadOnlyList<StepAhead> Steps)
{
    /// <summary>The nearest step, or null where none lies in the range.</summary>
    public StepAhead? Next => Steps.Count > 0 ? Steps[0] : null;

    /// <summary>Where delivery becomes free, or null where it is already or does not within the range.</summary>
    public StepAhead? FreeDelivery => Steps.FirstOrDefault(step => step.Kind == StepKind.FreeDelivery);
}
