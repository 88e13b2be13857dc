using PressRun.Data;
using PressRun.Data.Copies;
using PressRun.Data.Tallies;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;
using PressRun.Engine.Copies;
using PressRun.Engine.Selling;

namespace PressRun.Web.Copies;

/// <summary>The copies ledger of a printing with what its page needs.</summary>
/// <param name="title">The title.</param>
/// <param name="edition">The printing.</param>
/// <param name="lines">All lines of the ledger, the latest day first.</param>
/// <param name="channels">All ways of selling, archived ones too.</param>
/// <param name="plan">The plan that the printing goes by; null where it has none that can be worked out.</param>
/// <param name="bench">The press's own table.</param>
/// <param name="today">Today where the server stands.</param>
/// <param name="tally">A tally of the table that is to be written into the ledger; null for none.</param>
public sealed class CopiesView(
    TitleRecord title,
    EditionRecord edition,
    IReadOnlyList<MovementRecord> lines,
    IReadOnlyList<LibraryItem<Channel>> channels,
    PrintingPlan? plan,
    BenchRates bench,
    DateOnly today,
    TallyWhole? tally = null)
{
    /// <summary>The title.</summary>
    public TitleRecord Title => title;

    /// <summary>The printing.</summary>
    public EditionRecord Edition => edition;

    /// <summary>All lines of the ledger, the latest day first.</summary>
    public IReadOnlyList<MovementRecord> Lines => lines;

    /// <summary>The plan that the printing goes by; null where it has none that can be worked out.</summary>
    public PrintingPlan? Plan => plan;

    /// <summary>The press's own table.</summary>
    public BenchRates Bench => bench;

    /// <summary>Today where the server stands.</summary>
    public DateOnly Today => today;

    /// <summary>A tally of the table that is to be written into the ledger; null for none.</summary>
    public TallyWhole? Tally => tally;

    /// <summary>Its sums.</summary>
    public Tally? Tallied { get; } = tally?.Sums();

    /// <summary>What is on hand and what it stands at.</summary>
    public CopiesPosition Position { get; } = CopiesAccount.At(Movements(lines));

    /// <summary>The lines as they are shown, the latest day first.</summary>
    public IReadOnlyList<LedgerRow> Rows { get; } = LedgerRow.Of(lines);

    /// <summary>The months in which something moved, the latest first.</summary>
    public IReadOnlyList<LedgerMonth> Months { get; } = [.. LedgerMonth.All(Movements(lines)).Reverse()];

    /// <summary>The line that was written last, and the first day of the month that it lies in; null where there is no line.</summary>
    public (Guid Id, DateOnly Month)? LastWritten { get; } =
        lines.MaxBy(line => line.Movement.Sequence) is { } last ? (last.Id, LedgerMonth.Of(last.Movement.Day)) : null;

    /// <summary>Printings that stand, the first day first.</summary>
    public IReadOnlyList<MovementRecord> Printings { get; } =
        [.. LedgerRow.Of(lines).Where(row => row.CanBeTakenBack && row.Line.Movement.Kind == MovementKind.Printed).Select(row => row.Line).Reverse()];

    /// <summary>The position at the end of each day on which something moved, first day first.</summary>
    public IReadOnlyList<(DateOnly Day, CopiesPosition Position)> Days { get; } = CopiesAccount.ByDay(Movements(lines));

    /// <summary>Times without copies, from the first line to today.</summary>
    public IReadOnlyList<TimeWithoutCopies> TimesWithoutCopies { get; } =
        lines.Count == 0 || lines[^1].Movement.Day > today ? [] : SalesHistory.Of(Movements(lines), lines[^1].Movement.Day, today, 1).TimesWithoutCopies;

    /// <summary>Ways of selling that are offered.</summary>
    public IReadOnlyList<Channel> Offered { get; } = [.. channels.Where(channel => !channel.Archived).Select(channel => channel.Item)];

    /// <summary>The same printing with the edition, its lines and its tally as they are stored now.</summary>
    public CopiesView Again(EditionRecord now, IReadOnlyList<MovementRecord> stored, DateOnly on, TallyWhole? tallied) => new(title, now, stored, channels, plan, bench, on, tallied);

    /// <summary>The lines of a month, the latest day first.</summary>
    public IEnumerable<LedgerRow> RowsOf(LedgerMonth month) => Rows.Where(row => LedgerMonth.Of(row.Line.Movement.Day) == month.First);

    /// <summary>The position at the end of a day.</summary>
    public CopiesPosition On(DateOnly day) => CopiesAccount.At(Movements(lines), day);

    /// <summary>Name of a way of selling; the id where it is not known.</summary>
    public string ChannelName(string? id) => id is null ? "" : channels.FirstOrDefault(channel => channel.Item.Id == id)?.Item.Name ?? id;

    private static IEnumerable<CopyMovement> Movements(IReadOnlyList<MovementRecord> lines) => lines.Select(line => line.Movement);
}

/// <summary>A line of the ledger as it is shown.</summary>
/// <param name="Line">The line.</param>
/// <param name="OnHand">Copies on hand after it.</param>
/// <param name="TakenBack">True where it was taken back, or takes another back: the two come to nothing.</param>
/// <param name="Count">The day of the count that it is set against; null where it is set against none.</param>
/// <param name="Pair">The line that this one takes back; null where it takes none back.</param>
public sealed record LedgerRow(MovementRecord Line, long OnHand, bool TakenBack, DateOnly? Count, MovementRecord? Pair)
{
    /// <summary>True where this line can be taken back: it stands, and is neither the pair of another nor a part of a count.</summary>
    public bool CanBeTakenBack => !TakenBack && Line.SettledBy is null;

    /// <summary>The lines of a ledger.</summary>
    /// <param name="lines">The latest day first.</param>
    public static IReadOnlyList<LedgerRow> Of(IReadOnlyList<MovementRecord> lines)
    {
        var after = CopiesAccount.ByLine(lines.Select(line => line.Movement)).ToDictionary(line => line.Movement.Sequence, line => line.OnHand);
        var back = lines.Select(line => line.TakesBack).OfType<Guid>().ToHashSet();
        var byId = lines.ToDictionary(line => line.Id);
        return
        [
            .. lines.Select(line => new LedgerRow(
                line,
                after[line.Movement.Sequence],
                line.TakesBack is not null || back.Contains(line.Id),
                line.SettledBy is { } count ? (byId.GetValueOrDefault(count) ?? line).Movement.Day : null,
                line.TakesBack is { } taken ? byId.GetValueOrDefault(taken) : null)),
        ];
    }
}
