using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Presses;
using PressRun.Data.Quotes;

namespace PressRun.Data.Mail;

/// <summary>Something that somebody is still to be told of by mail. It is written with what happened, and goes when the mail has gone.</summary>
internal sealed class MailRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid Id { get; set; }

    public Guid QuoteId { get; set; }

    public int Sequence { get; set; }

    public string Address { get; set; } = "";

    /// <summary>Not before this moment is it tried (again).</summary>
    public DateTimeOffset DueAt { get; set; }

    public int Tries { get; set; }

    /// <summary>True where it waited in a backup: it is not sent unless the host says so.</summary>
    public bool Held { get; set; }
}

internal sealed class MailRowConfiguration : IEntityTypeConfiguration<MailRow>
{
    public void Configure(EntityTypeBuilder<MailRow> builder)
    {
        builder.ToTable("mails");
        builder.HasKey(row => new { row.PressId, row.Id });
        builder.HasIndex(row => new { row.PressId, row.QuoteId, row.Sequence, row.Address }).IsUnique();
        builder.HasIndex(row => row.DueAt);
        builder.HasOne<QuoteEventRow>().WithMany().HasForeignKey(row => new { row.PressId, row.QuoteId, row.Sequence }).OnDelete(DeleteBehavior.Cascade);
    }
}
