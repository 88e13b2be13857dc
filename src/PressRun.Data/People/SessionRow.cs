using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace PressRun.Data.People;

internal sealed class SessionRow
{
    public Guid Id { get; set; }

    public Guid UserId { get; set; }

    public string Device { get; set; } = "";

    public DateTimeOffset BeganAt { get; set; }

    public DateTimeOffset SeenAt { get; set; }

    public DateTimeOffset ExpiresAt { get; set; }

    public DateTimeOffset? EndedAt { get; set; }
}

internal sealed class SessionRowConfiguration : IEntityTypeConfiguration<SessionRow>
{
    public void Configure(EntityTypeBuilder<SessionRow> builder)
    {
        builder.ToTable("sign_in_sessions");
        builder.HasKey(session => session.Id);
        builder.Property(session => session.Device).HasMaxLength(SessionStore.LongestDevice);
        builder.HasOne<User>().WithMany().HasForeignKey(session => session.UserId).OnDelete(DeleteBehavior.Cascade);
    }
}
