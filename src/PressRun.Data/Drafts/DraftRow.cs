using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Presses;

namespace PressRun.Data.Drafts;

internal sealed class DraftRow : IOfPress
{
    public PressId PressId { get; set; }

    public string Person { get; set; } = "";

    public string SubjectKind { get; set; } = "";

    public string SubjectId { get; set; } = "";

    public string Field { get; set; } = "";

    public string Text { get; set; } = "";

    public DateTimeOffset At { get; set; }
}

internal sealed class DraftRowConfiguration : IEntityTypeConfiguration<DraftRow>
{
    public void Configure(EntityTypeBuilder<DraftRow> builder)
    {
        builder.ToTable("drafts");
        builder.HasKey(draft => new { draft.PressId, draft.Person, draft.SubjectKind, draft.SubjectId, draft.Field });
        builder.HasOne<PressRow>().WithMany().HasForeignKey(draft => draft.PressId).OnDelete(DeleteBehavior.Cascade);
        builder.Property(draft => draft.Text).HasMaxLength(DraftStore.LongestText);
    }
}
