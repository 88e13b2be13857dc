using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Presses;
using PressRun.Data.Titles;

namespace PressRun.Data.Copies;

/// <summary>The outlook of a title, kept beside its ledger so that what runs out is found by an index. A title of which nothing moved has none.</summary>
internal sealed class TitleOutlookRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid TitleId { get; set; }

    /// <summary>How often lines were written into the title's ledgers.</summary>
    public long Moved { get; set; }

    /// <summary>What <see cref="Moved"/> was when the outlook was reckoned; it is out of date where they differ.</summary>
    public long Reckoned { get; set; }

    public DateOnly AsOf { get; set; }

    public long OnHand { get; set; }

    public double Days10 { get; set; }

    public double Days50 { get; set; }

    public double Days90 { get; set; }

    /// <summary>Null where there is nothing to run out, or no sale to go by.</summary>
    public DateOnly? RunsOutOn { get; set; }
}

internal sealed class TitleOutlookRowConfiguration : IEntityTypeConfiguration<TitleOutlookRow>
{
    public void Configure(EntityTypeBuilder<TitleOutlookRow> builder)
    {
        builder.ToTable("title_outlooks");
        builder.HasKey(row => new { row.PressId, row.TitleId });
        builder.HasOne<TitleRow>().WithOne().HasForeignKey<TitleOutlookRow>(row => new { row.PressId, row.TitleId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasIndex(row => new { row.PressId, row.RunsOutOn });
        builder.HasIndex(row => new { row.PressId, row.TitleId }).HasDatabaseName("ix_title_outlooks_moved").HasFilter("moved <> reckoned");
    }
}
