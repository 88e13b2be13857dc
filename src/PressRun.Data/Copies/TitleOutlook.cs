using PressRun.Data.Titles;

namespace PressRun.Data.Copies;

/// <summary>How long the copies of a title last at the pace of its past sales, as it was reckoned on a day.</summary>
/// <param name="AsOf">The day.</param>
/// <param name="OnHand">Copies on hand on it, of all printings.</param>
/// <param name="Days10">Days within which they are gone with a probability of 10 %.</param>
/// <param name="Days50">The same for 50 %.</param>
/// <param name="Days90">The same for 90 %.</param>
/// <param name="Moved">How often the title's ledger had moved then; given by the store.</param>
public sealed record TitleOutlook(DateOnly AsOf, long OnHand, double Days10, double Days50, double Days90, long Moved)
{
    /// <summary>The day on which the copies may be gone, one time in ten.</summary>
    public DateOnly RunsOutOn => AsOf.AddDays((int)Math.Min(Math.Floor(Days10), DateOnly.MaxValue.DayNumber - AsOf.DayNumber));
}

/// <summary>A title whose ledger has moved since its outlook was reckoned.</summary>
/// <param name="TitleId">The title.</param>
/// <param name="Moved">How often its ledger had moved when this was read.</param>
public readonly record struct MovedTitle(Guid TitleId, long Moved);

/// <summary>A title that runs out soon, with the plan that its latest printing goes by.</summary>
/// <param name="TitleId">The title.</param>
/// <param name="RunsOutOn">The day on which its copies may be gone, one time in ten, as last reckoned.</param>
/// <param name="Plan">The latest plan that a printing goes by; null where there is none.</param>
public sealed record RunningOut(Guid TitleId, DateOnly RunsOutOn, PlannedPrinting? Plan);
