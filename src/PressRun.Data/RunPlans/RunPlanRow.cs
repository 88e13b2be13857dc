using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using PressRun.Data.Conversions;
using PressRun.Data.Presses;
using PressRun.Data.Shops;
using PressRun.Data.Stocks;
using PressRun.Data.Titles;

namespace PressRun.Data.RunPlans;

internal sealed class RunPlanRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid Id { get; set; }

    public Guid EditionId { get; set; }

    public EditionRow Edition { get; set; } = null!;

    public string Name { get; set; } = "";

    /// <summary>The price list the plan was made on; kept even when the shop brings out a newer one.</summary>
    public Guid PriceListId { get; set; }

    public PriceListRow PriceList { get; set; } = null!;

    public DateOnly Date { get; set; }

    public int Quantity { get; set; }

    public int? LadderFrom { get; set; }

    public int? LadderTo { get; set; }

    public int? LadderStep { get; set; }

    public List<string>? Finishing { get; set; }

    public List<string>? BenchSteps { get; set; }

    public PlanReprint? Reprint { get; set; }

    public bool Chosen { get; set; }

    public int Position { get; set; }

    /// <summary>Set by every save, so that a change to a stock alone moves this row's version too.</summary>
    public DateTimeOffset ChangedAt { get; set; }

    public uint Version { get; set; }

    public List<PlanStockRow> Stocks { get; set; } = [];
}

internal sealed class RunPlanRowConfiguration : IEntityTypeConfiguration<RunPlanRow>
{
    public void Configure(EntityTypeBuilder<RunPlanRow> builder)
    {
        builder.ToTable("run_plans");
        builder.HasKey(plan => new { plan.PressId, plan.Id });
        builder.HasOne(plan => plan.Edition).WithMany()
            .HasForeignKey(plan => new { plan.PressId, plan.EditionId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne(plan => plan.PriceList).WithMany()
            .HasForeignKey(plan => new { plan.PressId, plan.PriceListId }).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(plan => new { plan.PressId, plan.EditionId }).IsUnique().HasFilter("chosen")
            .HasDatabaseName("ix_run_plans_one_chosen");
        builder.HasIndex(plan => new { plan.PressId, plan.EditionId, plan.Position });
        builder.Property<PlanReprint>(nameof(RunPlanRow.Reprint)).IsRequired(false).HasJobFileShape(ReprintShape.Document);
        builder.Property(plan => plan.Version).IsRowVersion();
    }
}

/// <summary>Another paper than the edition's on one of its parts.</summary>
internal sealed class PlanStockRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid PlanId { get; set; }

    public Guid PartId { get; set; }

    public string StockId { get; set; } = "";

    /// <summary>Paper of the part in the second half of the run; null where all copies have it on the same.</summary>
    public string? SecondStockId { get; set; }
}

internal sealed class PlanStockRowConfiguration : IEntityTypeConfiguration<PlanStockRow>
{
    public void Configure(EntityTypeBuilder<PlanStockRow> builder)
    {
        builder.ToTable("plan_stocks");
        builder.HasKey(stock => new { stock.PressId, stock.PlanId, stock.PartId });
        builder.HasOne<RunPlanRow>().WithMany(plan => plan.Stocks)
            .HasForeignKey(stock => new { stock.PressId, stock.PlanId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<PartRow>().WithMany()
            .HasForeignKey(stock => new { stock.PressId, stock.PartId }).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<StockRow>().WithMany()
            .HasForeignKey(stock => new { stock.PressId, stock.StockId }).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<StockRow>().WithMany()
            .HasForeignKey(stock => new { stock.PressId, stock.SecondStockId }).OnDelete(DeleteBehavior.Restrict);
    }
}
