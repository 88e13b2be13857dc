using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace PressRun.Data.Running;

/// <summary>Where this database was when a PressRun was last started on it. It goes into backups with all else, and so tells a restored copy from what it is a copy of.</summary>
internal sealed class HomeRow
{
    public int Id { get; set; }

    public string Mark { get; set; } = "";
}

internal sealed class HomeRowConfiguration : IEntityTypeConfiguration<HomeRow>
{
    public void Configure(EntityTypeBuilder<HomeRow> builder)
    {
        builder.ToTable("database_homes");
        builder.Property(home => home.Id).ValueGeneratedNever();
    }
}
