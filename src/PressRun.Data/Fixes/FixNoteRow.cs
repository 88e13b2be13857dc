using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Presses;
using PressRun.Data.Titles;

namespace PressRun.Data.Fixes;

internal sealed class FixNoteRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid Id { get; set; }

    public Guid EditionId { get; set; }

    public EditionRow Edition { get; set; } = null!;

    public DateOnly NoticedOn { get; set; }

    public string Text { get; set; } = "";

    public int? Page { get; set; }

    /// <summary>A printing of the same title; a printing that is taken out lets it go (see <see cref="FixNoteStore"/>).</summary>
    public int? MendedIn { get; set; }

    public int CarriedPast { get; set; }

    public uint Version { get; set; }

    public FixNote ToRecord() => new(Id, EditionId, Edition.Printing, NoticedOn, Text, Page, MendedIn, CarriedPast, Version);

    public void Take(FixNote note) => (Text, Page, MendedIn, CarriedPast) = (note.Text.Trim(), note.Page, note.MendedIn, note.CarriedPast);
}

internal sealed class FixNoteRowConfiguration : IEntityTypeConfiguration<FixNoteRow>
{
    public void Configure(EntityTypeBuilder<FixNoteRow> builder)
    {
        builder.ToTable("fix_notes");
        builder.HasKey(note => new { note.PressId, note.Id });
        builder.HasOne(note => note.Edition).WithMany().HasForeignKey(note => new { note.PressId, note.EditionId }).OnDelete(DeleteBehavior.Cascade);
        builder.Property(note => note.Text).HasMaxLength(FixNoteStore.MostText);
        builder.Property(note => note.Version).IsRowVersion();
    }
}
