using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Shared;

/// <summary>The engine's warnings in the press's own units; those without a measure as they stand.</summary>
public static class WarningWords
{
    /// <summary>What a warning says.</summary>
    public static string Of(Warning warning, CopyEstimate copy, Trim trim, PressFormat format) => warning.Code switch
    {
        WarningCode.CreepExceedsTrim when trim.ForeEdge.Millimetres == 0m =>
            $"The innermost leaves stand out by {format.Thickness(copy.Creep)}, and the fore-edge is not trimmed.",
        WarningCode.CreepExceedsTrim =>
            $"The innermost leaves stand out by {format.Thickness(copy.Creep)}, and the fore-edge trim takes off only {format.Length(trim.ForeEdge)}.",
        _ => warning.Message,
    };
}
