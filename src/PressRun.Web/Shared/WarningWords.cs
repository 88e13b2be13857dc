using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Shared;

/// <summary>The engine's warnings in the press's own units; those without a measure as they stand.</summary>
public static class WarningWords
{
    /// <summary>What a warning says.</summary>
    /// <param name="warning">One of the estimate's.</param>
    /// <param name="estimate">What it warns of.</param>
    /// <param name="trim">The edition's.</param>
    /// <param name="format">How figures are written.</param>
    public static string Of(Warning warning, Estimate estimate, Trim trim, PressFormat format) => warning.Code switch
    {
        WarningCode.CreepExceedsTrim when trim.ForeEdge.Millimetres == 0m =>
            Say($"The innermost leaves stand out by {format.Thickness(estimate.Copy.Creep)}, and the fore-edge is not trimmed."),
        WarningCode.CreepExceedsTrim =>
            Say($"The innermost leaves stand out by {format.Thickness(estimate.Copy.Creep)}, and the fore-edge trim takes off only {format.Length(trim.ForeEdge)}."),
        WarningCode.HeavyCarton =>
            Say($"A carton of {format.Mass(estimate.Freight.HeaviestCarton)} is heavier than {format.Mass(FreightEstimate.LiftingLimit)}: lift it in two or with a trolley, and follow local guidance on lifting."),
        _ => SayWhole(warning.Message),
    };
}
