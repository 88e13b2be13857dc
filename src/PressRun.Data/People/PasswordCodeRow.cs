using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace PressRun.Data.People;

internal sealed class PasswordCodeRow
{
    public Guid UserId { get; set; }

    public byte[] SecretHash { get; set; } = [];

    /// <summary>The owner who made it; null for whoever runs the server.</summary>
    public Guid? MadeBy { get; set; }

    public DateTimeOffset ExpiresAt { get; set; }
}

internal sealed class PasswordCodeRowConfiguration : IEntityTypeConfiguration<PasswordCodeRow>
{
    public void Configure(EntityTypeBuilder<PasswordCodeRow> builder)
    {
        builder.ToTable("password_codes");
        builder.HasKey(code => code.UserId);
        builder.HasIndex(code => code.SecretHash).IsUnique();
        builder.HasOne<User>().WithOne().HasForeignKey<PasswordCodeRow>(code => code.UserId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<User>().WithMany().HasForeignKey(code => code.MadeBy).OnDelete(DeleteBehavior.Cascade);
    }
}
