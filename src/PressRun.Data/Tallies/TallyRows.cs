using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Conversions;
using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Data.Titles;
using PressRun.Engine.Bench;

namespace PressRun.Data.Tallies;

/// <summary>A tally: all but how far it has come is held by the database against change. Whoever adds an entry holds this row.</summary>
internal sealed class TallyRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid Id { get; set; }

    public Guid EditionId { get; set; }

    public string Plan { get; set; } = "";

    public DateTimeOffset BegunAt { get; set; }

    public int Copies { get; set; }

    public int Wanted { get; set; }

    public IReadOnlyList<TallyStep> Steps { get; set; } = [];

    /// <summary>Entries written so far: the last one's place.</summary>
    public int Lines { get; set; }

    public Guid? WrittenInto { get; set; }

    public int WrittenLines { get; set; }

    public TallyRecord ToRecord(WrittenTally? written) => new(Id, EditionId, Plan, BegunAt, Copies, Wanted, Steps, Lines, written);
}

/// <summary>Something written down at the table: added once, and held by the database against change.</summary>
internal sealed class TallyEntryRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid Id { get; set; }

    public Guid TallyId { get; set; }

    /// <summary>Place among the tally's entries in the order of arriving, from 1.</summary>
    public int Sequence { get; set; }

    public int Step { get; set; }

    public TallyKind Kind { get; set; }

    public int Copies { get; set; }

    public int Seconds { get; set; }

    public string By { get; set; } = "";

    public DateTimeOffset At { get; set; }

    public Guid? TakesBack { get; set; }

    public TallyEntry ToEntry() => new(Step, Kind, Copies, Seconds, By);
}

internal sealed class TallyRowConfiguration : IEntityTypeConfiguration<TallyRow>
{
    public void Configure(EntityTypeBuilder<TallyRow> builder)
    {
        builder.ToTable("tallies");
        builder.HasKey(row => new { row.PressId, row.Id });
        builder.Property(row => row.Steps).HasJobFileShape(TallyShape.Document);
        builder.HasOne<EditionRow>().WithMany().HasForeignKey(row => new { row.PressId, row.EditionId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<CopyMovementRow>().WithMany().HasForeignKey(row => new { row.PressId, row.WrittenInto }).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(row => new { row.PressId, row.EditionId, row.BegunAt });
    }
}

internal sealed class TallyEntryRowConfiguration : IEntityTypeConfiguration<TallyEntryRow>
{
    public void Configure(EntityTypeBuilder<TallyEntryRow> builder)
    {
        builder.ToTable("tally_entries");
        builder.HasKey(row => new { row.PressId, row.Id });
        builder.HasOne<TallyRow>().WithMany().HasForeignKey(row => new { row.PressId, row.TallyId }).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(row => new { row.PressId, row.TallyId, row.Sequence }).IsUnique();
        builder.HasIndex(row => new { row.PressId, row.TakesBack }).IsUnique();
        builder.Property(row => row.By).HasMaxLength(TallyStore.MostName);
    }
}
