using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Engine.Paper;

namespace PressRun.Data.Presses;

internal sealed class PressRow
{
    public PressId Id { get; set; }

    public string Name { get; set; } = "";

    public string Currency { get; set; } = "";

    public UnitSystem Units { get; set; }

    public PaperRegion PaperRegion { get; set; }

    public bool ReclaimsTax { get; set; }

    public DateTimeOffset CreatedAt { get; set; }

    public uint Version { get; set; }

    public PressRecord ToRecord() => new(Id, Name, Currency, Units, PaperRegion, ReclaimsTax, Version) { CreatedAt = CreatedAt };
}

internal sealed class PressRowConfiguration : IEntityTypeConfiguration<PressRow>
{
    public void Configure(EntityTypeBuilder<PressRow> builder)
    {
        builder.ToTable("presses");
        builder.HasKey(press => press.Id);
        builder.Property(press => press.Currency).HasMaxLength(3).IsFixedLength();
        builder.Property(press => press.Version).IsRowVersion();
    }
}
