using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Presses;

namespace PressRun.Data.People;

internal sealed class ApiKeyRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid Id { get; set; }

    public string Name { get; set; } = "";

    public bool MayWrite { get; set; }

    public byte[] SecretHash { get; set; } = [];

    public DateTimeOffset MadeAt { get; set; }

    /// <summary>Who made it; null where nobody signed in, or before that was noted.</summary>
    public Guid? MadeBy { get; set; }

    public DateOnly? UsedOn { get; set; }

    public DateTimeOffset? RevokedAt { get; set; }

    public ApiKey ToRecord(string? maker) => new(Id, Name, MayWrite, MadeAt, maker, UsedOn);
}

internal sealed class ApiKeyRowConfiguration : IEntityTypeConfiguration<ApiKeyRow>
{
    public void Configure(EntityTypeBuilder<ApiKeyRow> builder)
    {
        builder.ToTable("api_keys");
        builder.HasKey(key => new { key.PressId, key.Id });
        builder.HasOne<PressRow>().WithMany().HasForeignKey(key => key.PressId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<User>().WithMany().HasForeignKey(key => key.MadeBy).OnDelete(DeleteBehavior.SetNull);
        builder.HasIndex(key => key.SecretHash).IsUnique();
        builder.Property(key => key.Name).HasMaxLength(User.LongestName);
    }
}
