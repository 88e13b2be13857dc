using PressRun.Data.Copies;
using PressRun.Engine.Copies;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Copies;

/// <summary>Words for what stands in a copies ledger.</summary>
public static class LedgerWords
{
    /// <summary>What can be written down, as the end of <c>3 copies were</c>.</summary>
    public static IReadOnlyList<(MovementKind Kind, string Words)> Kinds =>
    [
        (MovementKind.Sold, Say("what became of copies", $"sold")),
        (MovementKind.GivenAway, Say("what became of copies", $"given away")),
        (MovementKind.Spoiled, Say("what became of copies", $"spoiled or lost")),
        (MovementKind.Returned, Say("what became of copies", $"brought back")),
        (MovementKind.Counted, Say("what became of copies", $"counted")),
        (MovementKind.Printed, Say("what became of copies", $"printed")),
    ];

    /// <summary>What a line is, in one or two words.</summary>
    public static string Of(MovementKind kind) => Kinds.First(word => word.Kind == kind).Words;

    /// <summary>Copies with their sign: <c>+150</c>, <c>−3</c>.</summary>
    public static string Signed(long copies, PressFormat format) => copies switch
    {
        > 0 => "+" + format.Count(copies),
        _ => format.Count(copies),
    };

    /// <summary>Money; empty where none moved.</summary>
    public static string Money(decimal amount, PressFormat format) => amount == 0m ? "" : format.Money(amount);

    /// <summary>What was printed and sold in a month: <c>150 printed, 24 sold</c>; empty where nothing was.</summary>
    public static string InMonth(LedgerMonth month, PressFormat format) => string.Join(", ", new[]
    {
        month.Printed == 0 ? null : Say($"{format.Count(month.Printed)} printed"),
        month.Sold == 0 ? null : Say($"{format.Count(month.Sold)} sold"),
    }.OfType<string>());

    /// <summary>A line as something that can be taken back: <c>3 copies sold on 25 November 2026</c>.</summary>
    public static string Named(MovementRecord line, PressFormat format)
    {
        var copies = Math.Abs((long)line.Movement.Copies);
        var day = format.Day(line.Movement.Day);
        return line.Movement.Kind == MovementKind.Counted
            ? Say($"the count of {day}")
            : Say($"{Words.Copies(copies, format.Count)} {Of(line.Movement.Kind)} on {day}");
    }

    /// <summary>Says that a line was written; of a count also by how much the ledger was off, as that many copies come or go by it.</summary>
    public static string Written(MovementRecord line, PressFormat format) => line.Movement switch
    {
        { Kind: MovementKind.Counted, Copies: 0 } => Say($"Written down: {Named(line, format)}, as many as the ledger had."),
        { Kind: MovementKind.Counted, Copies: > 0 and var more } => Say($"Written down: {Named(line, format)}, {format.Count(more)} more than the ledger had."),
        { Kind: MovementKind.Counted, Copies: var less } => Say($"Written down: {Named(line, format)}, {format.Count(-(decimal)less)} fewer than the ledger had."),
        _ => Say($"Written down: {Named(line, format)}."),
    };

    /// <summary>What is to be said of a line beyond its note; null where nothing is.</summary>
    public static string? Explained(LedgerRow row, PressFormat format) => row switch
    {
        { Pair: { } pair } => Say($"takes back {Named(pair, format)}"),
        { Count: { } day } => Say($"written late: the count of {format.Day(day)} had seen these copies already, so it stands as it was"),
        { TakenBack: true } => Say($"taken back"),
        { Line.Movement: { Kind: MovementKind.Counted, Copies: 0 } } => Say($"as many as the ledger said"),
        { Line.Movement: { Kind: MovementKind.Counted, Copies: > 0 and var more } } => Say($"{format.Count(more)} more than the ledger said"),
        { Line.Movement: { Kind: MovementKind.Counted, Copies: var less } } => Say($"{format.Count(-(decimal)less)} fewer than the ledger said"),
        _ => null,
    };
}
