using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Conversions;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;
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

/// <summary>A carrier's service by one of its dated tables: id and date together name it.</summary>
internal sealed class PostageServiceRow : ILibraryRow<PostageService>
{
    public PressId PressId { get; set; }

    public string Id { get; set; } = "";

    public DateOnly ValidFrom { get; set; }

    public string Name { get; set; } = "";

    public string Region { get; set; } = "";

    public Length? MaxLength { get; set; }

    public Length? MaxWidth { get; set; }

    public Length? MaxThickness { get; set; }

    public Length? MinLength { get; set; }

    public Length? MinWidth { get; set; }

    public Length? MinThickness { get; set; }

    public IReadOnlyList<MassStep> Steps { get; set; } = [];

    public bool Archived { get; set; }

    public int Position { get; set; }

    public uint Version { get; set; }

    public PostageService ToItem() =>
        new(Id, Name, Region, ValidFrom, MaxLength, MaxWidth, MaxThickness, MinLength, MinWidth, MinThickness, Steps);

    public void Take(PostageService item)
    {
        (Id, Name, Region, ValidFrom, Steps) = (item.Id, item.Name, item.Region, item.ValidFrom, item.Steps);
        (MaxLength, MaxWidth, MaxThickness) = (item.MaxLength, item.MaxWidth, item.MaxThickness);
        (MinLength, MinWidth, MinThickness) = (item.MinLength, item.MinWidth, item.MinThickness);
    }
}

internal sealed class PostageServiceRowConfiguration : IEntityTypeConfiguration<PostageServiceRow>
{
    public void Configure(EntityTypeBuilder<PostageServiceRow> builder)
    {
        builder.ConfigureLibrary<PostageServiceRow, PostageService>("postage_services");
        builder.HasKey(service => new { service.PressId, service.Id, service.ValidFrom });
        builder.Property(service => service.Steps).HasJobFileShape(JobFileShape.MassSteps);
    }
}
