using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Conversions;
using PressRun.Data.Presses;
using PressRun.Engine.Bench;

namespace PressRun.Data.Bench;

/// <summary>From where on a press wants to be warned. A row of its own, so that it and the rates are saved beside each other; a press without one has the usual limits.</summary>
internal sealed class BenchLimitsRow : IOfPress
{
    public PressId PressId { get; set; }

    public BenchLimits Limits { get; set; } = BenchLimits.Usual;

    public uint Version { get; set; }
}

internal sealed class BenchLimitsRowConfiguration : IEntityTypeConfiguration<BenchLimitsRow>
{
    public void Configure(EntityTypeBuilder<BenchLimitsRow> builder)
    {
        builder.ToTable("bench_limits");
        builder.HasKey(row => row.PressId);
        builder.HasOne<PressRow>().WithOne().HasForeignKey<BenchLimitsRow>(row => row.PressId).OnDelete(DeleteBehavior.Cascade);
        builder.Property(row => row.Limits).HasJobFileShape(BenchLimitsShape.Document);
        builder.Property(row => row.Version).IsRowVersion();
    }
}
