using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Access;
using PressRun.Data.Presses;

namespace PressRun.Data.People;

internal sealed class MembershipRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid UserId { get; set; }

    public PressRole Role { get; set; }

    public DateTimeOffset Since { get; set; }

    /// <summary>True for a maker who is told nothing by mail.</summary>
    public bool WithoutMail { get; set; }
}

internal sealed class MembershipRowConfiguration : IEntityTypeConfiguration<MembershipRow>
{
    public void Configure(EntityTypeBuilder<MembershipRow> builder)
    {
        builder.ToTable("memberships");
        builder.HasKey(member => new { member.PressId, member.UserId });
        builder.HasOne<PressRow>().WithMany().HasForeignKey(member => member.PressId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<User>().WithMany().HasForeignKey(member => member.UserId).OnDelete(DeleteBehavior.Cascade);
    }
}
