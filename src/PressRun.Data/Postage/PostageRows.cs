using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Conversions;
using PressRun.Data.Presses;
using PressRun.Engine.Measures;
using PressRun.Engine.Postage;

namespace PressRun.Data.Postage;

internal sealed class MailerRow : ILibraryRow<Mailer>
{
    public PressId PressId { get; set; }

    public string Id { get; set; } = "";

    public string Name { get; set; } = "";

    public Length Length { get; set; }

    public Length Width { get; set; }

    public Length Thickness { get; set; }

    public Mass Mass { get; set; }

    public decimal Price { get; set; }

    public bool Archived { get; set; }

    public int Position { get; set; }

    public uint Version { get; set; }

    public Mailer ToItem() => new(Id, Name, Length, Width, Thickness, Mass, Price);

    public void Take(Mailer item) =>
        (Id, Name, Length, Width, Thickness, Mass, Price) = (item.Id, item.Name, item.Length, item.Width, item.Thickness, item.Mass, item.Price);
}

internal sealed class MailerRowConfiguration : IEntityTypeConfiguration<MailerRow>
{
    public void Configure(EntityTypeBuilder<MailerRow> builder) => builder.ConfigureLibrary<MailerRow, Mailer>("mailers");
}

/// <summary>A carrier's service by one of its dated tables: id and date together name it. The table is one document, because it is always read
/// and written whole.</summary>
internal sealed class PostageServiceRow : ILibraryRow<PostageService>
{
    public PressId PressId { get; set; }

    public string Id { get; set; } = "";

    public DateOnly ValidFrom { get; set; }

    public PostageService Service { get; set; } = null!;

    public bool Archived { get; set; }

    public int Position { get; set; }

    public uint Version { get; set; }

    public PostageService ToItem() => Service;

    public void Take(PostageService item) => (Id, ValidFrom, Service) = (item.Id, item.ValidFrom, item);
}

internal sealed class PostageServiceRowConfiguration : IEntityTypeConfiguration<PostageServiceRow>
{
    public void Configure(EntityTypeBuilder<PostageServiceRow> builder)
    {
        builder.ConfigureLibrary<PostageServiceRow, PostageService>("postage_services");
        builder.HasKey(service => new { service.PressId, service.Id, service.ValidFrom });
        builder.Property(service => service.Service).HasColumnName("body").HasJobFileShape(JobFileShape.Service);
    }
}
