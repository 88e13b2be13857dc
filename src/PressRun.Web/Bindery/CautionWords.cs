using PressRun.Engine.Bench;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Bindery;

/// <summary>What may go wrong at the table, as sentences with what to do about it.</summary>
public static class CautionWords
{
    /// <summary>What a caution says.</summary>
    /// <param name="caution">The caution.</param>
    /// <param name="limits">The press's own, by which it was found.</param>
    /// <param name="format">How figures are written.</param>
    public static string Of(BenchCaution caution, BenchLimits limits, PressFormat format) => caution.Code switch
    {
        BenchCautionCode.AgainstGrain =>
            Say($"The part “{Part(caution)}”, {Weight(caution, format)}, is folded across the grain of its paper and may crack there: ask the shop for a sheet whose grain runs along the spine, or score it before it is folded."),
        BenchCautionCode.AgainstGrainScored =>
            Say($"The part “{Part(caution)}”, {Weight(caution, format)}, is folded across the grain of its paper and may crack there although the shop sees to its fold: ask for a sheet whose grain runs along the spine."),
        BenchCautionCode.CreepBeyondTrim when caution.May.Millimetres == 0m =>
            Say($"The innermost leaves stand out by {format.Thickness(caution.Has)}, and the fore-edge is not trimmed."),
        BenchCautionCode.CreepBeyondTrim =>
            Say($"The innermost leaves stand out by {format.Thickness(caution.Has)}, more than the {format.Length(caution.May)} that may come off or stand out."),
        BenchCautionCode.StapleTooShort =>
            Say($"The staples go through {format.Thickness(caution.Has)} of paper, and a leg of {format.Length(limits.StapleLeg)} holds {format.Length(caution.May)}: take legs of {format.Length(limits.LegFor(caution.Has))} or more, or fewer or thinner leaves."),
        _ => Say($"The part “{Part(caution)}”, {Weight(caution, format)}, is heavier than {format.Number(limits.ScoreOver, 0)} g/m²: score the line before it is folded, or it may crack."),
    };

    /// <summary>Of work that the run needs and whose time is in no figure.</summary>
    public static string Unrated(IReadOnlyList<WorkKind> work) => Say(
        work.Count,
        $"Your bench has no step to {Words.Together([.. work.Select(Words.Of)])}: its hours are in no figure here. Add it on the Bench page, or have the shop do it.",
        $"Your bench has no steps to {Words.Together([.. work.Select(Words.Of)])}: their hours are in no figure here. Add them on the Bench page, or have the shop do them.");

    private static string Part(BenchCaution caution) => Apart.Of(caution.Part!.Part.Name);

    private static string Weight(BenchCaution caution, PressFormat format) => $"{format.Number(caution.Part!.Stock.Weight.GramsPerSquareMetre, 0)} g/m²";
}
