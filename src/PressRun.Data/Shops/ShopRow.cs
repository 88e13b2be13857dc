using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Conversions;
using PressRun.Data.Presses;
using PressRun.Engine.Costing;

namespace PressRun.Data.Shops;

internal sealed class ShopRow : IOfPress
{
    public PressId PressId { get; set; }

    public string Id { get; set; } = "";

    public string Name { get; set; } = "";

    public bool Archived { get; set; }

    public int Position { get; set; }

    public uint Version { get; set; }

    public List<PriceListRow> PriceLists { get; set; } = [];
}

internal sealed class ShopRowConfiguration : IEntityTypeConfiguration<ShopRow>
{
    public void Configure(EntityTypeBuilder<ShopRow> builder)
    {
        builder.ToTable("shops");
        builder.HasKey(shop => new { shop.PressId, shop.Id });
        builder.HasOne<PressRow>().WithMany().HasForeignKey(shop => shop.PressId).OnDelete(DeleteBehavior.Cascade);
        builder.Property(shop => shop.Version).IsRowVersion();
    }
}

/// <summary>A shop's prices from one day on. The body is one document, because it is always read and written whole.</summary>
internal sealed class PriceListRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid Id { get; set; }

    public string ShopId { get; set; } = "";

    public DateOnly ValidFrom { get; set; }

    public Shop Body { get; set; } = null!;

    public uint Version { get; set; }
}

internal sealed class PriceListRowConfiguration : IEntityTypeConfiguration<PriceListRow>
{
    public void Configure(EntityTypeBuilder<PriceListRow> builder)
    {
        builder.ToTable("price_lists");
        builder.HasKey(list => new { list.PressId, list.Id });
        builder.HasOne<ShopRow>().WithMany(shop => shop.PriceLists)
            .HasForeignKey(list => new { list.PressId, list.ShopId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasIndex(list => new { list.PressId, list.ShopId, list.ValidFrom }).IsUnique();
        builder.Property(list => list.Body).HasJobFileShape(JobFileShape.PriceList);
        builder.Property(list => list.Version).IsRowVersion();
    }
}
