using System.Globalization;
using PressRun.Data;
using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Data.Titles;
using PressRun.Engine.Copies;
using PressRun.Engine.Paper;
using PressRun.Engine.Selling;
using PressRun.Web.Copies;
using PressRun.Web.Shared.Wording;

namespace PressRun.Web.Tests.Support;

/// <summary>Ledgers of the invented book.</summary>
public static class ALedger
{
    /// <summary>The day on which it is looked at.</summary>
    public static readonly DateOnly Today = ARun.Day.AddDays(100);

    /// <summary>The press, as its pages see it.</summary>
    public static PressView Press { get; } = PressView.Of(
        new PressRecord(new PressId(Guid.NewGuid()), "Willow Desk", "USD", UnitSystem.Metric, PaperRegion.Iso, false, 1), CultureInfo.GetCultureInfo("en-US"));

    /// <summary>A view of lines, in the order in which they were written.</summary>
    public static CopiesView View(params MovementRecord[] lines) => new(
        new TitleRecord(Guid.NewGuid(), "marsh-letters", "Marsh Letters", "", "", "", false, 1),
        Records.Edition(),
        [.. lines.Select((line, place) => line with { Movement = line.Movement with { Sequence = place + 1 } })
            .OrderByDescending(line => line.Movement.Day).ThenByDescending(line => line.Movement.Sequence)],
        [.. ARun.Job.Channels.Select(channel => new LibraryItem<Channel>(channel, false, 1))],
        PrintingPlan.Of(Records.Source()),
        ARun.Job.Bench,
        Today);

    /// <summary>A line some days after the run.</summary>
    public static MovementRecord Line(int day, MovementKind kind, int copies, decimal amount = 0m) => new(
        Guid.NewGuid(), Guid.NewGuid(), new CopyMovement(ARun.Day.AddDays(day), 0, kind, copies, amount), null, "", DateTimeOffset.UnixEpoch, null, null, null, null);
}
