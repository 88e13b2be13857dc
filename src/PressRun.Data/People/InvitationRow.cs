using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Access;
using PressRun.Data.Presses;

namespace PressRun.Data.People;

internal sealed class InvitationRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid Id { get; set; }

    public string For { get; set; } = "";

    public PressRole Role { get; set; }

    public byte[] SecretHash { get; set; } = [];

    public DateTimeOffset MadeAt { get; set; }

    public DateTimeOffset ExpiresAt { get; set; }

    public DateTimeOffset? UsedAt { get; set; }
}

internal sealed class InvitationRowConfiguration : IEntityTypeConfiguration<InvitationRow>
{
    public void Configure(EntityTypeBuilder<InvitationRow> builder)
    {
        builder.ToTable("invitations");
        builder.HasKey(invitation => new { invitation.PressId, invitation.Id });
        builder.HasOne<PressRow>().WithMany().HasForeignKey(invitation => invitation.PressId).OnDelete(DeleteBehavior.Cascade);
        builder.HasIndex(invitation => invitation.SecretHash).IsUnique();
        builder.Property(invitation => invitation.For).HasMaxLength(User.LongestName);
    }
}
