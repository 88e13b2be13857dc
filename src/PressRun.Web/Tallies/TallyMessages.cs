using PressRun.Data.Tallies;
using PressRun.Engine.Bench;

namespace PressRun.Web.Tallies;

/// <summary>A tally to begin.</summary>
/// <param name="Press">Of the press that the page was opened for.</param>
/// <param name="Id">Given by the phone, once.</param>
/// <param name="Edition">The printing.</param>
/// <param name="Plan">The plan whose work it is.</param>
/// <param name="Copies">Copies on the table, as typed.</param>
/// <param name="Wanted">Good copies wanted, as typed.</param>
public sealed record TallyBegin(Guid Press, Guid Id, Guid Edition, Guid Plan, string Copies, string Wanted);

/// <summary>What became of it.</summary>
/// <param name="Problem">What would be right, as a sentence; null where the tally is begun.</param>
public sealed record TallyBegun(string? Problem);

/// <summary>What was written down at a table, as a phone kept it while it had no connection.</summary>
/// <param name="Press">Of the press that the page was opened for; another may have been chosen in the same browser since.</param>
/// <param name="Tally">The tally.</param>
/// <param name="Entries">At most <see cref="Kept.KeptPages.MostEntries"/>.</param>
public sealed record TallyEntries(Guid Press, Guid Tally, IReadOnlyList<SentEntry> Entries);

/// <summary>Something written down.</summary>
/// <param name="Id">Given by the phone, once: sent again it is not written again.</param>
/// <param name="Step">Place of the step, from 0.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Copies">Copies done or spoiled.</param>
/// <param name="Seconds">Time worked.</param>
/// <param name="By">Who.</param>
/// <param name="Ago">Seconds since, as far as the phone knows.</param>
/// <param name="TakenBack">True where it was taken back on the phone, perhaps before it ever arrived.</param>
public sealed record SentEntry(Guid Id, int Step, TallyKind Kind, int Copies, int Seconds, string? By, long Ago, bool TakenBack)
{
    private const long LongestAgo = 366L * 86_400;

    /// <summary>As it is written down; however long ago the phone says it was.</summary>
    public NewTallyEntry ToNew() =>
        new(Id, new TallyEntry(Step, Kind, Copies, Seconds, By ?? ""), TimeSpan.FromSeconds(Math.Clamp(Ago, 0, LongestAgo)), TakenBack);
}

/// <summary>What became of the entries, in their order, and how the tally stands now.</summary>
/// <param name="Entries">An answer to each.</param>
/// <param name="Now">The sums.</param>
public sealed record TallyAnswer(IReadOnlyList<TallyOutcome> Entries, TallyNow Now);

/// <summary>How a tally stands.</summary>
/// <param name="Mark">Another one as soon as anything is new.</param>
/// <param name="Lines">Entries so far.</param>
/// <param name="At">When this was read, in milliseconds since 1970, by the server's clock.</param>
/// <param name="Written">True where it stands in the copies ledger.</param>
/// <param name="Wanted">Good copies wanted.</param>
/// <param name="Spoiled">Copies that went wrong.</param>
/// <param name="Spare">Copies that may still go wrong.</param>
/// <param name="Further">Copies that usually still will, rounded up.</param>
/// <param name="Steps">Each step.</param>
public sealed record TallyNow(string Mark, int Lines, long At, bool Written, int Wanted, long Spoiled, long Spare, long Further, IReadOnlyList<StepNow> Steps)
{
    /// <summary>Sums a tally up.</summary>
    /// <param name="whole">The tally.</param>
    /// <param name="at">When it was read.</param>
    public static TallyNow Of(TallyWhole whole, long at)
    {
        var (tally, sums) = (whole.Tally, whole.Sums());
        return new TallyNow(
            MarkOf(tally.Lines, tally.Written is not null), tally.Lines, at, tally.Written is not null, sums.Wanted, sums.Spoiled, sums.Spare, (long)decimal.Ceiling(sums.Further),
            [.. sums.Steps.Select(step => new StepNow(step.Done, step.Spoiled, step.Left, step.Seconds, step.People))]);
    }

    /// <summary>The mark of a tally with so many entries.</summary>
    public static string MarkOf(int lines, bool written) => FormattableString.Invariant($"{lines}{(written ? "w" : "")}");
}

/// <summary>How a step stands.</summary>
/// <param name="Done">Copies done.</param>
/// <param name="Spoiled">Copies spoiled.</param>
/// <param name="Left">Copies still to go through.</param>
/// <param name="Seconds">Time worked by all people together.</param>
/// <param name="People">Who did what.</param>
public sealed record StepNow(long Done, long Spoiled, long Left, long Seconds, IReadOnlyList<PersonTally> People);
