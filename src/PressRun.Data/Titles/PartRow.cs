using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Presses;
using PressRun.Data.Stocks;
using PressRun.Engine.Editions;

namespace PressRun.Data.Titles;

internal sealed class PartRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid Id { get; set; }

    public Guid EditionId { get; set; }

    /// <summary>From the outside in, from 0.</summary>
    public int Position { get; set; }

    public string Name { get; set; } = "";

    public int Pages { get; set; }

    public string StockId { get; set; } = "";

    public Ink Outside { get; set; }

    public Ink Inside { get; set; }

    public string? SheetId { get; set; }

    public void Take(Part part, int position)
    {
        Position = position;
        Name = part.Name;
        Pages = part.Pages;
        StockId = part.StockId;
        Outside = part.Outside;
        Inside = part.Inside;
        SheetId = part.SheetId;
    }

    public EditionPart ToRecord() => new(Id, new Part(Name, Pages, StockId, Outside, Inside, SheetId));
}

internal sealed class PartRowConfiguration : IEntityTypeConfiguration<PartRow>
{
    public void Configure(EntityTypeBuilder<PartRow> builder)
    {
        builder.ToTable("parts");
        builder.HasKey(part => new { part.PressId, part.Id });
        builder.HasOne<EditionRow>().WithMany(edition => edition.Parts)
            .HasForeignKey(part => new { part.PressId, part.EditionId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<StockRow>().WithMany()
            .HasForeignKey(part => new { part.PressId, part.StockId }).OnDelete(DeleteBehavior.Restrict);
    }
}

internal sealed class FixedCostRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid EditionId { get; set; }

    public int Position { get; set; }

    public string Name { get; set; } = "";

    public decimal Amount { get; set; }
}

internal sealed class FixedCostRowConfiguration : IEntityTypeConfiguration<FixedCostRow>
{
    public void Configure(EntityTypeBuilder<FixedCostRow> builder)
    {
        builder.ToTable("fixed_costs");
        builder.HasKey(cost => new { cost.PressId, cost.EditionId, cost.Position });
        builder.HasOne<EditionRow>().WithMany(edition => edition.FixedCosts)
            .HasForeignKey(cost => new { cost.PressId, cost.EditionId }).OnDelete(DeleteBehavior.Cascade);
    }
}
