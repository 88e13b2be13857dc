namespace PressRun.Engine.Costing;

/// <summary>A channel at the job's quantity.</summary>
/// <param name="Id">Its id.</param>
/// <param name="NetPerCopy">What it keeps for the press of a copy, before the copy's own cost; null where no service takes the post.</param>
/// <param name="BreakEvenPrice">Lowest price, rounded up to the minor unit, at which a copy keeps its cost; null where none does.</param>
public sealed record ChannelEstimate(string Id, decimal? NetPerCopy, decimal? BreakEvenPrice);

/// <summary>Copies that pay for the run at the channels' prices and mix.</summary>
/// <param name="Copies">Null where no number of copies does.</param>
/// <param name="WithinRun">True where they are among the copies for sale.</param>
/// <param name="NetPerCopy">The channels' net by their mix; null where there is none.</param>
public sealed record BreakEven(long? Copies, bool WithinRun, decimal? NetPerCopy);
