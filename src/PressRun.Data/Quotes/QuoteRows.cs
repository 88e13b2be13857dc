using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.People;
using PressRun.Data.Presses;
using PressRun.Data.Running;
using PressRun.Data.Titles;
using PressRun.Engine.Quoting;

namespace PressRun.Data.Quotes;

/// <summary>A frozen quote: added once, and held by the database against change. Texts are kept to the letter, because their fingerprint is.</summary>
internal sealed class QuoteRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid Id { get; set; }

    public int Number { get; set; }

    public Guid EditionId { get; set; }

    public DateTimeOffset MadeAt { get; set; }

    public string By { get; set; } = "";

    public DateOnly Until { get; set; }

    public int Quantity { get; set; }

    public decimal Landed { get; set; }

    public string Facts { get; set; } = "";

    public string Job { get; set; } = "";

    public string Result { get; set; } = "";

    public byte[] Fingerprint { get; set; } = [];

    public Guid? ReplacesId { get; set; }

    public QuoteRow? Replaces { get; set; }
}

/// <summary>What moves on while the quote stays: locked by whoever adds something to its course.</summary>
internal sealed class QuoteMarkRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid QuoteId { get; set; }

    /// <summary>Things that have happened: the next one's place less one.</summary>
    public int Changes { get; set; }

    /// <summary>Of them, those that the maker has seen.</summary>
    public int Seen { get; set; }
}

internal sealed class QuoteLinkRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid Id { get; set; }

    public Guid QuoteId { get; set; }

    public string Name { get; set; } = "";

    /// <summary>SHA-256 of the secret, which itself is kept nowhere. The secret is long and random, so that no slower hash is called for.</summary>
    public byte[] SecretHash { get; set; } = [];

    public int? TryFrom { get; set; }

    public int? TryTo { get; set; }

    public bool MayRemark { get; set; }

    public bool MayAgree { get; set; }

    public int? Part { get; set; }

    public DateTimeOffset MadeAt { get; set; }

    /// <summary>Who made it, and so knows its secret; null where nobody signed in, where it came with an archive, or before that was noted.</summary>
    public Guid? MadeBy { get; set; }

    public DateTimeOffset EndsAt { get; set; }

    public DateTimeOffset? EndedAt { get; set; }

    /// <summary>The day that it was where the server stood when its maker ended it: whether that was in time stays as it was, wherever the server stands later. Null where
    /// it was ended before that was noted, when days were those of universal time.</summary>
    public DateOnly? EndedOn { get; set; }

    /// <summary>When it ended with its maker's right to change the press. Nobody decided then that its reader is not asked any more, as <see cref="EndedAt"/> says.</summary>
    public DateTimeOffset? MakerGoneAt { get; set; }

    public QuoteAnswer Answer { get; set; }

    public QuoteLink ToRecord() => new(Id, Name, new LinkRights(TryFrom, TryTo, MayRemark, MayAgree), EndsAt, EndedAt, Part, Answer, MadeAt) { EndedOn = EndedOn, MakerGoneAt = MakerGoneAt };

    public bool IsOpen(DateTimeOffset now) => ToRecord().IsOpen(now);

    /// <summary>Whoever holds it, as the course of its quote goes by them.</summary>
    /// <param name="now">The moment that is asked about.</param>
    /// <param name="until">The quote's last day.</param>
    public QuoteReader ToReader(DateTimeOffset now, DateOnly until) => new(
        IsOpen(now), MayAgree, Answer, EndedAt is { } ended && (EndedOn ?? TimeZoneInfo.Utc.DayOf(ended)) <= until);
}

internal sealed class QuoteEventRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid QuoteId { get; set; }

    public int Sequence { get; set; }

    public DateTimeOffset At { get; set; }

    public QuoteEventKind Kind { get; set; }

    public Guid? LinkId { get; set; }

    public string By { get; set; } = "";

    public string Words { get; set; } = "";

    public int? Quantity { get; set; }

    public decimal? Amount { get; set; }

    public int? Part { get; set; }

    public DateOnly? Day { get; set; }

    public byte[]? Fingerprint { get; set; }

    public static QuoteEventRow Of(PressId press, Guid quoteId, int sequence, QuoteEvent happened) => new()
    {
        PressId = press,
        QuoteId = quoteId,
        Sequence = sequence,
        At = happened.At,
        Kind = happened.Kind,
        LinkId = happened.LinkId,
        By = happened.By.Trim(),
        Words = happened.Words,
        Quantity = happened.Quantity,
        Amount = happened.Amount,
        Part = happened.Part,
        Day = happened.Day,
        Fingerprint = happened.Fingerprint,
    };

    public QuoteEvent ToRecord() => new(Sequence, At, Kind, LinkId, By, Words, Quantity, Amount, Part, Day, Fingerprint);
}

internal sealed class QuoteRowConfiguration : IEntityTypeConfiguration<QuoteRow>
{
    public void Configure(EntityTypeBuilder<QuoteRow> builder)
    {
        builder.ToTable("quotes");
        builder.HasKey(row => new { row.PressId, row.Id });
        builder.HasIndex(row => new { row.PressId, row.Number }).IsUnique();
        builder.HasIndex(row => new { row.PressId, row.EditionId });
        builder.HasIndex(row => new { row.PressId, row.ReplacesId }).IsUnique();
        builder.HasOne<EditionRow>().WithMany().HasForeignKey(row => new { row.PressId, row.EditionId }).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(row => row.Replaces).WithMany().HasForeignKey(row => new { row.PressId, row.ReplacesId }).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class QuoteMarkRowConfiguration : IEntityTypeConfiguration<QuoteMarkRow>
{
    public void Configure(EntityTypeBuilder<QuoteMarkRow> builder)
    {
        builder.ToTable("quote_marks");
        builder.HasKey(row => new { row.PressId, row.QuoteId });
        builder.HasOne<QuoteRow>().WithOne().HasForeignKey<QuoteMarkRow>(row => new { row.PressId, row.QuoteId }).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class QuoteLinkRowConfiguration : IEntityTypeConfiguration<QuoteLinkRow>
{
    public void Configure(EntityTypeBuilder<QuoteLinkRow> builder)
    {
        builder.ToTable("quote_links");
        builder.HasKey(row => new { row.PressId, row.Id });
        builder.HasIndex(row => row.SecretHash).IsUnique();
        builder.HasOne<User>().WithMany().HasForeignKey(row => row.MadeBy).OnDelete(DeleteBehavior.SetNull);
        builder.HasOne<QuoteRow>().WithMany().HasForeignKey(row => new { row.PressId, row.QuoteId }).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class QuoteEventRowConfiguration : IEntityTypeConfiguration<QuoteEventRow>
{
    public void Configure(EntityTypeBuilder<QuoteEventRow> builder)
    {
        builder.ToTable("quote_events");
        builder.HasKey(row => new { row.PressId, row.QuoteId, row.Sequence });
        builder.HasOne<QuoteRow>().WithMany().HasForeignKey(row => new { row.PressId, row.QuoteId }).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<QuoteLinkRow>().WithMany().HasForeignKey(row => new { row.PressId, row.LinkId }).OnDelete(DeleteBehavior.Restrict);
    }
}
