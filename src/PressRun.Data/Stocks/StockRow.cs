using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Presses;
using PressRun.Engine.Measures;
using PressRun.Engine.Paper;

namespace PressRun.Data.Stocks;

internal sealed class StockRow : ILibraryRow<Stock>
{
    public PressId PressId { get; set; }

    public string Id { get; set; } = "";

    public string Name { get; set; } = "";

    public PaperWeight Weight { get; set; }

    public Length? Caliper { get; set; }

    public decimal? Bulk { get; set; }

    public Finish? Finish { get; set; }

    public bool Archived { get; set; }

    public int Position { get; set; }

    public uint Version { get; set; }

    public Stock ToItem() => new(Id, Name, Weight, Caliper, Bulk, Finish);

    public void Take(Stock item)
    {
        Id = item.Id;
        Name = item.Name;
        Weight = item.Weight;
        Caliper = item.StatedCaliper;
        Bulk = item.Bulk;
        Finish = item.Finish;
    }
}

internal sealed class StockRowConfiguration : IEntityTypeConfiguration<StockRow>
{
    public void Configure(EntityTypeBuilder<StockRow> builder) => builder.ConfigureLibrary<StockRow, Stock>("stocks");
}
