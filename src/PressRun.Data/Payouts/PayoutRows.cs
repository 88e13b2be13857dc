using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Presses;
using PressRun.Data.Titles;
using PressRun.Engine.Quoting;

namespace PressRun.Data.Payouts;

/// <summary>Who is promised what of an edition's sales; without a row nobody is promised anything.</summary>
internal sealed class EditionClaimsRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid EditionId { get; set; }

    /// <summary>The claims in the form of <see cref="ClaimShape"/>.</summary>
    public string Claims { get; set; } = "";

    public uint Version { get; set; }

    public EditionClaims ToRecord() => new(EditionId, ClaimShape.Read(Claims), Version);
}

/// <summary>A payment: added once, and held by the database against change.</summary>
internal sealed class EditionPaymentRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid Id { get; set; }

    public Guid EditionId { get; set; }

    public string Name { get; set; } = "";

    public DateOnly Day { get; set; }

    public decimal Amount { get; set; }

    public string By { get; set; } = "";

    public DateTimeOffset WrittenAt { get; set; }

    public PaymentRecord ToRecord() => new(Id, new PaidOut(Name, Day, Amount), By, WrittenAt);
}

internal sealed class EditionClaimsRowConfiguration : IEntityTypeConfiguration<EditionClaimsRow>
{
    public void Configure(EntityTypeBuilder<EditionClaimsRow> builder)
    {
        builder.ToTable("edition_claims");
        builder.HasKey(row => new { row.PressId, row.EditionId });
        builder.Property(row => row.Version).IsRowVersion();
        builder.HasOne<EditionRow>().WithOne().HasForeignKey<EditionClaimsRow>(row => new { row.PressId, row.EditionId }).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class EditionPaymentRowConfiguration : IEntityTypeConfiguration<EditionPaymentRow>
{
    public void Configure(EntityTypeBuilder<EditionPaymentRow> builder)
    {
        builder.ToTable("edition_payments");
        builder.HasKey(row => new { row.PressId, row.Id });
        builder.HasIndex(row => new { row.PressId, row.EditionId, row.Day });
        builder.HasOne<EditionRow>().WithMany().HasForeignKey(row => new { row.PressId, row.EditionId }).OnDelete(DeleteBehavior.Restrict);
    }
}
