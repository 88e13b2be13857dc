using PressRun.Engine.Costing;
using PressRun.Engine.Editions;
using PressRun.Engine.Postage;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Shared;

/// <summary>The engine's warnings in the press's own units and the viewer's language.</summary>
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
            Say($"The innermost leaves stand out by {format.Thickness(estimate.MostCreep)}, and the fore-edge is not trimmed."),
        WarningCode.CreepExceedsTrim =>
            Say($"The innermost leaves stand out by {format.Thickness(estimate.MostCreep)}, and the fore-edge trim takes off only {format.Length(trim.ForeEdge)}."),
        WarningCode.HeavyCarton =>
            Say($"A carton of {format.Mass(estimate.Freight.HeaviestCarton)} is heavier than {format.Mass(FreightEstimate.LiftingLimit)}: lift it in two or with a trolley, and follow local guidance on lifting."),
        WarningCode.CaliperEstimated => Say($"Estimated from the finish's usual bulk: the thickness of {Names(warning)}, and every figure built on it."),
        WarningCode.MailerTooSmall => Say($"The page does not lie in the mailer of {Names(warning)}."),
        WarningCode.NoPostage => Say($"No postage service takes the piece of {Names(warning)}."),
        WarningCode.NearPostageStep => Say($"Paper varies, and the piece is within {format.Percent(PostageChoice.PaperVaries)} of its postage step's limit; weigh a copy. It concerns {Names(warning)}."),
        WarningCode.NoBreakEvenPrice => Say($"No price pays for a copy through {Names(warning)}."),
        WarningCode.BreakEvenBeyondRun => Say($"The run is paid for by copy {format.Count(estimate.BreakEven.Copies!.Value)}, more than it has for sale."),
        _ => throw new ArgumentOutOfRangeException(nameof(warning), warning.Code, "No words for it."),
    };

    private static string Names(Warning warning) => string.Join(", ", warning.About.Select(Apart.Of));
}
