using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Conversions;
using PressRun.Data.Presses;
using PressRun.Data.Selling;
using PressRun.Data.Titles;
using PressRun.Engine.Copies;

namespace PressRun.Data.Copies;

/// <summary>A line of the copies ledger: added once, and held by the database against change.</summary>
internal sealed class CopyMovementRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid Id { get; set; }

    public Guid EditionId { get; set; }

    /// <summary>Place among the edition's lines in the order of writing, from 1.</summary>
    public long Sequence { get; set; }

    public DateOnly Day { get; set; }

    public MovementKind Kind { get; set; }

    public int Copies { get; set; }

    public decimal Amount { get; set; }

    public string? ChannelId { get; set; }

    public string Note { get; set; } = "";

    public DateTimeOffset WrittenAt { get; set; }

    public Guid? TakesBack { get; set; }

    public Guid? SettledBy { get; set; }

    public Guid? ImportId { get; set; }

    public PrintingActual? Printing { get; set; }

    public MovementRecord ToRecord() => new(
        Id, EditionId, new CopyMovement(Day, Sequence, Kind, Copies, Amount), ChannelId, Note, WrittenAt, TakesBack, SettledBy, ImportId, Printing);

    /// <summary>The line as it would be written anew.</summary>
    public NewMovement Anew() => new(Id, EditionId, Day, Kind, Math.Abs(Copies), Math.Abs(Amount), ChannelId, Note, Printing);
}

/// <summary>What is on hand of an edition: kept beside its movements, so that it is read at once, and locked while one is added.</summary>
internal sealed class EditionCopiesRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid EditionId { get; set; }

    public long OnHand { get; set; }

    /// <summary>Lines written so far: the next one's place.</summary>
    public long Lines { get; set; }

    public bool CountNeeded { get; set; }
}

internal sealed class CopyMovementRowConfiguration : IEntityTypeConfiguration<CopyMovementRow>
{
    public void Configure(EntityTypeBuilder<CopyMovementRow> builder)
    {
        builder.ToTable("copy_movements");
        builder.HasKey(row => new { row.PressId, row.Id });
        builder.Property<PrintingActual>(nameof(CopyMovementRow.Printing)).IsRequired(false).HasJobFileShape(PrintingShape.Document);
        builder.HasOne<EditionRow>().WithMany().HasForeignKey(row => new { row.PressId, row.EditionId }).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<ChannelRow>().WithMany().HasForeignKey(row => new { row.PressId, row.ChannelId }).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(row => new { row.PressId, row.EditionId, row.Day, row.Sequence });
        builder.HasIndex(row => new { row.PressId, row.EditionId, row.Sequence }).IsUnique();
        builder.HasIndex(row => new { row.PressId, row.TakesBack }).IsUnique();
        builder.HasIndex(row => new { row.PressId, row.ImportId });
        // The shelf says of every printing what it cost: its one or two lines among hundreds of sales.
        builder.HasIndex(row => new { row.PressId, row.EditionId }).HasDatabaseName("ix_copy_movements_printed").HasFilter("kind = 'Printed'").IncludeProperties(row => new { row.Copies, row.Amount });
    }
}

internal sealed class EditionCopiesRowConfiguration : IEntityTypeConfiguration<EditionCopiesRow>
{
    public void Configure(EntityTypeBuilder<EditionCopiesRow> builder)
    {
        builder.ToTable("edition_copies");
        builder.HasKey(row => new { row.PressId, row.EditionId });
        builder.HasOne<EditionRow>().WithOne(edition => edition.Copies).HasForeignKey<EditionCopiesRow>(row => new { row.PressId, row.EditionId })
            .OnDelete(DeleteBehavior.Cascade);
    }
}
