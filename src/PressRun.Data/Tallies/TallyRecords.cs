using PressRun.Engine.Bench;

namespace PressRun.Data.Tallies;

/// <summary>A tally to begin: the work of a run as it is planned at that moment. A plan that changes later changes no tally.</summary>
/// <param name="Id">Given by whoever begins it, once.</param>
/// <param name="EditionId">The printing.</param>
/// <param name="Plan">Name of the plan; may be empty.</param>
/// <param name="Copies">Copies that lie on the table, 1 or more.</param>
/// <param name="Wanted">Good copies wanted, 1 or more.</param>
/// <param name="Steps">The work in order, one step or more.</param>
public sealed record NewTally(Guid Id, Guid EditionId, string Plan, int Copies, int Wanted, IReadOnlyList<TallyStep> Steps);

/// <summary>A tally as it stands.</summary>
/// <param name="Id">Its id.</param>
/// <param name="EditionId">The printing.</param>
/// <param name="Plan">Name of the plan when it was begun.</param>
/// <param name="BegunAt">When it was begun.</param>
/// <param name="Copies">Copies that lay on the table.</param>
/// <param name="Wanted">Good copies wanted.</param>
/// <param name="Steps">The work in order.</param>
/// <param name="Lines">Entries so far; grows with each.</param>
/// <param name="Written">The line of the copies ledger that it went into; null while it goes on, and again once that line is taken back.</param>
public sealed record TallyRecord(
    Guid Id, Guid EditionId, string Plan, DateTimeOffset BegunAt, int Copies, int Wanted, IReadOnlyList<TallyStep> Steps, int Lines, WrittenTally? Written);

/// <summary>Where a tally stands in the copies ledger.</summary>
/// <param name="MovementId">The line.</param>
/// <param name="Day">Its day.</param>
/// <param name="Copies">Good copies of that line.</param>
/// <param name="Lines">Entries that its figures were summed from; those that came later are not in it.</param>
public sealed record WrittenTally(Guid MovementId, DateOnly Day, int Copies, int Lines);

/// <summary>A tally with all that was written down.</summary>
/// <param name="Tally">The tally.</param>
/// <param name="Entries">In the order in which they arrived.</param>
public sealed record TallyWhole(TallyRecord Tally, IReadOnlyList<TallyEntry> Entries)
{
    /// <summary>The sums.</summary>
    public Tally Sums() => Engine.Bench.Tally.Of(Tally.Copies, Tally.Wanted, Tally.Steps, Entries);
}

/// <summary>How far a tally has come, to see at one glance whether anything is new.</summary>
/// <param name="Lines">Entries so far.</param>
/// <param name="Written">The line of the ledger that it went into; null where it goes on.</param>
public sealed record TallyMark(int Lines, Guid? Written);

/// <summary>Something to write down.</summary>
/// <param name="Id">Given by the phone, once: sent again it is not written again.</param>
/// <param name="Entry">What it is.</param>
/// <param name="Ago">How long ago that was, as far as the phone knows; the store takes it from its own clock, so that a phone's clock may be wrong.</param>
/// <param name="TakenBack">True where it was taken back on the phone, perhaps before it ever arrived.</param>
public sealed record NewTallyEntry(Guid Id, TallyEntry Entry, TimeSpan Ago, bool TakenBack);

/// <summary>What became of an entry.</summary>
/// <param name="Id">The entry.</param>
/// <param name="Problem">Why it is not taken, as a sentence; null where it stands.</param>
public sealed record TallyOutcome(Guid Id, string? Problem);
