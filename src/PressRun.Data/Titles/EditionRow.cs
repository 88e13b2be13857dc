using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Copies;
using PressRun.Data.Presses;
using PressRun.Engine.Editions;
using PressRun.Engine.Measures;

namespace PressRun.Data.Titles;

internal sealed class EditionRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid Id { get; set; }

    public Guid TitleId { get; set; }

    public TitleRow Title { get; set; } = null!;

    public int Printing { get; set; }

    public DateOnly? PrintedOn { get; set; }

    public int? CopiesPrinted { get; set; }

    public decimal Price { get; set; }

    public int FreeCopies { get; set; }

    public Length PageWidth { get; set; }

    public Length PageHeight { get; set; }

    public Binding Binding { get; set; }

    public bool Bleed { get; set; }

    public Length TrimHead { get; set; }

    public Length TrimFoot { get; set; }

    public Length TrimForeEdge { get; set; }

    public Length TrimSpine { get; set; }

    public FoldShape Fold { get; set; }

    public Mass? WeighedMass { get; set; }

    public Length? WeighedThickness { get; set; }

    public bool Archived { get; set; }

    /// <summary>Set by every save, so that a change to a part alone moves this row's version too.</summary>
    public DateTimeOffset ChangedAt { get; set; }

    public uint Version { get; set; }

    public List<PartRow> Parts { get; set; } = [];

    public List<FixedCostRow> FixedCosts { get; set; } = [];

    public EditionCopiesRow Copies { get; set; } = null!;

    /// <summary>A new edition, of which there is no copy yet.</summary>
    public static EditionRow New(PressId press, Guid titleId, DateTimeOffset now)
    {
        var id = Guid.CreateVersion7();
        return new() { PressId = press, Id = id, TitleId = titleId, ChangedAt = now, Copies = new() { PressId = press, EditionId = id } };
    }
}

internal sealed class EditionRowConfiguration : IEntityTypeConfiguration<EditionRow>
{
    public void Configure(EntityTypeBuilder<EditionRow> builder)
    {
        builder.ToTable("editions");
        builder.HasKey(edition => new { edition.PressId, edition.Id });
        builder.HasOne(edition => edition.Title).WithMany(title => title.Editions)
            .HasForeignKey(edition => new { edition.PressId, edition.TitleId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasIndex(edition => new { edition.PressId, edition.TitleId, edition.Printing }).IsUnique();
        builder.HasIndex(edition => new { edition.PressId, edition.TitleId }).HasDatabaseName("ix_editions_planned").HasFilter("copies_printed IS NULL AND NOT archived");
        builder.Property(edition => edition.Version).IsRowVersion();
    }
}
