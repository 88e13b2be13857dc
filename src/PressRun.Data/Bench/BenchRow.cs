using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Conversions;
using PressRun.Data.Presses;
using PressRun.Engine.Bench;

namespace PressRun.Data.Bench;

/// <summary>The press's own table: one document a press, because its steps are an ordered whole.</summary>
internal sealed class BenchRow : IOfPress
{
    public PressId PressId { get; set; }

    public BenchRates Rates { get; set; } = BenchRates.None;

    public uint Version { get; set; }
}

internal sealed class BenchRowConfiguration : IEntityTypeConfiguration<BenchRow>
{
    public void Configure(EntityTypeBuilder<BenchRow> builder)
    {
        builder.ToTable("bench_rates");
        builder.HasKey(bench => bench.PressId);
        builder.HasOne<PressRow>().WithOne().HasForeignKey<BenchRow>(bench => bench.PressId).OnDelete(DeleteBehavior.Cascade);
        builder.Property(bench => bench.Rates).HasJobFileShape(JobFileShape.Bench);
        builder.Property(bench => bench.Version).IsRowVersion();
    }
}
