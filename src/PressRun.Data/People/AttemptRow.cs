using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace PressRun.Data.People;

internal sealed class AttemptRow
{
    public string Kind { get; set; } = "";

    public byte[] Of { get; set; } = [];

    public DateTimeOffset EndsAt { get; set; }

    public int Count { get; set; }
}

internal sealed class AttemptRowConfiguration : IEntityTypeConfiguration<AttemptRow>
{
    public void Configure(EntityTypeBuilder<AttemptRow> builder)
    {
        builder.ToTable("attempts");
        builder.HasKey(attempt => new { attempt.Kind, attempt.Of });
    }
}
