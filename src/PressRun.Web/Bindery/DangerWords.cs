using PressRun.Engine.Bench;
using PressRun.Engine.Costing;
using PressRun.Web.Shared;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Bindery;

/// <summary>What can hurt at the table, said where it can, and how not to be hurt. The makers of the tools and local rules know better.</summary>
public static class DangerWords
{
    /// <summary>What goes before all of it.</summary>
    public static string Above => Say($"The makers' instructions and your local safety rules go before this sheet.");

    /// <summary>What can hurt at a step; null where nothing does. A tool is told of in full where it is first used.</summary>
    /// <param name="view">The run.</param>
    /// <param name="step">One of its steps.</param>
    /// <param name="format">How figures are written.</param>
    public static string? Of(BinderyView view, WorkStep step, PressFormat format) => step.Kind switch
    {
        WorkKind.CutApart or WorkKind.Trim or WorkKind.TrimSpine when view.Sheet!.Steps.First(other => IsCut(other.Kind)) is var first && first != step =>
            Say($"Cutter, as at step {first.Number}: guard in place, hands away from blade and clamp."),
        WorkKind.CutApart or WorkKind.Trim or WorkKind.TrimSpine =>
            Say($"Cutter: one person at a time, the guard in its place, both hands away from the blade and the clamp before it moves; never reach under a raised blade. Change blades only as the maker's manual says, in their holder, and throw none away loose."),
        WorkKind.Staple =>
            Say($"Stapler: wear eye protection while stapling and when staples are pulled; keep fingers clear of the head and of open legs; unplug or lock it before you clear a jam."),
        WorkKind.Glue => Say($"Glue: air the room; hot glue burns, and each glue's own sheet says what it asks for."),
        WorkKind.Pack when view.Sheet!.Packed > FreightEstimate.LiftingLimit => Boxes(view.Sheet, format),
        _ => null,
    };

    /// <summary>What can hurt before anything is done: heavy cartons from the shop. Null where they are light or there are none.</summary>
    public static string? OfCartons(BinderyView view, PressFormat format) =>
        view.Sheet!.Estimate is var estimate && estimate.Warnings.FirstOrDefault(warning => warning.Code == WarningCode.HeavyCarton) is { } heavy
            ? WarningWords.Of(heavy, estimate, view.Prepared!.Job.Edition.Trim, format)
            : null;

    /// <summary>True where anything at the table can hurt.</summary>
    public static bool Any(BinderyView view, PressFormat format) => OfCartons(view, format) is not null || view.Sheet!.Steps.Any(step => Of(view, step, format) is not null);

    private static string Boxes(BenchSheet sheet, PressFormat format)
    {
        var (copies, mass, inBox, limit) = (format.Count(sheet.Estimate.Quantity), format.Mass(sheet.Packed), Words.Copies(sheet.CopiesInBox, format.Count), format.Mass(FreightEstimate.LiftingLimit));
        return Say(
            sheet.Estimate.Quantity,
            $"Boxes: {copies} copy weighs about {mass}. With no more than {inBox} to a box none is over {limit}; lift a heavier one in two or with a trolley, and follow local guidance on lifting.",
            $"Boxes: {copies} copies weigh about {mass}. With no more than {inBox} to a box none is over {limit}; lift a heavier one in two or with a trolley, and follow local guidance on lifting.");
    }

    private static bool IsCut(WorkKind kind) => kind is WorkKind.CutApart or WorkKind.Trim or WorkKind.TrimSpine;
}
