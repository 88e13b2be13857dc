using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NpgsqlTypes;
using PressRun.Data.Presses;

namespace PressRun.Data.Titles;

internal sealed class TitleRow : IOfPress
{
    public PressId PressId { get; set; }

    public Guid Id { get; set; }

    public string Slug { get; set; } = "";

    public string Title { get; set; } = "";

    public string By { get; set; } = "";

    public string Colour { get; set; } = "";

    public string About { get; set; } = "";

    public bool Archived { get; set; }

    /// <summary>Title and maker without accents and capitals: sorted and searched by.</summary>
    public string SearchText { get; set; } = "";

    /// <summary>Words of <see cref="SearchText"/>; the database derives them.</summary>
    public NpgsqlTsVector SearchWords { get; set; } = null!;

    public uint Version { get; set; }

    public List<EditionRow> Editions { get; set; } = [];

    public TitleRecord ToRecord() => new(Id, Slug, Title, By, Colour, About, Archived, Version);

    public void Take(TitleRecord record)
    {
        Title = record.Title;
        By = record.By;
        Colour = record.Colour;
        About = record.About;
        Archived = record.Archived;
        SearchText = Titles.SearchText.Fold($"{record.Title} {record.By}");
    }
}

internal sealed class TitleRowConfiguration : IEntityTypeConfiguration<TitleRow>
{
    public void Configure(EntityTypeBuilder<TitleRow> builder)
    {
        builder.ToTable("titles");
        builder.HasKey(title => new { title.PressId, title.Id });
        builder.HasOne<PressRow>().WithMany().HasForeignKey(title => title.PressId).OnDelete(DeleteBehavior.Cascade);
        builder.HasIndex(title => new { title.PressId, title.Slug }).IsUnique();
        builder.HasIndex(title => new { title.PressId, title.Archived, title.SearchText, title.Id });

        // Titles are written rarely and searched often: new words go straight into the index and not first into a list that each search reads.
        builder.HasGeneratedTsVectorColumn(title => title.SearchWords, "simple", title => title.SearchText)
            .HasIndex(title => title.SearchWords).HasMethod("GIN").HasStorageParameter("fastupdate", false);
        builder.Property(title => title.SearchText).UseCollation("C");
        builder.Property(title => title.Version).IsRowVersion();
    }
}
